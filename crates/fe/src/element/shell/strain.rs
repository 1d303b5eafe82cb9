//! Strains of a shell per motion of its corners.

use nalgebra::{Matrix3, Matrix3x4, Vector3};

use super::enhanced::EnhancedStrain;
use super::layer::{Layer, SurfacePoint};
use super::{CORNERS, ShellMember};

/// One strain per motion of each corner.
pub(super) type Row = [f64; 24];

/// Middles of the edges at which the shear strains of r and of s are tied.
const TIED: [[[f64; 2]; 2]; 2] = [[[0.0, -1.0], [0.0, 1.0]], [[-1.0, 0.0], [1.0, 0.0]]];

/// What the strains of a shell have in common at all its points.
pub(crate) struct ShellStrains<'a> {
    shell: &'a ShellMember,
    /// Local axes at the center.
    pub(super) axes: [Vector3<f64>; 3],
    /// Natural shear strain of r, then of s, at its two ties.
    tied: [[Row; 2]; 2],
    /// Assumed less interpolated membrane strain that goes with the square of the warp, at each corner.
    warp: [Vector3<f64>; 4],
    enhanced: EnhancedStrain,
}

/// Strains at one point in local axes.
pub(crate) struct PointStrains {
    /// 11, 22 and 2·12.
    pub(super) in_plane: [Row; 3],
    /// 2·13 and 2·23.
    pub(super) shear: [Row; 2],
    /// In-plane strains per enhanced parameter.
    pub(super) enhanced: Matrix3x4<f64>,
    pub(super) layer: Layer,
}

impl<'a> ShellStrains<'a> {
    pub(crate) fn of(shell: &'a ShellMember) -> Self {
        let center = SurfacePoint::at(shell, [0.0, 0.0]);
        let axes = center.own_axes();
        let tied = [0, 1].map(|i| TIED[i].map(|place| natural_shear(shell, i, place)));
        let enhanced = EnhancedStrain::of(&center.layer(0.0, &axes));
        ShellStrains { shell, axes, tied, warp: warp_correction(shell), enhanced }
    }

    /// The strains at a height z above a point of the middle surface.
    pub(crate) fn at(&self, point: &SurfacePoint, z: f64) -> PointStrains {
        let layer = point.layer(z, &self.axes);
        let turn = layer.turn();
        let mut in_plane = [[0.0; 24]; 3];
        let [r, s] = point.place;
        let warped = turn * Vector3::new(s * s, r * r, 2.0 * r * s);
        for corner in 0..4 {
            let local = layer.stretching(&turn, [point.slopes[0][corner], point.slopes[1][corner]]);
            for (k, row) in in_plane.iter_mut().enumerate() {
                let turning = self.shell.normals[corner].cross(&local[k]) * z;
                put(row, corner, &(local[k] + self.warp[corner] * warped[k]), &turning);
            }
        }
        let enhanced = self.enhanced.at(&layer, point.place);
        PointStrains { in_plane, shear: self.shear(&layer, point.place), enhanced, layer }
    }

    fn shear(&self, layer: &Layer, [r, s]: [f64; 2]) -> [Row; 2] {
        let between = |[low, high]: &[Row; 2], x: f64| -> Row {
            std::array::from_fn(|i| 0.5 * ((1.0 - x) * low[i] + (1.0 + x) * high[i]))
        };
        let (of_r, of_s) = (between(&self.tied[0], s), between(&self.tied[1], r));
        layer.dual.map(|[a, b]| std::array::from_fn(|i| a * of_r[i] + b * of_s[i]))
    }
}

impl Layer {
    /// Local strains (11, 22, 2·12) per displacement of a corner with the slopes ∂N/∂r, ∂N/∂s.
    fn stretching(&self, turn: &Matrix3<f64>, [by_r, by_s]: [f64; 2]) -> [Vector3<f64>; 3] {
        let [g_r, g_s] = &self.tangents;
        let natural = [g_r * by_r, g_s * by_s, g_r * by_s + g_s * by_r];
        std::array::from_fn(|k| (0..3).map(|i| natural[i] * turn[(k, i)]).sum())
    }
}

/// `∂x/∂α·(θ×n) + d·∂u/∂α` at a point.
fn natural_shear(shell: &ShellMember, coordinate: usize, place: [f64; 2]) -> Row {
    let point = SurfacePoint::at(shell, place);
    let mut row = [0.0; 24];
    for corner in 0..4 {
        let sliding = point.normal * point.slopes[coordinate][corner];
        let turning = shell.normals[corner].cross(&point.tangents[coordinate]) * point.shapes[corner];
        put(&mut row, corner, &sliding, &turning);
    }
    row
}

/// With `x = … + r·x_r + s·x_s + rs·x_d` the membrane strains hold `x_d·u_d` times s², r² and rs. It is replaced by
/// what the part of `x_d` in the plane of `x_r` and `x_s`, `c_r·x_r + c_s·x_s`, makes of the other parts:
/// `c_r·e_rr' + c_s·e_ss' − c_r²·e_rr − 2·c_r·c_s·e_rs − c_s²·e_ss`, where a prime marks the part linear in s or r.
/// On a flat quadrilateral both are the same.
fn warp_correction(shell: &ShellMember) -> [Vector3<f64>; 4] {
    let part = |weight: &dyn Fn(f64, f64) -> f64| -> Vector3<f64> {
        let each = CORNERS.iter().zip(&shell.corners);
        each.map(|([r, s], x)| x * (0.25 * weight(*r, *s))).sum()
    };
    let (x_r, x_s, x_d) = (part(&|r, _| r), part(&|_, s| s), part(&|r, s| r * s));
    let (rr, ss, rs) = (x_r.dot(&x_r), x_s.dot(&x_s), x_r.dot(&x_s));
    let determinant = rr * ss - rs * rs;
    let (d_r, d_s) = (x_d.dot(&x_r), x_d.dot(&x_s));
    let c_r = (d_r * ss - d_s * rs) / determinant;
    let c_s = (d_s * rr - d_r * rs) / determinant;
    CORNERS.map(|[r, s]| {
        let linear = (x_r * (r * s) + x_d * r) * c_r + (x_s * (r * s) + x_d * s) * c_s;
        let constant = x_r * (r * c_r * c_r) + (x_r * s + x_s * r) * (c_r * c_s) + x_s * (s * c_s * c_s);
        (linear - constant - x_d * (r * s)) * 0.25
    })
}

/// Puts what goes with the displacement and the rotation of a corner into its places.
pub(super) fn put(row: &mut Row, corner: usize, displacement: &Vector3<f64>, rotation: &Vector3<f64>) {
    row[6 * corner..6 * corner + 3].copy_from_slice(displacement.as_slice());
    row[6 * corner + 3..6 * corner + 6].copy_from_slice(rotation.as_slice());
}
