//! How far a wheel leans on its hub: the wheel's disc and the hub's flange as plates.
//!
//! A flat annular plate, clamped to a rigid disc of radius b within and to a rigid ring of radius a without, leans under a
//! couple M on the inner disc by
//!
//! `θ = M/(4π D) [ln(a/b) − (a² − b²)/(a² + b²)]`, `D = E t³/(12 (1 − ν²))`:
//!
//! of the solutions `w = (A r + B/r + C r³ + D r ln r) cos φ` of the biharmonic equation (S. Timoshenko &
//! S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. 1959, ch. 9, from memory) the one without motion and slope
//! at a and with those of a rigid disc at b. Transverse shear is left out: plates are thin. A dished disc is stiffer
//! than a flat one, so that the formula is the softer bound.

use std::f64::consts::PI;

use axlebow_sections::Material;

use crate::AxleError;
use crate::parts::error::positive;

/// A flat annular plate between two rigid rims.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AnnularPlate {
    /// Radius at which it is clamped within, m.
    pub inner_radius: f64,
    /// Radius at which it is clamped without, m.
    pub outer_radius: f64,
    /// Thickness, m.
    pub thickness: f64,
}

/// A hub's flange from barrel to bolt circle, of usual size; from memory.
pub const USUAL_HUB_FLANGE: AnnularPlate =
    AnnularPlate { inner_radius: 0.090, outer_radius: 0.143, thickness: 0.020 };

/// A wheel's disc from the hub's mounting face to the rim, of usual size; from memory.
pub const USUAL_WHEEL_DISC: AnnularPlate =
    AnnularPlate { inner_radius: 0.165, outer_radius: 0.250, thickness: 0.012 };

impl AnnularPlate {
    /// Rotation about a line in its plane per couple about the same line, rad/(N m).
    ///
    /// # Errors
    /// [`AxleError::Value`] for a radius or a thickness that is not above 0, and for an inner radius that is not below
    /// the outer one.
    pub fn tilt_flexibility(&self, material: &Material) -> Result<f64, AxleError> {
        let b = positive("inner radius of the plate", self.inner_radius, "m")?;
        let a = positive("outer radius of the plate", self.outer_radius, "m")?;
        let t = positive("thickness of the plate", self.thickness, "m")?;
        if b >= a {
            let accepted = "below the outer radius";
            return Err(AxleError::Value {
                what: "inner radius of the plate",
                value: b,
                unit: "m",
                accepted,
            });
        }
        let (e, nu) = (material.elastic_modulus(), material.poisson_ratio());
        let rigidity = e * t.powi(3) / (12.0 * (1.0 - nu * nu));
        Ok(((a / b).ln() - (a * a - b * b) / (a * a + b * b)) / (4.0 * PI * rigidity))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Twice the strain energy of the plate under its own deflection is the work of the couple, `M θ`: the energy is that
    /// of plate theory, integrated here by Simpson's rule over `(A r + B/r + C r³ + D r ln r) cos φ`, which is clamped at both
    /// rims.
    #[test]
    fn the_work_of_the_couple_is_the_energy_of_the_plate() {
        let material = Material::new("steel", 200e9, 0.3, 7850.0).unwrap();
        let long = AnnularPlate { inner_radius: 0.02, outer_radius: 0.4, thickness: 0.01 };
        for plate in [USUAL_HUB_FLANGE, USUAL_WHEEL_DISC, long] {
            let AnnularPlate { inner_radius: b, outer_radius: a, thickness: t } = plate;
            let theta = plate.tilt_flexibility(&material).unwrap();
            let rigidity = 200e9 * f64::powi(t, 3) / (12.0 * 0.91);
            let work = plate_energy(b, a, theta) * rigidity;
            assert!((2.0 * work / theta - 1.0).abs() < 1e-6, "{b} {a}: {}", 2.0 * work / theta);
        }
    }

    /// Energy over the plate's rigidity, when its inner rim leans by `theta`.
    fn plate_energy(b: f64, a: f64, theta: f64) -> f64 {
        let rows = [deflection(a), deflection(b)];
        let equations = nalgebra::Matrix4::from_rows(&[
            rows[0].0.into(),
            rows[0].1.into(),
            rows[1].0.into(),
            rows[1].1.into(),
        ]);
        let right = nalgebra::Vector4::new(0.0, 0.0, theta * b, theta);
        let c = equations.lu().solve(&right).unwrap();
        let parts = 2000;
        let density = |r: f64| {
            let sum = |terms: [f64; 4]| (0..4).map(|i| terms[i] * c[i]).sum::<f64>();
            let (value, slope) = deflection(r);
            let (w, w_r, w_rr) = (sum(value), sum(slope), sum(curvature(r)));
            // Curvatures of w cos φ: about r and φ (cos φ each), and twist (sin φ); cos² and sin² integrate to π.
            let (round, twist) = (w_r / r - w / (r * r), w_r / r - w / (r * r));
            let mean = (w_rr + round).powi(2) - 2.0 * 0.7 * (w_rr * round - twist.powi(2));
            0.5 * PI * mean * r
        };
        let h = (a - b) / f64::from(parts);
        let weight = |i: i32| if i == 0 || i == parts { 1.0 } else { f64::from(2 + 2 * (i % 2)) };
        (0..=parts).map(|i| weight(i) * density(b + h * f64::from(i))).sum::<f64>() * h / 3.0
    }

    /// The four solutions and their slopes at a radius.
    fn deflection(r: f64) -> ([f64; 4], [f64; 4]) {
        ([r, 1.0 / r, r.powi(3), r * r.ln()], [1.0, -1.0 / (r * r), 3.0 * r * r, r.ln() + 1.0])
    }

    fn curvature(r: f64) -> [f64; 4] {
        [0.0, 2.0 / r.powi(3), 6.0 * r, 1.0 / r]
    }

    /// By hand. Flange: D = 146 520 N m, ln(143/90) = 0.463 03, (a² − b²)/(a² + b²) = 0.432 55. Disc: D = 31 648 N m,
    /// 0.415 52 and 0.393 15. θ = 1.66e-8 and 5.62e-8 rad/(N m), to half of the last digit.
    #[test]
    fn plates_of_usual_size_by_hand() {
        let material = Material::new("steel", 200e9, 0.3, 7850.0).unwrap();
        for (plate, expected) in [(USUAL_HUB_FLANGE, 1.66e-8), (USUAL_WHEEL_DISC, 5.62e-8)] {
            let found = plate.tilt_flexibility(&material).unwrap();
            assert!((found - expected).abs() <= 0.005e-8, "{plate:?}: {found} {expected}");
        }
    }

    #[test]
    fn a_plate_without_width_or_thickness_is_refused() {
        let material = Material::new("steel", 200e9, 0.3, 7850.0).unwrap();
        let good = USUAL_WHEEL_DISC;
        assert!(good.tilt_flexibility(&material).is_ok());
        for plate in [
            AnnularPlate { inner_radius: good.outer_radius, ..good },
            AnnularPlate { inner_radius: 1.1 * good.outer_radius, ..good },
            AnnularPlate { inner_radius: 0.0, ..good },
            AnnularPlate { outer_radius: f64::INFINITY, ..good },
            AnnularPlate { thickness: 0.0, ..good },
            AnnularPlate { thickness: -good.thickness, ..good },
        ] {
            assert!(plate.tilt_flexibility(&material).is_err(), "{plate:?}");
        }
    }
}
