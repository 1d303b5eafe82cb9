//! How numbers are written in tables and figures.

use axlebow_units::{Kind, UnitSystem, display_unit};

/// A quantity as results show it: its kind and how many decimals it gets.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Shown {
    /// Position along the axle or size of a part.
    Place,
    /// Displacement.
    Deflection,
    /// Camber, toe, slope.
    Angle,
    /// Camber for each unit of mass.
    AnglePerMass,
    /// Force.
    Force,
    /// Moment.
    Moment,
    /// Stress.
    Stress,
    /// Mass.
    Mass,
    /// Mass per length.
    MassPerLength,
    /// Time.
    Time,
    /// Frequency.
    Frequency,
    /// Rotation per moment.
    RotationalFlexibility,
    /// Force of a weld per length of it.
    ForcePerLength,
    /// Plain number.
    Factor,
    /// Plain number of any size.
    Free,
}

impl Shown {
    fn kind(self) -> Kind {
        match self {
            Self::Place | Self::Deflection => Kind::Length,
            Self::Angle => Kind::Angle,
            Self::AnglePerMass => Kind::AnglePerMass,
            Self::Force => Kind::Force,
            Self::Moment => Kind::Moment,
            Self::Stress => Kind::Stress,
            Self::Mass => Kind::Mass,
            Self::MassPerLength => Kind::MassPerLength,
            Self::Time => Kind::Time,
            Self::Frequency => Kind::Frequency,
            Self::RotationalFlexibility => Kind::RotationalFlexibility,
            // The same dimension, N/mm or lbf/in.
            Self::ForcePerLength => Kind::Stiffness,
            Self::Factor | Self::Free => Kind::Ratio,
        }
    }

    /// Decimals in SI and in US customary display units.
    fn decimals(self, system: UnitSystem) -> usize {
        let (si, us) = match self {
            Self::Place => (1, 2),
            Self::Deflection => (3, 4),
            Self::Angle => (3, 3),
            Self::AnglePerMass => (4, 4),
            Self::Force => (2, 0),
            Self::Moment => (2, 0),
            Self::Stress => (1, 2),
            Self::Mass => (1, 1),
            Self::MassPerLength => (2, 2),
            Self::Time => (3, 3),
            Self::Frequency => (2, 2),
            Self::RotationalFlexibility => (4, 5),
            Self::ForcePerLength => (0, 0),
            Self::Factor | Self::Free => (3, 3),
        };
        if system == UnitSystem::Si { si } else { us }
    }
}

/// Writes quantities in the display units of one system.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Numbers {
    /// The reader's unit system.
    pub system: UnitSystem,
}

impl Numbers {
    /// Symbol of the display unit.
    pub fn unit(self, shown: Shown) -> &'static str {
        display_unit(shown.kind(), self.system).symbol
    }

    /// Value in the display unit.
    pub fn scaled(self, value: f64, shown: Shown) -> f64 {
        value / display_unit(shown.kind(), self.system).factor
    }

    /// Symbol and value of the unit of a road's roughness index: m/km, or in/mi of 63 360 inches.
    pub fn roughness(self) -> (&'static str, f64) {
        match self.system {
            UnitSystem::Si => ("m/km", 1e-3),
            UnitSystem::Us => ("in/mi", 1.0 / 63_360.0),
        }
    }

    /// Value in the display unit, without the unit.
    pub fn bare(self, value: f64, shown: Shown) -> String {
        match shown {
            Shown::Free => significant(value, 4),
            shown => fixed(self.scaled(value, shown), shown.decimals(self.system)),
        }
    }

    /// Value and unit.
    pub fn full(self, value: f64, shown: Shown) -> String {
        format!("{} {}", self.bare(value, shown), self.unit(shown)).trim_end().to_owned()
    }

    /// Half of an interval about a value, in the display unit, to two digits.
    pub fn half(self, [low, high]: [f64; 2], shown: Shown) -> String {
        significant(0.5 * self.scaled(high - low, shown), 2)
    }

    /// Value and unit of any kind, to four digits without zeros at their end.
    pub fn short(self, value: f64, kind: Kind) -> String {
        let unit = display_unit(kind, self.system);
        let number = significant(value / unit.factor, 4);
        let plain = number.contains('.') && !number.contains('e');
        let number = if plain { number.trim_end_matches('0').trim_end_matches('.') } else { &number };
        format!("{number} {}", unit.symbol).trim_end().to_owned()
    }

    /// Heading of a column: what it holds and its unit.
    pub fn heading(self, text: &str, shown: Shown) -> String {
        format!("{text}, {}", self.unit(shown)).trim_end_matches(", ").to_owned()
    }

    /// Value in the display unit of any kind, to four significant digits, and the unit.
    pub fn significant(self, value: f64, kind: Kind) -> String {
        let unit = display_unit(kind, self.system);
        format!("{} {}", significant(value / unit.factor, 4), unit.symbol).trim_end().to_owned()
    }
}

