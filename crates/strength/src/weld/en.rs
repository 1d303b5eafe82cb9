//! Fillet welds by EN 1993-1-8:2005, 4.5.3.

use std::f64::consts::SQRT_2;

use axlebow_units::Kind;

use super::aisc::SPREAD;
use super::{BaseMetal, Fillet, WeldLoad};
use crate::error::{positive, within};
use crate::{Check, StrengthError};

const SIMPLIFIED: &str = "EN 1993-1-8:2005, 4.5.3.3: f_u/(√3 β_w γ_M2) on the throat (from memory)";
const EQUIVALENT: &str = "EN 1993-1-8:2005, 4.5.3.2: √(σ² + 3(τ² + τ∥²)) ≤ f_u/(β_w γ_M2) (from memory)";
const NORMAL: &str = "EN 1993-1-8:2005, 4.5.3.2: σ ≤ 0.9 f_u/γ_M2 (from memory)";
const BASE: &str = "EN 1993-1-1:2005, 6.2.6: f_y/(√3 γ_M0) on the thickness, γ_M0 1.00 (from memory)";
const ADVICE: &str = "enlarge the weld, weld both sides, or lengthen the attached part";

/// Fillet welds as EN 1993-1-8:2005 sees them; loads are factored ones.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EnWeld {
    ultimate_strength: f64,
    correlation_factor: f64,
    partial_factor: f64,
}

impl EnWeld {
    /// A weld on steel whose weaker part has an ultimate strength.
    ///
    /// - `ultimate_strength`: f_u (Pa) of the weaker part joined, above 0
    /// - `correlation_factor`: β_w, 0.5 to 2, as by [`correlation_factor`]
    ///
    /// The partial factor γ_M2 is 1.25 (the recommended value; a National Annex may differ).
    ///
    /// Errors: [`StrengthError::NotPositive`], [`StrengthError::Range`].
    pub fn new(ultimate_strength: f64, correlation_factor: f64) -> Result<Self, StrengthError> {
        Ok(Self {
            ultimate_strength: positive("ultimate strength of the weaker part", ultimate_strength, "Pa")?,
            correlation_factor: within("correlation factor of the weld", correlation_factor, "", 0.5..=2.0)?,
            partial_factor: 1.25,
        })
    }

    /// The same weld with another partial factor γ_M2, 1 to 3.
    ///
    /// Errors: [`StrengthError::Range`].
    pub fn with_partial_factor(self, partial_factor: f64) -> Result<Self, StrengthError> {
        Ok(Self {
            partial_factor: within("partial factor of the weld", partial_factor, "", 1.0..=3.0)?,
            ..self
        })
    }

    /// Shear strength of the throat, f_vw,d = f_u/(√3 β_w γ_M2) (Pa), whichever way the load points.
    pub fn shear_strength(&self) -> f64 {
        self.equivalent_strength() / 3.0_f64.sqrt()
    }

    /// Strength of a fillet per length (N/m) by the simplified method.
    pub fn strength(&self, fillet: &Fillet) -> f64 {
        self.shear_strength() * fillet.throat()
    }

    /// Resultant on the throat against [`EnWeld::shear_strength`]: the simplified method.
    pub fn simplified_check(&self, fillet: &Fillet, load: &WeldLoad) -> Check {
        let stress = load.resultant() / fillet.throat();
        Check::at_most("weld throat stress", Kind::Stress, stress, self.shear_strength())
            .sourced(SIMPLIFIED)
            .advising(ADVICE)
    }

    /// Equivalent and normal stress on the throat: the directional method, which credits the direction of the load.
    ///
    /// For faces at a right angle.
    pub fn directional_checks(&self, fillet: &Fillet, load: &WeldLoad) -> [Check; 2] {
        let stress = load.throat_stress(fillet.throat());
        let shear = stress.shear_across.hypot(stress.shear_along);
        let equivalent = stress.normal.hypot(3.0_f64.sqrt() * shear);
        let normal_strength = 0.9 * self.ultimate_strength / self.partial_factor;
        [
            Check::at_most("weld equivalent stress", Kind::Stress, equivalent, self.equivalent_strength())
                .sourced(EQUIVALENT)
                .advising(ADVICE),
            Check::at_most("weld normal stress", Kind::Stress, stress.normal.abs(), normal_strength)
                .sourced(NORMAL)
                .advising(ADVICE),
        ]
    }

