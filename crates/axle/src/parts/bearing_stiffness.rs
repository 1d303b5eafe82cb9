//! Stiffness of a tapered roller bearing at the load that it carries.
//!
//! A roller pressed with Q between its two raceways gives way by `δ = (Q/c_L)^0.9`, with
//! `c_L = 35 948 L^(8/9)` in N and mm (ISO/TS 16281:2008, from memory; Palmgren's `7.68e-5 Q^0.9/L^0.8` for steel
//! races, T. A. Harris, Rolling Bearing Analysis, from memory, gives 4 % less stiffness). With half of its
//! rollers loaded, as the thrust of two bearings set against each other leaves it, the most loaded roller of Z
//! carries `Q = 4.08 F_r/(Z cos α)` under a radial load F_r (Stribeck's number for line contact; Harris, from memory).
//! A thrust F_a is shared evenly, `Q = F_a/(Z sin α)`. So, α being the angle of the cup,
//!
//! `k_r = F_r cos α/δ`, `k_a = F_a sin α/δ`: secants, which grow with the tenth root of the load.
//!
//! Rings, hub and spindle are rigid in the formula; their seats make a real bearing somewhat softer.

use crate::AxleError;
use crate::parts::error::positive;

/// Most loaded roller over the mean of all, `F_r/(Z cos α)`, with half of the rollers loaded.
const MOST_LOADED: f64 = 4.08;
/// Exponent of the load in a roller's deflection, ISO/TS 16281.
const LOAD_EXPONENT: f64 = 0.9;
/// Exponent of the roller's length in its contact constant, ISO/TS 16281.
const LENGTH_EXPONENT: f64 = 8.0 / 9.0;
/// Contact constant of steel rollers 1 mm long, N/mm^(10/9), ISO/TS 16281.
const CONTACT_CONSTANT: f64 = 35_948.0;
/// Thrust of a tapered bearing over `F_r tan α`: 0.5 F_r/Y with Y = 0.4 cot α (ISO 281:2007, from memory).
pub(crate) const INDUCED_THRUST: f64 = 1.25;
const MM: f64 = 1e-3;

/// Steepest cup, rad: at 45 degrees a hub moves as far radially as along the axle, the most that an endplay can
/// do to the lean of a wheel.
pub const STEEPEST_CUP: f64 = std::f64::consts::FRAC_PI_4;

/// The angle of a cup to the spindle (rad), if a bearing can have it.
pub(crate) fn accepted_cup(angle: f64) -> Result<f64, AxleError> {
    if (0.0..=STEEPEST_CUP).contains(&angle) {
        return Ok(angle);
    }
    let accepted = "0 to 0.785 (45 degrees)";
    Err(AxleError::Value { what: "cup angle", value: angle, unit: "rad", accepted })
}

/// Stiffness of one wheel bearing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BearingStiffness {
    /// Across the spindle, N/m.
    pub radial: f64,
    /// Along the spindle, N/m.
    pub axial: f64,
}

/// The rollers of a tapered bearing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TaperedRollers {
    /// Number of rollers.
    pub count: f64,
    /// Effective length of a roller, m.
    pub length: f64,
    /// Angle of the cup to the spindle, rad.
    pub cup_angle: f64,
}

impl TaperedRollers {
    /// Radial stiffness `F_r cos α/δ`, N/m.
    ///
    /// - `radial_load`: F_r, N, above 0
    ///
    /// # Errors
    /// [`AxleError::Value`] for a count, a length or a load that is not above 0, and for a cup angle outside of 0 to 45
    /// degrees.
    ///
    /// # Example
    /// ```
    /// let rollers = axlebow_axle::TaperedRollers { count: 20.0, length: 25e-3, cup_angle: 0.26 };
    /// assert!(rollers.radial_stiffness(22e3)? > 3.0 * rollers.axial_stiffness(22e3)?);
    /// # Ok::<(), axlebow_axle::AxleError>(())
    /// ```
    pub fn radial_stiffness(&self, radial_load: f64) -> Result<f64, AxleError> {
        let force = positive("radial load of a bearing", radial_load, "N")?;
        let cosine = self.cup_angle.cos();
        Ok(force * cosine / self.deflection(MOST_LOADED * force / cosine)?)
    }