/// A number with a fixed number of decimals and never a negative zero.
pub(crate) fn fixed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    match text.strip_prefix('-') {
        Some(rest) if rest.bytes().all(|byte| byte == b'0' || byte == b'.') => rest.to_owned(),
        _ => text,
    }
}

/// A number with so many significant digits, as a plain decimal from 0.0001 up to a million.
pub(crate) fn significant(value: f64, digits: usize) -> String {
    let size = value.abs();
    if value == 0.0 || !value.is_finite() {
        return fixed(value, 0);
    }
    if !(1e-4..1e6).contains(&size) {
        return format!("{value:.*e}", digits - 1);
    }
    let before = size.log10().floor() as i32 + 1;
    fixed(value, (digits as i32 - before).max(0) as usize)
}

/// A tick of an axis: as short as its value allows.
pub(crate) fn tick(value: f64) -> String {
    if value.abs() >= 1e7 || (value != 0.0 && value.abs() < 1e-4) {
        // Steps along an axis miss round values by round-off.
        let short: f64 = format!("{value:.6e}").parse().unwrap_or(value);
        return with_power(&format!("{short:e}"));
    }
    let text = fixed(value, 6);
    typographic(text.trim_end_matches('0').trim_end_matches('.'))
}

/// Text for a picture: a true minus sign in place of the hyphen.
pub(crate) fn typographic(number: &str) -> String {
    number.replace('-', "\u{2212}")
}

/// Text for a picture: `1.073e7 mm` becomes 1.073×10⁷ mm, with a true minus sign.
pub(crate) fn with_power(number: &str) -> String {
    let Some((digits, rest)) =
        number.split_once('e').filter(|(digits, _)| digits.ends_with(char::is_numeric))
    else {
        return typographic(number);
    };
    let (power, unit) =
        rest.split_once(' ').map_or((rest, String::new()), |(p, unit)| (p, format!(" {unit}")));
    let raised = |letter: char| match letter {
        '-' => '\u{207b}',
        '1' => '\u{b9}',
        '2' => '\u{b2}',
        '3' => '\u{b3}',
        digit => digit.to_digit(10).and_then(|d| char::from_u32(0x2070 + d)).unwrap_or(digit),
    };
    let power: String = power.chars().map(raised).collect();
    format!("{}\u{d7}10{power}{unit}", typographic(digits))
}

/// Text for a picture with its sign always written.
pub(crate) fn with_sign(number: &str) -> String {
    let zero = number.bytes().take_while(|byte| *byte != b' ').all(|byte| byte == b'0' || byte == b'.');
    let plus = if zero || number.starts_with('-') { "" } else { "+" };
    typographic(&format!("{plus}{number}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn zero_has_no_sign() {
        assert_eq!(fixed(-0.0004, 3), "0.000");
        assert_eq!(fixed(-0.0006, 3), "-0.001");
        assert_eq!(with_sign("0.000 deg"), "0.000 deg");
    }

    #[test]
    fn ticks_are_short_and_carry_a_true_minus() {
        assert_eq!(tick(-0.5), "\u{2212}0.5");
        assert_eq!(tick(20.0), "20");
        assert_eq!(tick(0.1 + 0.2), "0.3");
        assert_eq!(tick(-0.0), "0");
    }

    #[test]
    fn significant_digits_are_kept() {
        assert_eq!(significant(4418.7, 4), "4419");
        assert_eq!(significant(0.53214, 4), "0.5321");
        assert_eq!(significant(-12.3456, 4), "-12.35");
        assert_eq!(significant(1.0726e7, 4), "1.073e7");
        assert_eq!(significant(0.0, 4), "0");
    }

    #[test]
    fn powers_are_raised_in_pictures() {
        assert_eq!(with_power("-1.073e7 mm"), "\u{2212}1.073\u{d7}10\u{2077} mm");
        assert_eq!(with_power("2.5e-12"), "2.5\u{d7}10\u{207b}\u{b9}\u{b2}");
        assert_eq!(with_power("4.2 deg"), "4.2 deg");
    }

    #[test]
    fn forces_follow_the_unit_system() {
        let force = 44_482.216_152_605;
        assert_eq!(Numbers { system: UnitSystem::Si }.full(force, Shown::Force), "44.48 kN");
        assert_eq!(Numbers { system: UnitSystem::Us }.full(force, Shown::Force), "10000 lbf");
    }
}
