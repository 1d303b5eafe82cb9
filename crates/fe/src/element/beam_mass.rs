//! Consistent mass of a Timoshenko beam with rotary inertia.
//!
//! The kinetic energy `½∫(m·v̇² + ρI·θ̇²) ds` with the deflection v and rotation θ that the element takes when
//! only its ends are loaded: cubic and quadratic, linked by the shear parameter `Φ = 12·EI/(κGA·L²)`
//! (J. S. Przemieniecki, Theory of Matrix Structural Analysis, 1968, ch. 11; Z. Friedman & J. B. Kosmatka,
//! Computers & Structures 47 (1993) 473-481, whose shape functions these are; from memory). Φ comes from the
//! same integrals as the stiffness. Along and about axis 1 the motion is linear. A rigid motion has its exact
//! energy. A varying beam counts as uniform with the mean mass, inertia and Φ.

use nalgebra::{Matrix3, Matrix6};

use crate::element::beam::BeamMember;
use crate::element::flexibility::PlaneFlexibility;
use crate::node::coupling::{bring_rows, carry_columns};

/// Four-point Gauss–Legendre rule on [0, 1], exact for the sixth degree that the squares of the cubic have.
/// Abramowitz & Stegun, Table 25.4, n = 4.
const GAUSS: [(f64, f64); 4] = [
    (0.069_431_844_202_973_71, 0.173_927_422_568_726_93),
    (0.330_009_478_207_571_87, 0.326_072_577_431_273_07),
    (0.669_990_521_792_428_1, 0.326_072_577_431_273_07),
    (0.930_568_155_797_026_3, 0.173_927_422_568_726_93),
];

/// Mass of a beam at its two nodes, global axes.
pub(crate) struct BeamMass {
    pub(crate) start: Matrix6<f64>,
    pub(crate) end: Matrix6<f64>,
    /// Rows of the start, columns of the end.
    pub(crate) cross: Matrix6<f64>,
}

/// Mass of a bending plane on (deflection, rotation) of the start, then of the end.
type PlaneMass = [[f64; 4]; 4];

impl BeamMass {
    /// The mass of a beam in place.
    pub(crate) fn of(beam: &BeamMember) -> Self {
        let mut mass = BeamMass::local(beam);
        let (near, far) = (&beam.coupling.near_arm, &beam.end_arm);
        for (block, row, column) in
            [(&mut mass.start, near, near), (&mut mass.end, far, far), (&mut mass.cross, near, far)]
        {
            turn(block, &beam.axes);
            carry_columns(block, column);
            bring_rows(block, row);
        }
        mass
    }

    /// The mass at the ends of the flexible length, local axes.
    fn local(beam: &BeamMember) -> Self {
        let [polar, about_2, about_3] = beam.inertia_per_length;
        let (m, l) = (beam.mass_per_length, beam.flexibility.length);
        let zero = Matrix6::zeros();
        let mut mass = BeamMass { start: zero, end: zero, cross: zero };
        for (i, per_length) in [(0, m), (3, polar)] {
            mass.start[(i, i)] = per_length * l / 3.0;
            mass.end[(i, i)] = per_length * l / 3.0;
            mass.cross[(i, i)] = per_length * l / 6.0;
        }
        mass.add_plane((1, 5), 1.0, &plane_mass((m, about_3), l, &beam.flexibility.plane_12));
        // Deflection along 3 goes with rotation about −2.
        mass.add_plane((2, 4), -1.0, &plane_mass((m, about_2), l, &beam.flexibility.plane_13));
        mass
    }

    fn add_plane(&mut self, (v, r): (usize, usize), sign: f64, plane: &PlaneMass) {
        for (i, (row, row_sign)) in [(v, 1.0), (r, sign)].into_iter().enumerate() {
            for (j, (column, column_sign)) in [(v, 1.0), (r, sign)].into_iter().enumerate() {
                let sign = row_sign * column_sign;
                self.start[(row, column)] = sign * plane[i][j];
                self.end[(row, column)] = sign * plane[2 + i][2 + j];
                self.cross[(row, column)] = sign * plane[i][2 + j];
            }
        }
    }
}

/// `∫(m·N Nᵀ + ρI·G Gᵀ) ds` with the shape functions of [`shapes`].
fn plane_mass((m, rotary): (f64, f64), length: f64, plane: &PlaneFlexibility) -> PlaneMass {
    let shear = 12.0 * plane.shear[0] / (plane.bending[0] * length * length);
    let mut mass = [[0.0; 4]; 4];
    for (x, weight) in GAUSS {
        let (deflection, rotation) = shapes(x, length, shear);
        let (m, rotary) = (m * weight * length, rotary * weight * length);
        for i in 0..4 {
            for j in 0..4 {
                mass[i][j] += m * deflection[i] * deflection[j] + rotary * rotation[i] * rotation[j];
            }
        }
    }
    mass
}

/// Deflection and rotation at the share x of the length for a unit of (deflection, rotation) of the start and
/// of the end.
fn shapes(x: f64, length: f64, shear: f64) -> ([f64; 4], [f64; 4]) {
    let (x2, x3, half) = (x * x, x * x * x, 0.5 * shear);
    let deflection = [
        2.0 * x3 - 3.0 * x2 - shear * x + 1.0 + shear,
        length * (x3 - (2.0 + half) * x2 + (1.0 + half) * x),
        -2.0 * x3 + 3.0 * x2 + shear * x,
        length * (x3 - (1.0 - half) * x2 - half * x),
    ];
    let rotation = [
        6.0 * (x2 - x) / length,
        3.0 * x2 - (4.0 + shear) * x + 1.0 + shear,
        6.0 * (x - x2) / length,
        3.0 * x2 - (2.0 - shear) * x,
    ];
    (deflection.map(|n| n / (1.0 + shear)), rotation.map(|n| n / (1.0 + shear)))
}

/// A local block in global axes.
fn turn(block: &mut Matrix6<f64>, axes: &Matrix3<f64>) {
    for (row, column) in [(0, 0), (0, 3), (3, 0), (3, 3)] {
        let part = axes * block.fixed_view::<3, 3>(row, column) * axes.transpose();
        block.fixed_view_mut::<3, 3>(row, column).copy_from(&part);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shapes_are_a_unit_at_one_end_and_carry_the_shear_of_the_static_solution() {
        for shear in [0.0, 0.3, 4.0] {
            let length = 0.7;
            let (start, end) = (shapes(0.0, length, shear), shapes(1.0, length, shear));
            let ends = [start.0, start.1, end.0, end.1];
            for (i, row) in ends.iter().enumerate() {
                assert!((0..4).all(|j| (row[j] - f64::from(u8::from(i == j))).abs() < 1e-15));
            }
            // v' − θ = γ is constant along the element and is −Φ/12·L²·v''' by V = κGA·γ = −EI·θ''.
            let h = 1e-4;
            for x in [0.2, 0.8] {
                let (low, mid, high) =
                    (shapes(x - h, length, shear), shapes(x, length, shear), shapes(x + h, length, shear));
                for j in 0..4 {
                    let gamma = (high.0[j] - low.0[j]) / (2.0 * h * length) - mid.1[j];
                    let curving = (high.1[j] - 2.0 * mid.1[j] + low.1[j]) / (h * length).powi(2);
                    assert!((gamma + shear / 12.0 * length * length * curving).abs() < 1e-5);
                }
            }
        }
    }
}
