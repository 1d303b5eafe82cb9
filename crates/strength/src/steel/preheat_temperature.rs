//! How warm a steel must be before it is welded, thickness counted.

use crate::StrengthError;
use crate::error::{positive, within};

/// The method and where its digits come from.
pub const PREHEAT_METHOD: &str = "EN 1011-2:2001, Annex C, method B (carbon equivalent CET, thickness, hydrogen, heat input; digits from memory)";

/// Carbon equivalents CET that the method covers, per cent.
const COVERED: [f64; 2] = [0.20, 0.50];
/// Thicknesses that it covers, mm.
const THICKNESSES: [f64; 2] = [10.0, 90.0];
/// Temperature below which the method asks for no more than a dry joint, °C: that of a shop (our reading).
const SHOP: f64 = 20.0;

/// How a weld is laid, as far as it decides whether its steel must be warm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WeldHeat {
    /// Diffusible hydrogen HD of the deposited metal by ISO 3690, ml in 100 g.
    pub hydrogen: f64,
    /// Heat input Q, J/m.
    pub heat_input: f64,
}

impl WeldHeat {
    /// Low-hydrogen consumables of class H5 and a small fillet, 1 kJ/mm (common practice, no source).
    pub const USUAL: WeldHeat = WeldHeat { hydrogen: 5.0, heat_input: 1e6 };
}

/// Least temperature of the steel before and between passes, °C:
/// T = 697 CET + 160 tanh(d/35) + 62 HD^0.35 + (53 CET - 32) Q - 328, with d in mm and Q in kJ/mm.
///
/// - `cet`: carbon equivalent CET (per cent), above 0
/// - `thickness`: of the thickest part joined (m), above 0
/// - `heat`: hydrogen 1 to 20 ml in 100 g, heat input 0.5 to 4 kJ/mm
///
/// Returns: none where CET lies above 0.50, which the method does not cover; the shop's 20 °C where it asks for less. Below
/// CET 0.20 and 10 mm those values are taken, beyond 90 mm that one: the first two on the safe side, the last within 4 °C.
///
/// Validity: yield strength up to 1000 MPa; the weld metal's CET lower than the steel's by 0.03 or more.
///
/// Errors: [`StrengthError::NotPositive`], [`StrengthError::Range`].
///
/// Source: EN 1011-2:2001, Annex C.3, method B (from memory; the formula agrees with two later printings of it).
pub fn preheat_temperature(cet: f64, thickness: f64, heat: WeldHeat) -> Result<Option<f64>, StrengthError> {
    let cet = positive("carbon equivalent CET", cet, "%")?;
    let d = 1e3 * positive("thickness to be welded", thickness, "m")?;
    let hydrogen = within("diffusible hydrogen", heat.hydrogen, "ml/100 g", 1.0..=20.0)?;
    let q = 1e-6 * within("heat input", heat.heat_input, "J/m", 0.5e6..=4e6)?;
    if cet > COVERED[1] {
        return Ok(None);
    }
    let (cet, d) = (cet.max(COVERED[0]), d.clamp(THICKNESSES[0], THICKNESSES[1]));
    let by_steel = 697.0 * cet + 160.0 * (d / 35.0).tanh() - 328.0;
    let by_weld = 62.0 * hydrogen.powf(0.35) + (53.0 * cet - 32.0) * q;
    Ok(Some((by_steel + by_weld).max(SHOP)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn temperature(cet: f64, millimeters: f64, hydrogen: f64, kilojoules: f64) -> Option<f64> {
        let heat = WeldHeat { hydrogen, heat_input: 1e6 * kilojoules };
        preheat_temperature(cet, 1e-3 * millimeters, heat).unwrap()
    }

    /// The formula worked out by NumPy, to all printed digits.
    #[test]
    fn temperatures_match_the_formula_worked_out_elsewhere() {
        for (given, expected) in [
            ((0.33, 10.0, 5.0, 1.0), 40.910_508_758_766),
            ((0.30, 20.0, 5.0, 1.0), 56.526_055_136_282),
            ((0.40, 50.0, 3.0, 2.0), 162.891_598_522_760),
            ((0.28, 15.0, 10.0, 0.8), 56.892_988_952_494),
            ((0.50, 90.0, 20.0, 4.0), 333.551_662_060_685),
        ] {
            let own = temperature(given.0, given.1, given.2, given.3).unwrap();
            assert!((own - expected).abs() < 1e-9, "{given:?}: {own}");
        }
    }

    #[test]
    fn what_the_method_does_not_cover_is_taken_at_its_bounds_or_not_at_all() {
        assert_eq!(temperature(0.501, 10.0, 5.0, 1.0), None);
        assert_eq!(temperature(0.33, 6.0, 5.0, 1.0), temperature(0.33, 10.0, 5.0, 1.0));
        assert_eq!(temperature(0.33, 120.0, 5.0, 1.0), temperature(0.33, 90.0, 5.0, 1.0));
        assert_eq!(temperature(0.10, 60.0, 15.0, 0.5), temperature(0.20, 60.0, 15.0, 0.5));
        assert_eq!(temperature(0.20, 10.0, 5.0, 4.0), Some(20.0));
    }

    #[test]
    fn values_out_of_range_are_refused() {
        let usual = WeldHeat::USUAL;
        for (cet, thickness) in [(0.0, 0.01), (f64::NAN, 0.01), (0.3, 0.0), (0.3, f64::NAN)] {
            assert!(preheat_temperature(cet, thickness, usual).is_err());
        }
        for (hydrogen, heat_input) in [(0.9, 1e6), (20.1, 1e6), (5.0, 0.49e6), (5.0, 4.1e6), (f64::NAN, 1e6)]
        {
            assert!(preheat_temperature(0.3, 0.01, WeldHeat { hydrogen, heat_input }).is_err());
        }
    }
}
