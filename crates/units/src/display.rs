//! SI value to text.

use crate::Kind;

/// Unit system of text.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum UnitSystem {
    /// International System.
    Si,
    /// United States customary.
    Us,
}

/// A unit that results are shown in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DisplayUnit {
    /// Symbol, empty for a plain number.
    pub symbol: &'static str,
    /// SI value of one unit.
    pub factor: f64,
}

/// The unit that a kind of quantity is shown in.
///
/// Arguments: `kind`; `system`, the unit system of the reader.
///
/// Returns the symbol, which [`parse`](crate::parse) reads, and its SI value.
pub fn display_unit(kind: Kind, system: UnitSystem) -> DisplayUnit {
    let (si, us) = symbols(kind);
    let symbol = if system == UnitSystem::Si { si } else { us };
    let factor = crate::parse(&format!("1 {symbol}"), kind).map_or(1.0, |parsed| parsed.value);
    DisplayUnit { symbol, factor }
}

/// Writes a quantity with its unit, to five significant digits.
///
/// Arguments: `value`, SI; `kind`, what it measures; `system`, the unit system of the reader.
///
/// Returns text such as `152.4 mm`, which [`parse`](crate::parse) reads back if the value is finite.
pub fn show(value: f64, kind: Kind, system: UnitSystem) -> String {
    let unit = display_unit(kind, system);
    let number = number(value / unit.factor);
    if unit.symbol.is_empty() { number } else { format!("{number} {}", unit.symbol) }
}

/// Symbol in SI and in US customary units.
fn symbols(kind: Kind) -> (&'static str, &'static str) {
    match kind {
        Kind::Length => ("mm", "in"),
        Kind::Area => ("mm²", "in²"),
        Kind::SecondMoment => ("mm⁴", "in⁴"),
        Kind::SectionModulus => ("mm³", "in³"),
        Kind::Mass => ("kg", "lb"),
        Kind::MassPerLength => ("kg/m", "lb/ft"),
        Kind::Density => ("kg/m³", "lb/in³"),
        Kind::Force => ("kN", "lbf"),
        Kind::Moment => ("kN m", "lbf ft"),
        Kind::Stress => ("MPa", "ksi"),
        Kind::Stiffness => ("N/mm", "lbf/in"),
        Kind::RotationalStiffness => ("kN m/rad", "lbf ft/deg"),
        Kind::RotationalFlexibility => ("mrad/(kN m)", "deg/(kip ft)"),
        Kind::Damping => ("kN s/m", "lbf s/in"),
        Kind::RotationalDamping => ("kN m s/rad", "lbf ft s/deg"),
        Kind::Angle => ("deg", "deg"),
        Kind::AnglePerMass => ("deg/kg", "deg/lb"),
        Kind::Abrasion => ("mm³/(N m)", "in³/(lbf ft)"),
        Kind::Speed => ("km/h", "mph"),
        Kind::Acceleration => ("m/s²", "ft/s²"),
        Kind::Frequency => ("Hz", "Hz"),
        Kind::Time => ("s", "s"),
        Kind::Ratio => ("", ""),
    }
}

/// Five significant digits without trailing zeros; whole digits are all kept below ten million.
fn number(x: f64) -> String {
    if x == 0.0 {
        return "0".to_owned();
    }
    if !x.is_finite() || !(1e-4..1e7).contains(&x.abs()) {
        return format!("{:.4e}", x);
    }
    let decimals = (4 - x.abs().log10().floor() as i32).max(0) as usize;
    let text = format!("{x:.decimals$}");
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digits_are_sensible() {
        let si = |value, kind| show(value, kind, UnitSystem::Si);
        assert_eq!(si(0.1524, Kind::Length), "152.4 mm");
        assert_eq!(si(-0.0, Kind::Length), "0 mm");
        assert_eq!(si(206e9, Kind::Stress), "206000 MPa");
        assert_eq!(si(1e-9, Kind::Length), "1.0000e-6 mm");
        assert_eq!(si(12.345678e6, Kind::Force), "12346 kN");
        assert_eq!(si(0.3, Kind::Ratio), "0.3");
        assert_eq!(show(0.1524, Kind::Length, UnitSystem::Us), "6 in");
        assert_eq!(show(1000.0, Kind::Force, UnitSystem::Us), "224.81 lbf");
        assert_eq!(show(f64::NAN, Kind::Time, UnitSystem::Us), "NaN s");
    }

    #[test]
    fn every_display_unit_reads_back_with_its_kind_and_system() {
        for kind in Kind::ALL {
            for system in [UnitSystem::Si, UnitSystem::Us] {
                let unit = display_unit(kind, system);
                let parsed = crate::parse(&format!("1 {}", unit.symbol), kind).unwrap();
                assert_eq!(parsed.value, unit.factor);
                assert!(parsed.system.is_none_or(|found| found == system), "{kind:?}");
            }
        }
    }
}
