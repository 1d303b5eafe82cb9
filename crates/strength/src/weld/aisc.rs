//! Fillet welds by ANSI/AISC 360-22, J2.4.

use std::f64::consts::SQRT_2;

use axlebow_units::Kind;

use super::{BaseMetal, Fillet, WeldLoad};
use crate::error::positive;
use crate::{Check, StrengthError};

const ONE_SIDED: &str = "ANSI/AISC 360-22, J2.4: 0.60 F_EXX on the throat; a fillet on one side of its plate earns nothing by the load's \
     direction (from memory)";
const WELD: &str = "ANSI/AISC 360-22, J2.4: 0.60 F_EXX (1 + 0.50 sin^1.5 θ) on the throat (from memory)";
const BASE: &str = "ANSI/AISC 360-22, J4.2: 0.60 F_y (phi 1.00, omega 1.50) and 0.60 F_u (phi 0.75, omega 2.00) on \
     the thickness (from memory)";

/// What helps a part that shears beside its weld.
pub(super) const SPREAD: &str =
    "a larger weld does not help: spread the load over more length or a thicker part";

/// Share of a tensile strength that shear may reach: J2.4 and J4.2.
const SHEAR_SHARE: f64 = 0.60;

/// How loads and strengths are kept apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AiscBasis {
    /// Factored loads against phi times the nominal strength (LRFD).
    FactoredLoads,
    /// Working loads against the nominal strength over omega (ASD).
    WorkingLoads,
}

impl AiscBasis {
    /// Share of the nominal strength that may be used: phi or 1/omega.
    fn share(self, phi: f64, omega: f64) -> f64 {
        match self {
            Self::FactoredLoads => phi,
            Self::WorkingLoads => 1.0 / omega,
        }
    }
}

/// Weld metal as ANSI/AISC 360-22 sees it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AiscWeld {
    electrode_strength: f64,
    basis: AiscBasis,
}

impl AiscWeld {
    /// Weld metal of an electrode class.
    ///
    /// - `electrode_strength`: F_EXX (Pa), above 0; 70 ksi for E70
    /// - `basis`: which loads are brought against it
    ///
    /// Errors: [`StrengthError::NotPositive`].
    pub fn new(electrode_strength: f64, basis: AiscBasis) -> Result<Self, StrengthError> {
        Ok(Self {
            electrode_strength: positive("strength of the electrode", electrode_strength, "Pa")?,
            basis,
        })
    }

    /// Stress that the throat may carry, phi or 1/omega times 0.60 F_EXX (1 + 0.50 sin^1.5 theta) (Pa).
    ///
    /// - `angle`: theta (rad) between the load and the weld's axis
    ///
    /// Not for the ends of rectangular tubes in tension, which have no increase with the angle.
    ///
    /// Source: ANSI/AISC 360-22, J2.4, phi 0.75, omega 2.00.
    pub fn throat_strength(&self, angle: f64) -> f64 {
        let directional = 1.0 + 0.50 * angle.sin().abs().powf(1.5);
        self.basis.share(0.75, 2.00) * SHEAR_SHARE * self.electrode_strength * directional
    }

    /// Strength of a fillet per length (N/m) for a load at `angle` (rad) to its axis; of a one-sided one as for a load
    /// along it.
    pub fn strength(&self, fillet: &Fillet, angle: f64) -> f64 {
        self.throat_strength(if fillet.is_one_sided() { 0.0 } else { angle }) * fillet.throat()
    }

    /// Throat stress of a fillet against what its throat may carry, as by [`AiscWeld::strength`].
    pub fn check(&self, fillet: &Fillet, load: &WeldLoad) -> Check {
        let throat = fillet.throat();
        let (stress, limit) = (load.resultant() / throat, self.strength(fillet, load.angle()) / throat);
        Check::at_most("weld throat stress", Kind::Stress, stress, limit)
            .sourced(if fillet.is_one_sided() { ONE_SIDED } else { WELD })
            .advising("enlarge the weld, weld both sides, or lengthen the attached part")
    }

    /// Leg that carries a load just so (m).
    pub fn needed_leg(&self, load: &WeldLoad) -> f64 {
        SQRT_2 * load.resultant() / self.throat_strength(load.angle())
    }

    /// Shear stress in a part beside the weld against yielding and rupture, each named after the part.
    ///
    /// A load that pulls on the part is held to the shear limits too, which are the lower ones.
    ///
    /// - `load`: all that the part carries there; of two fillets at one place the sum
    pub fn base_metal_checks(&self, part: &BaseMetal, load: &WeldLoad) -> [Check; 2] {
        let stress = load.resultant() / part.thickness();
        let yielding = self.basis.share(1.00, 1.50) * SHEAR_SHARE * part.yield_strength();
        let rupture = self.basis.share(0.75, 2.00) * SHEAR_SHARE * part.ultimate_strength();
        [("yielding", yielding), ("rupture", rupture)].map(|(how, limit)| {
            Check::at_most(format!("{} shear, {how}", part.name()), Kind::Stress, stress, limit)
                .sourced(BASE)
                .advising(SPREAD)
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;
    use std::f64::consts::FRAC_PI_2;

    fn e70() -> AiscWeld {
        AiscWeld::new(482.633e6, AiscBasis::WorkingLoads).unwrap()
    }

    #[test]
    fn a_weld_is_half_as_strong_again_across_as_along() {
        assert_relative_eq!(e70().throat_strength(FRAC_PI_2), 1.5 * e70().throat_strength(0.0));
    }

    #[test]
    fn a_fillet_on_one_side_earns_nothing_by_the_direction_of_its_load() {
        let fillet = Fillet::with_leg(0.006).unwrap().one_sided();
        let across = WeldLoad { away: 300e3, ..WeldLoad::default() };
        assert_relative_eq!(e70().check(&fillet, &across).limit, e70().throat_strength(0.0));
    }

    #[test]
    fn the_needed_leg_is_used_up_just_so() {
        let load = WeldLoad { along: 300e3, across: 0.0, away: 200e3 };
        let fillet = Fillet::with_leg(e70().needed_leg(&load)).unwrap();
        assert_relative_eq!(e70().check(&fillet, &load).utilization(), 1.0, max_relative = 1e-12);
    }

    #[test]
    fn thin_base_metal_yields_before_it_tears() {
        let part = BaseMetal::new("wall", 0.003, 250e6, 400e6).unwrap();
        let load = WeldLoad::of_shear_flow(300e3, 1);
        let [yielding, rupture] = e70().base_metal_checks(&part, &load);
        assert_relative_eq!(yielding.limit, 100e6);
        assert_relative_eq!(rupture.limit, 120e6);
        assert_relative_eq!(yielding.value, 100e6);
        assert_eq!(rupture.what, "wall shear, rupture");
    }
}