    /// A fillet by the method that suits it: the directional one, but the simplified one where it is one-sided.
    pub fn checks(&self, fillet: &Fillet, load: &WeldLoad) -> Vec<Check> {
        match fillet.is_one_sided() {
            true => vec![self.simplified_check(fillet, load)],
            false => self.directional_checks(fillet, load).to_vec(),
        }
    }

    /// Shear stress in a part beside the weld against yielding, named after the part.
    ///
    /// - `load`: all that the part carries there; of two fillets at one place the sum
    pub fn base_metal_check(part: &BaseMetal, load: &WeldLoad) -> Check {
        let stress = load.resultant() / part.thickness();
        let limit = part.yield_strength() / 3.0_f64.sqrt();
        Check::at_most(format!("{} shear, yielding", part.name()), Kind::Stress, stress, limit)
            .sourced(BASE)
            .advising(SPREAD)
    }

    /// Leg that carries a load just so by the simplified method (m).
    pub fn needed_leg(&self, load: &WeldLoad) -> f64 {
        SQRT_2 * load.resultant() / self.shear_strength()
    }

    fn equivalent_strength(&self) -> f64 {
        self.ultimate_strength / (self.correlation_factor * self.partial_factor)
    }
}

/// Correlation factor β_w of a steel with a nominal yield strength (Pa): 0.80, 0.85, 0.90 or 1.00.
///
/// Steel between two grades takes the less favorable one. Up to 460 MPa; above, the table ends and 1.00 is a lower
/// bound only.
///
/// Source: EN 1993-1-8:2005, Table 4.1 (from memory).
pub fn correlation_factor(yield_strength: f64) -> f64 {
    const GRADES: [(f64, f64); 3] = [(235e6, 0.80), (275e6, 0.85), (355e6, 0.90)];
    let grade = GRADES.iter().find(|(grade, _)| yield_strength <= *grade);
    grade.map_or(1.00, |(_, factor)| *factor)
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    fn s355() -> EnWeld {
        EnWeld::new(510e6, correlation_factor(355e6)).unwrap()
    }

    #[test]
    fn both_methods_agree_along_the_weld() {
        let (fillet, load) = (Fillet::with_throat(0.005).unwrap(), WeldLoad::of_shear_flow(400e3, 1));
        let [equivalent, normal] = s355().directional_checks(&fillet, &load);
        assert_relative_eq!(
            equivalent.utilization(),
            s355().simplified_check(&fillet, &load).utilization(),
            max_relative = 1e-12
        );
        assert_eq!(normal.value, 0.0);
    }

    #[test]
    fn a_load_square_to_the_weld_gains_by_the_directional_method() {
        let fillet = Fillet::with_throat(0.005).unwrap();
        let load = WeldLoad { away: 400e3, ..WeldLoad::default() };
        let [equivalent, _] = s355().directional_checks(&fillet, &load);
        let gain = s355().simplified_check(&fillet, &load).utilization() / equivalent.utilization();
        assert_relative_eq!(gain, 1.5_f64.sqrt(), max_relative = 1e-12);
    }

    #[test]
    fn a_fillet_on_one_side_goes_by_the_simplified_method() {
        let fillet = Fillet::with_throat(0.005).unwrap().one_sided();
        let load = WeldLoad { away: 400e3, ..WeldLoad::default() };
        assert_eq!(s355().checks(&fillet, &load), [s355().simplified_check(&fillet, &load)]);
    }

    #[test]
    fn the_part_beside_a_weld_shears_at_its_yield_strength_over_root_three() {
        let part = BaseMetal::new("wall", 0.004, 355e6, 510e6).unwrap();
        let check = EnWeld::base_metal_check(&part, &WeldLoad { along: 3e5, across: 0.0, away: 4e5 });
        assert_relative_eq!(check.value, 125e6);
        assert_relative_eq!(check.limit, 204.959_3e6, max_relative = 1e-6);
    }

    #[test]
    fn grades_between_two_take_the_less_favorable_factor() {
        let factors = [235e6, 236e6, 275e6, 355e6, 420e6, 460e6].map(correlation_factor);
        assert_eq!(factors, [0.80, 0.85, 0.85, 0.90, 1.00, 1.00]);
    }

    #[test]
    fn factors_out_of_range_are_refused() {
        assert!(EnWeld::new(0.0, 0.9).is_err());
        assert!(EnWeld::new(510e6, 0.4).is_err());
        assert!(s355().with_partial_factor(0.9).is_err());
    }
}
