//! Geometric stiffness of a shell.

use nalgebra::{Matrix3, Vector3};

use super::layer::SurfacePoint;
use super::mass::crossing;
use super::strain::ShellStrains;
use super::{GAUSS, ShellMatrix, ShellMember, ShellVector, WallForces, gauss_points};

/// `∫σ_ab·∂u/∂a·∂u/∂b dV` over the motions of the corners, with the stress in the wall when its corners have moved
/// by `motion`: membrane forces and moments; the second-order motion of the normals is left out, which counts only
/// where a wall is bent before it buckles.
pub(crate) fn geometric_stiffness(shell: &ShellMember, motion: &ShellVector) -> ShellMatrix {
    let mut stiffness = ShellMatrix::zeros();
    let (half, axes) = (0.5 * shell.wall.thickness, ShellStrains::of(shell).axes);
    let carried = shell.carried_at_gauss(motion);
    for (place, forces) in gauss_points().into_iter().zip(carried) {
        let point = SurfacePoint::at(shell, place);
        for z in [-half * GAUSS, half * GAUSS] {
            let layer = point.layer(z, &axes);
            let gradients = [0, 1].map(|a| carriers(shell, &point, &layer.dual[a], z));
            let [s11, s22, s12] = stress_at(&forces, z);
            let weight = layer.area * half;
            for (i, j, stress) in [(0, 0, s11), (1, 1, s22), (0, 1, s12), (1, 0, s12)] {
                add_product(&mut stiffness, [&gradients[i], &gradients[j]], stress * weight);
            }
        }
    }
    stiffness
}

/// Stress at a height z: `n/t + 12·m·z/t³`.
fn stress_at(forces: &WallForces, z: f64) -> [f64; 3] {
    let t = forces.thickness;
    std::array::from_fn(|i| forces.membrane[i] / t + 12.0 * forces.bending[i] * z / (t * t * t))
}

/// `∂u/∂a` per motion of each corner.
fn carriers(shell: &ShellMember, point: &SurfacePoint, dual: &[f64; 2], z: f64) -> [[Matrix3<f64>; 2]; 4] {
    std::array::from_fn(|corner| {
        let slope = dual[0] * point.slopes[0][corner] + dual[1] * point.slopes[1][corner];
        let normal: &Vector3<f64> = &shell.normals[corner];
        [Matrix3::identity() * slope, crossing(normal) * (-z * slope)]
    })
}

fn add_product(stiffness: &mut ShellMatrix, sides: [&[[Matrix3<f64>; 2]; 4]; 2], weight: f64) {
    for (i, row) in sides[0].iter().flatten().enumerate() {
        for (j, column) in sides[1].iter().flatten().enumerate() {
            let mut block = stiffness.fixed_view_mut::<3, 3>(3 * i, 3 * j);
            block += row.transpose() * column * weight;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::element::shell::Wall;
    use crate::node::ids::NodeId;

    /// A flat square of side 1 under n₁₁ = 1 and its geometric stiffness.
    fn pulled_square() -> ShellMatrix {
        let corners = [[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]].map(|[x, y]| Vector3::new(x, y, 0.0));
        let wall = Wall::new(0.01, 200e9, 0.0);
        let shell =
            ShellMember { nodes: [0, 1, 2, 3].map(NodeId), corners, normals: [Vector3::z(); 4], wall };
        let stretched = |corner: usize| corners[corner][0] / (0.01 * 200e9);
        let motion = ShellVector::from_fn(|i, _| if i % 6 == 0 { stretched(i / 6) } else { 0.0 });
        geometric_stiffness(&shell, &motion)
    }

    #[test]
    fn a_pulled_wall_resists_turning_out_of_its_plane_and_not_moving() {
        let stiffness = pulled_square();
        for axis in 0..3 {
            let moved = ShellVector::from_fn(|i, _| if i % 6 == axis { 1.0 } else { 0.0 });
            assert!((stiffness * moved).amax() < 1e-12);
        }
        // w = x: n₁₁·w'² over the square.
        let turned = ShellVector::from_fn(|i, _| if i % 6 == 2 { [0.0, 1.0, 1.0, 0.0][i / 6] } else { 0.0 });
        assert!((turned.dot(&(stiffness * turned)) - 1.0).abs() < 1e-12);
        assert!((stiffness - stiffness.transpose()).amax() < 1e-12);
    }
}
