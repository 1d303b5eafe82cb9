//! Quantities in the units of a reader.

use axlebow_units::{Kind, UnitSystem, display_unit};

use super::{Shown, fixed, significant};

/// Writes quantities in the display units of one system.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Numbers {
    /// The reader's unit system.
    pub system: UnitSystem,
}

impl Numbers {
    /// Symbol of the display unit.
    pub fn unit(self, shown: impl Into<Shown>) -> &'static str {
        match shown.into() {
            Shown::RoadDistance => self.road_unit().0,
            shown => display_unit(shown.kind(), self.system).symbol,
        }
    }

    /// Value in the display unit.
    pub fn scaled(self, value: f64, shown: impl Into<Shown>) -> f64 {
        value / self.factor(shown)
    }

    /// SI value of one display unit.
    pub fn factor(self, shown: impl Into<Shown>) -> f64 {
        match shown.into() {
            Shown::RoadDistance => self.road_unit().1,
            shown => display_unit(shown.kind(), self.system).factor,
        }
    }

    /// A distance along a road (m) to three digits, such as "1230000 km".
    pub fn distance(self, distance: f64) -> String {
        let (symbol, factor) = self.road_unit();
        let number = distance / factor;
        if !number.is_finite() {
            return "without end".to_owned();
        }
        if number.abs() < 100.0 {
            return format!("{} {symbol}", significant(number, 3));
        }
        let step = 10f64.powi(number.abs().log10().floor() as i32 - 2);
        let number = fixed((number / step).round() * step, 0);
        format!("{number} {symbol}")
    }

    /// Symbol and value (m) of the unit of distances along a road.
    pub fn road_unit(self) -> (&'static str, f64) {
        match self.system {
            UnitSystem::Si => ("km", 1e3),
            UnitSystem::Us => ("mi", 1609.344),
        }
    }

    /// Value or limit of a check: a length of a kilometer and more is a distance along a road.
    pub fn checked(self, value: f64, kind: Kind) -> String {
        if kind == Kind::Length && value >= 1e3 {
            return self.distance(value);
        }
        self.full(value, Shown::Free(kind))
    }

    /// Symbol and value of the unit of a road's roughness index: m/km, or in/mi of 63 360 inches.
    pub fn roughness(self) -> (&'static str, f64) {
        match self.system {
            UnitSystem::Si => ("m/km", 1e-3),
            UnitSystem::Us => ("in/mi", 1.0 / 63_360.0),
        }
    }

    /// Value in the display unit, without the unit.
    pub fn bare(self, value: f64, shown: impl Into<Shown>) -> String {
        let shown = shown.into();
        let value = self.scaled(value, shown);
        shown.decimals(self.system).map_or_else(|| significant(value, 4), |decimals| fixed(value, decimals))
    }

    /// Value and unit.
    pub fn full(self, value: f64, shown: impl Into<Shown>) -> String {
        let shown = shown.into();
        format!("{} {}", self.bare(value, shown), self.unit(shown)).trim_end().to_owned()
    }

    /// Half of an interval about a value, in the display unit, to two digits.
    pub fn half(self, [low, high]: [f64; 2], shown: impl Into<Shown>) -> String {
        significant(0.5 * self.scaled(high - low, shown), 2)
    }

    /// Value and unit of any kind, to four digits without zeros at their end.
    pub fn short(self, value: f64, kind: Kind) -> String {
        let number = self.bare(value, Shown::Free(kind));
        let plain = number.contains('.') && !number.contains('e');
        let number = if plain { number.trim_end_matches('0').trim_end_matches('.') } else { &number };
        format!("{number} {}", self.unit(kind)).trim_end().to_owned()
    }

    /// Heading of a column: what it holds and its unit.
    pub fn heading(self, text: &str, shown: impl Into<Shown>) -> String {
        format!("{text}, {}", self.unit(shown)).trim_end_matches(", ").to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn distances_have_three_digits() {
        let (si, us) = (Numbers { system: UnitSystem::Si }, Numbers { system: UnitSystem::Us });
        assert_eq!(si.distance(1.234_567e9), "1230000 km");
        assert_eq!(us.distance(1.609_344e9), "1000000 mi");
        assert_eq!(si.distance(2_345.0), "2.35 km");
        assert_eq!(si.distance(f64::INFINITY), "without end");
        assert_eq!(us.full(1.609_344e7, Shown::RoadDistance), "10000 mi");
        assert_eq!(si.checked(0.006, Kind::Length), "6.000 mm");
        assert_eq!(si.checked(2e6, Kind::Length), "2000 km");
    }

    #[test]
    fn forces_follow_the_unit_system() {
        let force = 44_482.216_152_605;
        assert_eq!(Numbers { system: UnitSystem::Si }.full(force, Kind::Force), "44.48 kN");
        assert_eq!(Numbers { system: UnitSystem::Us }.full(force, Kind::Force), "10000 lbf");
    }
}
