//! What a wall carries: forces and moments per length, and stresses on its faces.

use nalgebra::{Matrix3, Vector3};

use super::layer::SurfacePoint;
use super::stiffness::{Elasticity, ShellStiffness};
use super::strain::{Row, ShellStrains};
use super::{GAUSS, ShellMember, ShellVector, gauss_points};

/// A face of a wall.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Face {
    /// Toward which the normal points.
    Upper,
    /// From which the normal points.
    Lower,
}

/// Forces and moments per length at a point of a wall, in local axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WallForces {
    /// Local axes 1, 2 along the wall and 3 along its normal, global components.
    pub axes: [[f64; 3]; 3],
    /// n₁₁, n₂₂, n₁₂: `∫σ dz`, N/m.
    pub membrane: [f64; 3],
    /// m₁₁, m₂₂, m₁₂: `∫σ·z dz`, positive where the upper face is pulled, N.
    pub bending: [f64; 3],
    /// q₁, q₂: `∫τ dz`, N/m.
    pub shear: [f64; 2],
    /// Thickness, m.
    pub thickness: f64,
}

impl WallForces {
    /// σ₁₁, σ₂₂, τ₁₂ on a face: `n/t ± 6·m/t²`, Pa.
    pub fn stress(&self, face: Face) -> [f64; 3] {
        let (t, sign) = (self.thickness, if face == Face::Upper { 1.0 } else { -1.0 });
        std::array::from_fn(|i| self.membrane[i] / t + sign * 6.0 * self.bending[i] / (t * t))
    }

    /// Stress tensor on a face, global axes, Pa.
    pub fn stress_tensor(&self, face: Face) -> [[f64; 3]; 3] {
        let [s11, s22, s12] = self.stress(face);
        let local = Matrix3::new(s11, s12, 0.0, s12, s22, 0.0, 0.0, 0.0, 0.0);
        let axes = Matrix3::from_columns(&self.axes.map(Vector3::from));
        let global = axes * local * axes.transpose();
        std::array::from_fn(|i| std::array::from_fn(|j| global[(i, j)]))
    }

    /// Von Mises stress on a face, `√(σ₁₁² − σ₁₁σ₂₂ + σ₂₂² + 3τ₁₂²)`, Pa.
    pub fn von_mises(&self, face: Face) -> f64 {
        let [a, b, c] = self.stress(face);
        (a * a - a * b + b * b + 3.0 * c * c).sqrt()
    }

    /// Principal stresses along a face, the larger first, Pa.
    pub fn principal(&self, face: Face) -> [f64; 2] {
        let [a, b, c] = self.stress(face);
        let (mean, radius) = (0.5 * (a + b), (0.5 * (a - b)).hypot(c));
        [mean + radius, mean - radius]
    }
}

impl WallForces {
    /// Adds what a layer at a height z carries per length.
    fn add_layer(&mut self, z: f64, stress: &[f64; 3], shear: &[f64; 2]) {
        for i in 0..3 {
            self.membrane[i] += stress[i];
            self.bending[i] += stress[i] * z;
        }
        self.shear.iter_mut().zip(shear).for_each(|(sum, shear)| *sum += shear);
    }
}

impl ShellMember {
    /// What the wall carries at its four Gauss points when its corners move.
    pub(crate) fn carried_at_gauss(&self, motion: &ShellVector) -> [WallForces; 4] {
        let (strains, elasticity) = (ShellStrains::of(self), Elasticity::of(&self.wall));
        let enhanced = -(ShellStiffness::of(self).enhanced * motion);
        gauss_points().map(|place| {
            let point = SurfacePoint::at(self, place);
            let half = 0.5 * self.wall.thickness;
            let mut forces = self.unloaded(&point, &strains);
            for z in [-half * GAUSS, half * GAUSS] {
                let at = strains.at(&point, z);
                let strain = Vector3::from(at.in_plane.map(|row| product(&row, motion)));
                let stress = elasticity.in_plane * (strain + at.enhanced * enhanced) * half;
                let shear = at.shear.map(|row| elasticity.shear * half * product(&row, motion));
                forces.add_layer(z, &stress.into(), &shear);
            }
            forces
        })
    }

    fn unloaded(&self, point: &SurfacePoint, strains: &ShellStrains) -> WallForces {
        let axes = point.layer(0.0, &strains.axes).axes.map(Into::into);
        let (zero, thickness) = ([0.0; 3], self.wall.thickness);
        WallForces { axes, membrane: zero, bending: zero, shear: [0.0; 2], thickness }
    }

    /// What the wall carries at its corners: the bilinear surface through the values at the Gauss points, in the
    /// axes at each corner.
    pub(crate) fn carried_at_corners(&self, motion: &ShellVector) -> [WallForces; 4] {
        let gauss = self.carried_at_gauss(motion);
        let center = ShellStrains::of(self).axes;
        super::CORNERS.map(|corner| {
            let point = SurfacePoint::at(self, corner.map(|x| x / GAUSS));
            let blend = |value: &dyn Fn(&WallForces) -> f64| -> f64 {
                gauss.iter().zip(point.shapes).map(|(forces, shape)| shape * value(forces)).sum()
            };
            WallForces {
                axes: SurfacePoint::at(self, corner).layer(0.0, &center).axes.map(Into::into),
                membrane: std::array::from_fn(|i| blend(&|forces| forces.membrane[i])),
                bending: std::array::from_fn(|i| blend(&|forces| forces.bending[i])),
                shear: std::array::from_fn(|i| blend(&|forces| forces.shear[i])),
                thickness: self.wall.thickness,
            }
        })
    }
}

fn product(row: &Row, motion: &ShellVector) -> f64 {
    row.iter().zip(motion.iter()).map(|(a, b)| a * b).sum()
}
