//! Life of a tapered roller bearing by ISO 281.

use std::f64::consts::TAU;

use axlebow_units::Kind;

use super::Reliability;
use crate::error::{positive, within};
use crate::{Check, StrengthError};

const SOURCE: &str = "ISO 281:2007: L10 = (C/P)^(10/3) million turns (from memory)";

/// Exponent of the life of roller bearings: ISO 281:2007.
const LIFE_EXPONENT: f64 = 10.0 / 3.0;

/// A single-row tapered roller bearing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TaperedRoller {
    rating: f64,
    contact_angle: f64,
}

impl TaperedRoller {
    /// A bearing by its rating and the angle of its cup.
    ///
    /// - `rating`: C (N), basic dynamic radial load rating, above 0
    /// - `contact_angle`: α (rad), of the cup raceway to the axis, 0.01 to 1
    ///
    /// Errors: [`StrengthError::NotPositive`], [`StrengthError::Range`].
    pub fn new(rating: f64, contact_angle: f64) -> Result<Self, StrengthError> {
        Ok(Self {
            rating: positive("load rating of the bearing", rating, "N")?,
            contact_angle: within("contact angle of the bearing", contact_angle, "rad", 0.01..=1.0)?,
        })
    }

    /// A bearing by its rating C (N) and its catalogue's axial factor Y = 0.4 cot α.
    ///
    /// Errors: [`StrengthError::NotPositive`], [`StrengthError::Range`].
    pub fn with_axial_factor(rating: f64, axial_factor: f64) -> Result<Self, StrengthError> {
        let axial_factor = positive("axial factor of the bearing", axial_factor, "")?;
        Self::new(rating, (0.4 / axial_factor).atan())
    }

    /// Axial factor, Y = 0.4 cot α.
    pub fn axial_factor(&self) -> f64 {
        0.4 / self.contact_angle.tan()
    }

    /// Axial over radial load up to which the axial one does not count, e = 1.5 tan α.
    pub fn axial_limit(&self) -> f64 {
        1.5 * self.contact_angle.tan()
    }

    /// Equivalent load P (N): F_r where |F_a|/F_r is at most e, else 0.4 F_r + Y |F_a|.
    ///
    /// - `radial`: F_r (N), 0 or more; `axial`: F_a (N), induced thrust included
    ///
    /// Source: ISO 281:2007, single-row tapered roller bearings (from memory).
    pub fn equivalent_load(&self, radial: f64, axial: f64) -> f64 {
        if axial.abs() <= self.axial_limit() * radial {
            return radial;
        }
        0.4 * radial + self.axial_factor() * axial.abs()
    }

    /// Thrust that a radial load (N) induces, 0.5 F_r/Y (N).
    ///
    /// Source: makers' catalogues agree on it (common practice, no source); R. G. Budynas & J. K. Nisbett, *Shigley's
    /// Mechanical Engineering Design*, 11th ed., sec. 11-9, has 0.47 F_r/K with its own K (from memory).
    pub fn induced_thrust(&self, radial: f64) -> f64 {
        0.5 * radial / self.axial_factor()
    }

    /// Rating life L10, (C/P)^(10/3) (million turns), under an equivalent load P (N).
    ///
    /// Source: ISO 281:2007 (from memory). Below about 2 and beyond about 1000 million turns only a comparison.
    pub fn rating_life(&self, equivalent: f64) -> f64 {
        (self.rating / equivalent).powf(LIFE_EXPONENT)
    }

    /// Distance (m) on a tire of a rolling radius (m) in the rating life.
    pub fn rating_distance(&self, equivalent: f64, rolling_radius: f64) -> f64 {
        self.rating_life(equivalent) * 1e6 * TAU * rolling_radius
    }
}

/// Distance in the life that a share of bearings reaches, against a wanted one.
///
/// - `distance`: in the rating life (m), as by [`TaperedRoller::rating_distance`]
/// - `wanted`: (m)
pub fn bearing_life_check(distance: f64, wanted: f64, reliability: Reliability) -> Check {
    Check::at_least("bearing life", Kind::Length, reliability.factor() * distance, wanted)
        .sourced(SOURCE)
        .advising("bring the wheel inboard, lower the load, or fit a bearing of a higher rating")
}

/// Steady load that uses a bearing up as fast as varying ones, (∑ u P^(10/3) / ∑ u)^(3/10) (N).
///
/// - `loads`: pairs of P (N) and u, the turns or the share of turns at it
///
/// Source: linear damage with the exponent of ISO 281:2007 (from memory).
pub fn mean_load(loads: &[(f64, f64)]) -> f64 {
    let turns: f64 = loads.iter().map(|(_, turns)| turns).sum();
    let used: f64 = loads.iter().map(|(load, turns)| turns * load.powf(LIFE_EXPONENT)).sum();
    (used / turns).powf(1.0 / LIFE_EXPONENT)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Verdict;
    use approx::assert_relative_eq;

    fn bearing() -> TaperedRoller {
        TaperedRoller::with_axial_factor(120e3, 1.5).unwrap()
    }

    #[test]
    fn a_little_axial_load_does_not_count() {
        let limit = bearing().axial_limit();
        assert_relative_eq!(limit, 0.4, max_relative = 1e-12);
        assert_eq!(bearing().equivalent_load(30e3, -0.999 * limit * 30e3), 30e3);
        // The formula is continuous there: 0.4 + Y e = 1.
        let past = bearing().equivalent_load(30e3, -1.000_001 * limit * 30e3);
        assert_relative_eq!(past, 30e3, max_relative = 1e-6);
    }

    #[test]
    fn a_steady_load_is_its_own_mean_and_a_heavy_turn_counts_for_more() {
        assert_relative_eq!(mean_load(&[(30e3, 7.0)]), 30e3, max_relative = 1e-12);
        assert!(mean_load(&[(20e3, 1.0), (40e3, 1.0)]) > 30e3);
    }

    #[test]
    fn more_reliability_leaves_less_distance() {
        let distance = bearing().rating_distance(34.5e3, 0.5);
        let verdict = |reliability| bearing_life_check(distance, 150e6, reliability).verdict();
        assert_eq!(verdict(Reliability::Ninety), Verdict::Passes);
        assert_eq!(verdict(Reliability::NinetyFive), Verdict::Fails);
    }

    #[test]
    fn sizes_out_of_range_are_refused() {
        assert!(TaperedRoller::new(0.0, 0.25).is_err());
        assert!(TaperedRoller::new(120e3, 0.0).is_err());
        assert!(TaperedRoller::with_axial_factor(120e3, f64::NAN).is_err());
    }
}
