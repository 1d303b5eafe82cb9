//! Flexibility of stretches in a row along Y, seen from one place.

use axlebow_fe::{Flexibility, PlaneFlexibility};

use super::wrench::{Motion, Wrench};

/// Flexibility of stretches in a row with one end held, for a force at a place that moves rigidly with the other.
///
/// Seen from a place by `a` to the right of a stretch's start, `∫1/EI` stays, `∫s/EI` becomes that of s + a, and so on, so
/// that stretches in a row add up.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct RowFlexibility {
    /// Up and down: uz and rx.
    pub upright: Plane,
    /// Fore and aft: ux and −rz.
    pub level: Plane,
    /// Along Y, m/N.
    pub along: f64,
    /// About Y, rad/(N m).
    pub twist: f64,
}

/// Flexibility in one plane.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Plane {
    /// Rotation per moment, rad/(N m).
    pub turn: f64,
    /// Displacement per moment against it, 1/N.
    pub cross: f64,
    /// Displacement per force, m/N.
    pub shift: f64,
}

impl Plane {
    fn add(&mut self, own: &PlaneFlexibility, a: f64) {
        let [b0, b1, b2, _] = own.bending;
        self.turn += b0;
        self.cross += b1 + a * b0;
        self.shift += b2 + own.shear[0] + a * (2.0 * b1 + a * b0);
    }

    /// Force per displacement, force per rotation and moment per rotation.
    fn stiffness(&self) -> [f64; 3] {
        let determinant = self.shift * self.turn - self.cross * self.cross;
        [self.turn / determinant, self.cross / determinant, self.shift / determinant]
    }
}

impl RowFlexibility {
    /// Adds a stretch whose start lies `a` to the left of the place.
    pub(crate) fn add(&mut self, own: &Flexibility, a: f64) {
        self.upright.add(&own.plane_12, a);
        self.level.add(&own.plane_13, a);
        self.along += own.axial[0];
        self.twist += own.torsion;
    }

    /// The 6 × 6 flexibility, added to a part of a matrix.
    pub(crate) fn add_to(&self, matrix: &mut [[f64; 6]; 6]) {
        let Plane { turn, cross, shift } = self.upright;
        matrix[2][2] += shift;
        matrix[3][3] += turn;
        matrix[2][3] -= cross;
        matrix[3][2] -= cross;
        let Plane { turn, cross, shift } = self.level;
        matrix[0][0] += shift;
        matrix[5][5] += turn;
        matrix[0][5] += cross;
        matrix[5][0] += cross;
        matrix[1][1] += self.along;
        matrix[4][4] += self.twist;
    }

    /// The 6 × 6 stiffness: force at the place per motion of it.
    pub(crate) fn stiffness(&self) -> [[f64; 6]; 6] {
        let mut k = [[0.0; 6]; 6];
        let [shift, cross, turn] = self.upright.stiffness();
        (k[2][2], k[3][3], k[2][3], k[3][2]) = (shift, turn, cross, cross);
        let [shift, cross, turn] = self.level.stiffness();
        (k[0][0], k[5][5], k[0][5], k[5][0]) = (shift, turn, -cross, -cross);
        (k[1][1], k[4][4]) = (1.0 / self.along, 1.0 / self.twist);
        k
    }
}

/// Motion of the start of a stretch, its end held, under a force on the start and a line load (N/m; x y z).
#[inline]
pub(crate) fn start_motion(own: &Flexibility, force: &Wrench, [qx, qy, qz]: [f64; 3]) -> Motion {
    let [fx, fy, fz, mx, my, mz] = *force;
    let [b0, b1, b2, b3] = own.plane_12.bending;
    let [s0, s1] = own.plane_12.shear;
    let [h0, h1, h2, h3] = own.plane_13.bending;
    let [t0, t1] = own.plane_13.shear;
    [
        fx * (h2 + t0) + mz * h1 + qx * (0.5 * h3 + t1),
        fy * own.axial[0] + qy * own.axial[1],
        fz * (b2 + s0) - mx * b1 + qz * (0.5 * b3 + s1),
        mx * b0 - fz * b1 - 0.5 * qz * b2,
        my * own.torsion,
        mz * h0 + fx * h1 + 0.5 * qx * h2,
    ]
}
