//! Geometry of a shell at a point of its middle surface and at a height above it.

use nalgebra::{Matrix3, Vector3};

use super::{CORNERS, ShellMember};

/// Shape functions and geometry at a point (r, s) of the middle surface.
#[derive(Debug, Clone)]
pub(crate) struct SurfacePoint {
    /// (r, s).
    pub place: [f64; 2],
    /// N_i.
    pub shapes: [f64; 4],
    /// ∂N_i/∂r and ∂N_i/∂s.
    pub slopes: [[f64; 4]; 2],
    /// ∂x/∂r and ∂x/∂s.
    pub tangents: [Vector3<f64>; 2],
    /// d.
    pub normal: Vector3<f64>,
    /// ∂d/∂r and ∂d/∂s.
    pub normal_slopes: [Vector3<f64>; 2],
}

/// A shell's surface of constant z at a point: local axes 1 and 2 along it, 3 square to it.
#[derive(Debug, Clone)]
pub(crate) struct Layer {
    /// g_r, g_s.
    pub tangents: [Vector3<f64>; 2],
    /// Local axes.
    pub axes: [Vector3<f64>; 3],
    /// Area on it per area of (r, s).
    pub area: f64,
    /// `e_a·g^α`: local axis a, natural coordinate α.
    pub dual: [[f64; 2]; 2],
}

impl SurfacePoint {
    /// The point at (r, s).
    pub(crate) fn at(shell: &ShellMember, place: [f64; 2]) -> Self {
        let [r, s] = place;
        let shapes = CORNERS.map(|[ri, si]| 0.25 * (1.0 + ri * r) * (1.0 + si * s));
        let slopes = [
            CORNERS.map(|[ri, si]| 0.25 * ri * (1.0 + si * s)),
            CORNERS.map(|[ri, si]| 0.25 * si * (1.0 + ri * r)),
        ];
        let (tangents, normal) = (slopes.map(|n| sum(&n, &shell.corners)), sum(&shapes, &shell.normals));
        let normal_slopes = slopes.map(|n| sum(&n, &shell.normals));
        SurfacePoint { place, shapes, slopes, tangents, normal, normal_slopes }
    }

    /// g_r, g_s at a height z.
    fn tangents_at(&self, z: f64) -> [Vector3<f64>; 2] {
        [0, 1].map(|i| self.tangents[i] + self.normal_slopes[i] * z)
    }

    /// Area at a height z per area of (r, s).
    pub(crate) fn area(&self, z: f64) -> f64 {
        let [g_r, g_s] = self.tangents_at(z);
        g_r.cross(&g_s).norm()
    }

    /// Local axes of the middle surface, the first along g_r.
    pub(crate) fn own_axes(&self) -> [Vector3<f64>; 3] {
        let [g_r, g_s] = &self.tangents;
        let (first, third) = (g_r.normalize(), g_r.cross(g_s).normalize());
        [first, third.cross(&first), third]
    }

    /// The surface at a height z; its axes are those of the center, turned the shortest way, so that they do not
    /// depend on where the first axis points.
    pub(crate) fn layer(&self, z: f64, center: &[Vector3<f64>; 3]) -> Layer {
        let tangents = self.tangents_at(z);
        let square = tangents[0].cross(&tangents[1]);
        let area = square.norm();
        let third = square / area;
        let middle = (center[2] + third) / (1.0 + center[2].dot(&third));
        let turned = |axis: Vector3<f64>| axis - middle * axis.dot(&third);
        let axes = [turned(center[0]), turned(center[1]), third];
        // Rows g_α·e_a; the dual is the inverse of its transpose.
        let [[a, b], [c, d]] = tangents.map(|g| [g.dot(&axes[0]), g.dot(&axes[1])]);
        let determinant = a * d - b * c;
        let dual = [[d / determinant, -b / determinant], [-c / determinant, a / determinant]];
        Layer { tangents, axes, area, dual }
    }
}

impl Layer {
    /// Local strains (11, 22, 2·12) from natural ones (rr, ss, 2·rs).
    pub(crate) fn turn(&self) -> Matrix3<f64> {
        let [[a, b], [c, d]] = self.dual;
        Matrix3::new(a * a, b * b, a * b, c * c, d * d, c * d, 2.0 * a * c, 2.0 * b * d, a * d + b * c)
    }
}

fn sum(weights: &[f64; 4], vectors: &[Vector3<f64>; 4]) -> Vector3<f64> {
    weights.iter().zip(vectors).map(|(weight, vector)| vector * *weight).sum()
}