    /// Axial stiffness `F_a sin α/δ` under the thrust that a radial load induces, N/m.
    ///
    /// - `radial_load`: F_r, N, above 0
    ///
    /// # Errors
    /// As [`Self::radial_stiffness`]; a cup angle of 0 leaves no axial stiffness and is refused.
    pub fn axial_stiffness(&self, radial_load: f64) -> Result<f64, AxleError> {
        let force = positive("radial load of a bearing", radial_load, "N")?;
        let angle = positive("cup angle", self.cup_angle, "rad")?;
        let thrust = INDUCED_THRUST * force * angle.tan();
        Ok(thrust * angle.sin() / self.deflection(thrust / angle.sin())?)
    }

    /// How far a roller gives way that carries `shared/Z`, m.
    fn deflection(&self, shared: f64) -> Result<f64, AxleError> {
        let z = positive("number of rollers", self.count, "")?;
        let length = positive("effective length of a roller", self.length, "m")?;
        accepted_cup(self.cup_angle)?;
        let contact = CONTACT_CONSTANT * (length / MM).powf(LENGTH_EXPONENT);
        Ok(MM * (shared / (z * contact)).powf(LOAD_EXPONENT))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ROLLERS: TaperedRollers = TaperedRollers { count: 20.0, length: 25e-3, cup_angle: 0.261_799_387_8 };

    /// By hand: c_L = 35 948 · 25^(8/9) = 628 475; Q = 4.08 · 22 000/(20 · 0.965 926) = 4646.3 N,
    /// δ = (Q/c_L)^0.9 = 0.012 076 mm; F cos α/δ = 1.7597e9 N/m. Thrust 7368.6 N, Q = 1423.5 N, δ = 4.1645e-3 mm,
    /// 4.5795e8 N/m. To half of the last digit.
    #[test]
    fn stiffness_of_a_bearing_by_hand() {
        let (radial, axial) =
            (ROLLERS.radial_stiffness(22e3).unwrap(), ROLLERS.axial_stiffness(22e3).unwrap());
        assert!((radial - 1.759_7e9).abs() <= 0.000_05e9, "{radial}");
        assert!((axial - 4.579_5e8).abs() <= 0.000_05e8, "{axial}");
    }

    /// Palmgren's deflection of a roller between two races, 7.68e-5 Q^0.9/l^0.8 (mm, N), is an independent measurement: the two
    /// agree within 5 %.
    #[test]
    fn the_deflection_of_a_roller_agrees_with_palmgren() {
        for (load, length) in [(500.0, 10.0), (4646.0, 25.0), (20_000.0, 40.0)] {
            let palmgren = 7.68e-5 * f64::powf(load, 0.9) / f64::powf(length, 0.8);
            let contact = CONTACT_CONSTANT * f64::powf(length, LENGTH_EXPONENT);
            let own = f64::powf(load / contact, LOAD_EXPONENT);
            assert!((own / palmgren - 1.0).abs() < 0.05, "{own} {palmgren}");
        }
    }

    #[test]
    fn stiffness_grows_with_the_tenth_root_of_the_load() {
        for stiffness in [TaperedRollers::radial_stiffness, TaperedRollers::axial_stiffness] {
            let [one, two] = [1e4, 2e4].map(|load| stiffness(&ROLLERS, load).unwrap());
            assert!((two / one - 2f64.powf(0.1)).abs() < 1e-12);
        }
    }

    #[test]
    fn what_no_bearing_has_is_refused() {
        let none = TaperedRollers { count: 0.0, ..ROLLERS };
        let backward = TaperedRollers { length: -1.0, ..ROLLERS };
        let steep = TaperedRollers { cup_angle: 0.8, ..ROLLERS };
        for stiffness in [TaperedRollers::radial_stiffness, TaperedRollers::axial_stiffness] {
            assert!(stiffness(&ROLLERS, 0.0).is_err() && stiffness(&ROLLERS, f64::NAN).is_err());
            for rollers in [none, backward, steep] {
                assert!(stiffness(&rollers, 1e4).is_err(), "{rollers:?}");
            }
        }
    }

    /// Cylindrical rollers hold across the spindle, by F/δ, and not along it; the steepest cup holds both ways.
    #[test]
    fn cup_angles_reach_from_cylindrical_rollers_to_the_steepest_cup() {
        let cylindrical = TaperedRollers { cup_angle: 0.0, ..ROLLERS };
        let steepest = TaperedRollers { cup_angle: STEEPEST_CUP, ..ROLLERS };
        assert!(cylindrical.axial_stiffness(1e4).is_err());
        assert!(cylindrical.radial_stiffness(1e4).unwrap() > steepest.radial_stiffness(1e4).unwrap());
        assert!(steepest.axial_stiffness(1e4).unwrap() > ROLLERS.axial_stiffness(1e4).unwrap());
    }
}
