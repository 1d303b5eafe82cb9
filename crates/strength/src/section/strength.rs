//! Stresses of a section against yield.

use axlebow_sections::{Profile, SectionProperties, ShearForces};
use axlebow_units::Kind;

use crate::error::{positive, within};
use crate::{Check, StrengthError};

const FIBER: &str = "N/A and M/S against f_y over the safety factor";
const SHEAR: &str = "V Q/(I b) and T over the torsion modulus against f_y/√3 over the safety factor";
const EQUIVALENT: &str = "R. von Mises 1913: √(σ² + 3 τ²), σ and τ of the same point, against f_y over the safety \
     factor, as in any text on plasticity";
const ADVICE: &str = "thicken or enlarge the tube, lower the load, or bring the wheels inboard";

/// Internal forces of a section; axes and signs as in the crate `sections`.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct SectionForces {
    /// N (N), tension positive.
    pub axial: f64,
    /// V along X (N).
    pub shear_x: f64,
    /// V along Z (N).
    pub shear_z: f64,
    /// M_x (N m).
    pub moment_x: f64,
    /// M_z (N m).
    pub moment_z: f64,
    /// T (N m).
    pub torsion: f64,
}

/// A yield strength and how far below it to stay.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AllowableStress {
    yield_strength: f64,
    safety_factor: f64,
}

impl AllowableStress {
    /// A yield strength with a safety factor.
    ///
    /// - `yield_strength`: f_y (Pa), above 0
    /// - `safety_factor`: 1 to 20
    ///
    /// Errors: [`StrengthError::NotPositive`], [`StrengthError::Range`].
    pub fn new(yield_strength: f64, safety_factor: f64) -> Result<Self, StrengthError> {
        Ok(Self {
            yield_strength: positive("yield strength", yield_strength, "Pa")?,
            safety_factor: within("safety factor", safety_factor, "", 1.0..=20.0)?,
        })
    }

    /// Yield strength f_y (Pa).
    pub fn yield_strength(&self) -> f64 {
        self.yield_strength
    }

    /// Safety factor.
    pub fn safety_factor(&self) -> f64 {
        self.safety_factor
    }

    /// Normal stress that is allowed, f_y/n (Pa).
    pub fn normal(&self) -> f64 {
        self.yield_strength / self.safety_factor
    }

    /// Shear stress that is allowed, f_y/(√3 n) (Pa).
    pub fn shear(&self) -> f64 {
        self.normal() / 3.0_f64.sqrt()
    }
}

/// Fiber, shear and equivalent stress of a section against yield, each where it is greatest.
pub fn yield_checks(
    profile: &Profile,
    properties: &SectionProperties,
    forces: &SectionForces,
    allowable: &AllowableStress,
) -> [Check; 3] {
    let SectionForces { axial, shear_x, shear_z, moment_x, moment_z, torsion } = *forces;
    let normal = properties.stress_field(axial, moment_x, moment_z);
    let stresses = SectionStresses {
        fiber: profile.fiber_stress(properties, axial, moment_x, moment_z).0.abs(),
        shear: profile.transverse_shear_peak(shear_x, shear_z) + properties.torsion_shear_peak(torsion),
        equivalent: profile.equivalent_stress(
            properties,
            &normal,
            &ShearForces { shear_x, shear_z, torsion },
        ),
    };
    stress_checks(&stresses, allowable)
}

/// The greatest stresses of a section (Pa, not negative), each at a place of its own.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SectionStresses {
    /// Normal stress.
    pub fiber: f64,
    /// Shear stress; the greatest of the shear forces and that of the torque are added.
    pub shear: f64,
    /// Equivalent stress, of the normal and the shear stress of one point.
    pub equivalent: f64,
}

/// Stresses of a section against yield.
pub fn stress_checks(stresses: &SectionStresses, allowable: &AllowableStress) -> [Check; 3] {
    let stress = |what: &str, value, limit| Check::at_most(what, Kind::Stress, value, limit).advising(ADVICE);
    [
        stress("fiber stress", stresses.fiber, allowable.normal()).sourced(FIBER),
        stress("shear stress", stresses.shear, allowable.shear()).sourced(SHEAR),
        stress("equivalent stress", stresses.equivalent, allowable.normal()).sourced(EQUIVALENT),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;
    use axlebow_sections::RoundTube;

    #[test]
    fn bending_alone_uses_fiber_and_equivalent_stress_alike() {
        let profile: Profile = RoundTube::new(0.127, 0.0127).unwrap().into();
        let properties = profile.properties(0.3);
        let forces = SectionForces { moment_x: 20e3, ..SectionForces::default() };
        let allowable = AllowableStress::new(350e6, 1.5).unwrap();
        let [fiber, shear, equivalent] = yield_checks(&profile, &properties, &forces, &allowable);
        assert_relative_eq!(fiber.value, 20e3 / properties.section_modulus_x(), max_relative = 1e-12);
        assert_relative_eq!(fiber.limit, 350e6 / 1.5);
        assert_eq!(shear.value, 0.0);
        assert_relative_eq!(equivalent.value, fiber.value, max_relative = 1e-14);
    }

    #[test]
    fn torsion_alone_uses_shear_and_equivalent_stress_alike() {
        let profile: Profile = RoundTube::new(0.127, 0.0127).unwrap().into();
        let forces = SectionForces { torsion: 8e3, ..SectionForces::default() };
        let allowable = AllowableStress::new(350e6, 1.0).unwrap();
        let [_, shear, equivalent] = yield_checks(&profile, &profile.properties(0.3), &forces, &allowable);
        assert_relative_eq!(shear.utilization(), equivalent.utilization(), max_relative = 1e-12);
    }

    #[test]
    fn a_safety_factor_below_one_is_refused() {
        assert_eq!(
            AllowableStress::new(350e6, 0.9).unwrap_err().to_string(),
            "safety factor is 0.9; accepted is 1 to 20"
        );
        assert!(AllowableStress::new(0.0, 1.5).is_err());
    }
}
