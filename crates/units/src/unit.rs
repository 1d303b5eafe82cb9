//! The table of named units and the authority for each factor; the places are cited from memory.
//!
//! - SI units, prefixes, min, h, deg, t: BIPM, *The International System of Units*, 9th ed. (2019),
//!   tables 4, 7 and 8; standard gravity 9.806 65 m/s² (3rd CGPM, 1901).
//! - in, ft, yd, mi, lb, oz, lbf, kip, slug, kgf, psi, ksi, mph: NIST SP 811 (2008), appendix B. The inch is
//!   0.0254 m and the pound 0.453 592 37 kg exactly, so lbf = lb·gn = 4.448 221 615 260 5 N exactly and
//!   the others follow; the seven digits printed there for them are roundings of these.

use std::f64::consts::PI;

use crate::{Dimension, Kind, UnitSystem};

/// SI value of one unit, kept as a quotient so that `152.4 mm` is 152.4/1000, rounded once.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Factor {
    /// Numerator.
    pub over: f64,
    /// Denominator.
    pub under: f64,
}

impl Factor {
    /// The factor 1.
    pub const ONE: Self = Self { over: 1.0, under: 1.0 };

    /// The factor `self · other^power`.
    pub fn times(self, other: Self, power: i32) -> Self {
        let (over, under) = if power < 0 { (other.under, other.over) } else { (other.over, other.under) };
        let power = i32::try_from(power.unsigned_abs()).unwrap_or(i32::MAX);
        Self { over: self.over * over.powi(power), under: self.under * under.powi(power) }
    }

    /// SI value of `number` units.
    pub fn apply(self, number: f64) -> f64 {
        number * self.over / self.under
    }
}

/// A unit that has a name.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Unit {
    /// Symbol as written.
    pub symbol: &'static str,
    /// SI value of one unit.
    pub factor: Factor,
    /// Exponents of the base quantities.
    pub dimension: Dimension,
    /// System that the unit belongs to; `None` for units that both use, such as `s` and `deg`.
    pub system: Option<UnitSystem>,
}

impl Unit {
    const fn new(symbol: &'static str, over: f64, under: f64, kind: Kind) -> Self {
        Self { symbol, factor: Factor { over, under }, dimension: kind.dimension(), system: None }
    }

    const fn si(symbol: &'static str, over: f64, under: f64, kind: Kind) -> Self {
        Self { system: Some(UnitSystem::Si), ..Self::new(symbol, over, under, kind) }
    }

    const fn us(symbol: &'static str, over: f64, under: f64, kind: Kind) -> Self {
        Self { system: Some(UnitSystem::Us), ..Self::new(symbol, over, under, kind) }
    }

    /// The unit that has a symbol, case-sensitive.
    pub fn named(symbol: &str) -> Option<&'static Self> {
        UNITS.iter().find(|unit| unit.symbol == symbol)
    }
}

/// Standard acceleration of gravity, m/s², exact.
pub const STANDARD_GRAVITY: f64 = 9.806_65;

/// Pound-force, N, exact.
const LBF: f64 = 4.448_221_615_260_5;

/// Inch squared, m², exact.
const IN2: f64 = 0.000_645_16;

