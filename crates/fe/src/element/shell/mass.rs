//! Consistent mass of a shell.

use nalgebra::{Matrix3, Vector3};

use super::layer::SurfacePoint;
use super::{GAUSS, ShellMatrix, ShellMember, gauss_points};

/// `∫ρ·|u + z·θ×n|² dV` over the motions of the corners, with rotary inertia; a rotation about the normal has none.
pub(crate) fn shell_mass(shell: &ShellMember) -> ShellMatrix {
    let mut mass = ShellMatrix::zeros();
    let half = 0.5 * shell.wall.thickness;
    for place in gauss_points() {
        let point = SurfacePoint::at(shell, place);
        for z in [-half * GAUSS, half * GAUSS] {
            let weight = shell.wall.density * half * point.area(z);
            add_point(&mut mass, &carriers(shell, &point, z), weight);
        }
    }
    mass
}

/// Displacement of a point of the wall per motion of each corner: `N·u` and `z·N·θ×n = −z·N·n×θ`.
pub(super) fn carriers(shell: &ShellMember, point: &SurfacePoint, z: f64) -> [[Matrix3<f64>; 2]; 4] {
    std::array::from_fn(|corner| {
        let shape = point.shapes[corner];
        [Matrix3::identity() * shape, crossing(&shell.normals[corner]) * (-z * shape)]
    })
}

fn add_point(mass: &mut ShellMatrix, carriers: &[[Matrix3<f64>; 2]; 4], weight: f64) {
    let blocks = || carriers.iter().flatten().enumerate();
    for (i, row) in blocks() {
        for (j, column) in blocks() {
            let mut block = mass.fixed_view_mut::<3, 3>(3 * i, 3 * j);
            block += row.transpose() * column * weight;
        }
    }
}

/// The matrix of `n×`.
pub(super) fn crossing(n: &Vector3<f64>) -> Matrix3<f64> {
    Matrix3::new(0.0, -n[2], n[1], n[2], 0.0, -n[0], -n[1], n[0], 0.0)
}
