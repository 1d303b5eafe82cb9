//! Points of a section and the stresses there.

use std::f64::consts::PI;

use crate::{SectionProperties, StressField};

/// A point of a section, from its centroid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StressPoint {
    /// Forward (m).
    pub x: f64,
    /// Up (m).
    pub z: f64,
}

impl StressPoint {
    /// Where the point lies, in words, to the nearest eighth of a turn.
    pub fn place(&self) -> &'static str {
        const PLACES: [&str; 8] =
            ["top", "top front", "front", "bottom front", "bottom", "bottom rear", "rear", "top rear"];
        let eighths = self.x.atan2(self.z) / (0.25 * PI);
        PLACES[(eighths.round() as i64).rem_euclid(8) as usize]
    }
}

impl SectionProperties {
    /// Normal stress at a point, s = N/A - M_x z/I_x + M_z x/I_z (Pa, tension positive).
    ///
    /// - `point`: where
    /// - `axial`: N (N), tension positive
    /// - `moment_x`, `moment_z`: M_x, M_z (N m), signs as in the [crate] documentation
    pub fn normal_stress(&self, point: StressPoint, axial: f64, moment_x: f64, moment_z: f64) -> f64 {
        axial / self.area - moment_x * point.z / self.second_moment_x
            + moment_z * point.x / self.second_moment_z
    }

    /// Normal stress over the section, as [`Self::normal_stress`].
    pub fn stress_field(&self, axial: f64, moment_x: f64, moment_z: f64) -> StressField {
        StressField {
            centroid: [0.0; 2],
            mean: axial / self.area,
            gradient_x: moment_z / self.second_moment_z,
            gradient_z: -moment_x / self.second_moment_x,
        }
    }

    /// Greatest torsion shear stress, |T| over the torsion modulus (Pa), for a torque T (N m).
    ///
    /// In a rectangular tube this is the mean through the wall; the inside of a
    /// tight corner sees more.
    pub fn torsion_shear_peak(&self, torque: f64) -> f64 {
        torque.abs() / self.torsion_modulus
    }
}

/// Equivalent stress of a fiber under normal and shear stress, √(s² + 3 tau²) (Pa).
///
/// Source: R. von Mises 1913, as in any text on plasticity.
pub fn von_mises(normal_stress: f64, shear_stress: f64) -> f64 {
    normal_stress.hypot(3.0_f64.sqrt() * shear_stress)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_are_named_by_the_nearest_eighth() {
        let place = |x, z| StressPoint { x, z }.place();
        assert_eq!(place(0.0, 1.0), "top");
        assert_eq!(place(1.0, 1.1), "top front");
        assert_eq!(place(1.0, 0.0), "front");
        assert_eq!(place(-0.1, -1.0), "bottom");
        assert_eq!(place(0.0, -1.0), "bottom");
        assert_eq!(place(-1.0, 0.0), "rear");
        assert_eq!(place(-1.0, 1.0), "top rear");
    }

    #[test]
    fn shear_alone_yields_at_one_over_root_three() {
        assert!((von_mises(0.0, 100.0) - 173.205_080_756_887_7).abs() < 1e-9);
        assert_eq!(von_mises(-250.0, 0.0), 250.0);
    }
}