/// Every named unit.
pub const UNITS: [Unit; 44] = [
    Unit::si("m", 1.0, 1.0, Kind::Length),
    Unit::si("mm", 1.0, 1e3, Kind::Length),
    Unit::si("cm", 1.0, 1e2, Kind::Length),
    Unit::si("km", 1e3, 1.0, Kind::Length),
    Unit::si("um", 1.0, 1e6, Kind::Length),
    Unit::si("µm", 1.0, 1e6, Kind::Length),
    Unit::us("in", 254.0, 1e4, Kind::Length),
    Unit::us("ft", 3048.0, 1e4, Kind::Length),
    Unit::us("yd", 9144.0, 1e4, Kind::Length),
    Unit::us("mi", 1_609_344.0, 1e3, Kind::Length),
    Unit::si("kg", 1.0, 1.0, Kind::Mass),
    Unit::si("g", 1.0, 1e3, Kind::Mass),
    Unit::si("t", 1e3, 1.0, Kind::Mass),
    Unit::us("lb", 45_359_237.0, 1e8, Kind::Mass),
    Unit::us("oz", 45_359_237.0, 16e8, Kind::Mass),
    Unit::us("slug", LBF, 0.3048, Kind::Mass),
    Unit::new("s", 1.0, 1.0, Kind::Time),
    Unit::new("ms", 1.0, 1e3, Kind::Time),
    Unit::new("min", 60.0, 1.0, Kind::Time),
    Unit::new("h", 3600.0, 1.0, Kind::Time),
    Unit::new("rad", 1.0, 1.0, Kind::Angle),
    Unit::new("mrad", 1.0, 1e3, Kind::Angle),
    Unit::new("deg", PI, 180.0, Kind::Angle),
    Unit::new("°", PI, 180.0, Kind::Angle),
    Unit::si("N", 1.0, 1.0, Kind::Force),
    Unit::si("daN", 10.0, 1.0, Kind::Force),
    Unit::si("kN", 1e3, 1.0, Kind::Force),
    Unit::si("MN", 1e6, 1.0, Kind::Force),
    Unit::si("kgf", STANDARD_GRAVITY, 1.0, Kind::Force),
    Unit::us("lbf", LBF, 1.0, Kind::Force),
    Unit::us("kip", LBF * 1e3, 1.0, Kind::Force),
    Unit::si("Pa", 1.0, 1.0, Kind::Stress),
    Unit::si("kPa", 1e3, 1.0, Kind::Stress),
    Unit::si("MPa", 1e6, 1.0, Kind::Stress),
    Unit::si("GPa", 1e9, 1.0, Kind::Stress),
    Unit::si("bar", 1e5, 1.0, Kind::Stress),
    Unit::us("psi", LBF, IN2, Kind::Stress),
    Unit::us("ksi", LBF * 1e3, IN2, Kind::Stress),
    Unit::us("Msi", LBF * 1e6, IN2, Kind::Stress),
    Unit::us("mph", 44_704.0, 1e5, Kind::Speed),
    Unit::new("gn", STANDARD_GRAVITY, 1.0, Kind::Acceleration),
    Unit::new("Hz", 1.0, 1.0, Kind::Frequency),
    Unit::new("kHz", 1e3, 1.0, Kind::Frequency),
    Unit::new("%", 1.0, 1e2, Kind::Ratio),
];

/// Names that people write for a unit, and its symbol here.
const NAMES: [(&str, &str); 34] = [
    ("inch", "in"),
    ("inches", "in"),
    ("foot", "ft"),
    ("feet", "ft"),
    ("yard", "yd"),
    ("mile", "mi"),
    ("miles", "mi"),
    ("meter", "m"),
    ("meter", "m"),
    ("meters", "m"),
    ("meters", "m"),
    ("lbs", "lb"),
    ("pound", "lb"),
    ("pounds", "lb"),
    ("lbsf", "lbf"),
    ("kips", "kip"),
    ("klbf", "kip"),
    ("newton", "N"),
    ("newtons", "N"),
    ("tonne", "t"),
    ("tonnes", "t"),
    ("gram", "g"),
    ("grams", "g"),
    ("degree", "deg"),
    ("degrees", "deg"),
    ("radian", "rad"),
    ("radians", "rad"),
    ("second", "s"),
    ("seconds", "s"),
    ("sec", "s"),
    ("hour", "h"),
    ("hours", "h"),
    ("kph", "km/h"),
    ("kmh", "km/h"),
];

/// The symbol that was likely meant by an unknown word, if one is near.
///
/// In order: a known name such as `inches`; the same letters in another case; the nearest symbol of two
/// letters or more, by Damerau–Levenshtein distance, that differs by one edit.
pub fn likely(word: &str) -> Option<&'static str> {
    let lower = word.to_lowercase();
    let name = NAMES.iter().find(|(name, _)| *name == lower).map(|(_, symbol)| *symbol);
    let same_letters =
        || UNITS.iter().find(|unit| unit.symbol.to_lowercase() == lower).map(|unit| unit.symbol);
    let near = || {
        let near =
            |unit: &&Unit| unit.symbol.len() > 1 && strsim::damerau_levenshtein(unit.symbol, word) == 1;
        UNITS.iter().find(near).map(|unit| unit.symbol)
    };
    if word.len() > 24 { None } else { name.or_else(same_letters).or_else(near) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn symbols_are_unique_and_factors_positive() {
        for (i, unit) in UNITS.iter().enumerate() {
            assert_eq!(UNITS.iter().position(|other| other.symbol == unit.symbol), Some(i));
            assert!(unit.factor.apply(1.0) > 0.0 && unit.factor.apply(1.0).is_finite());
        }
    }

    #[test]
    fn every_common_name_leads_to_a_unit_and_is_not_itself_one() {
        for (name, symbol) in NAMES {
            assert!(Unit::named(symbol).is_some() || symbol == "km/h", "{symbol}");
            assert!(Unit::named(name).is_none());
        }
    }

    #[test]
    fn likely_word_is_found_by_name_case_and_nearness() {
        assert_eq!(likely("inches"), Some("in"));
        assert_eq!(likely("MM"), Some("mm"));
        assert_eq!(likely("mpa"), Some("MPa"));
        assert_eq!(likely("ibf"), Some("lbf"));
        assert_eq!(likely("zzzz"), None);
    }
}
