//! One wheel end by statics: what its bearings carry, and how far its hub moves against the spindle.

use super::chain::Chain;
use super::row_flexibility::RowFlexibility;
use super::wrench::{Motion, Wrench};
use crate::Side;
use crate::frame::BRAKE_STIFFNESS;
use crate::ground::STANDARD_GRAVITY;

/// A hub on its two bearings.
#[derive(Debug)]
pub(crate) struct Hub {
    /// Positions of mounting face, inner and outer bearing, m.
    pub face: f64,
    pub inner: f64,
    pub outer: f64,
    pub radial_stiffness: f64,
    pub axial_stiffness: f64,
    /// Share of a side force that the outer bearing carries.
    outer_share: f64,
    /// The spindle between the bearings, seen from the outer one.
    between: RowFlexibility,
    /// Weight of hub and wheels, N, and its moment about the mounting face, to the left, N m.
    weight: f64,
    weight_to_left: f64,
}

/// Forces of a hub on its spindle.
#[derive(Debug, Clone, Copy)]
pub(crate) struct BearingForces {
    pub inner: [f64; 3],
    pub outer: [f64; 3],
    /// Torque of the brake, which acts at the inner bearing.
    pub brake: f64,
}

impl Hub {
    pub(crate) fn of(chain: &Chain, side: Side) -> Self {
        let (sign, end, wheel) = (side.sign(), chain.axle.wheel_ends.of(side), chain.axle.wheels.of(side));
        let between = chain.flexibility(chain.between_bearings(side), sign * end.outer_bearing);
        let middle = 0.5 * (end.inner_bearing + end.outer_bearing) - end.mounting_face;
        let (hub, wheels) = (STANDARD_GRAVITY * end.hub_mass, STANDARD_GRAVITY * wheel.mass());
        Hub {
            face: sign * end.mounting_face,
            inner: sign * end.inner_bearing,
            outer: sign * end.outer_bearing,
            radial_stiffness: end.radial_stiffness,
            axial_stiffness: end.axial_stiffness,
            // Both push through their own spring, the outer one through the spindle too.
            outer_share: 1.0 / (2.0 + end.axial_stiffness * between.along),
            between,
            weight: hub + wheels,
            weight_to_left: sign * (hub * middle + wheels * wheel.outset()),
        }
    }

    /// What the mass of hub and wheels puts on the hub in a field of force per mass, in units of standard gravity.
    pub(crate) fn weight_in(&self, [x, y, z]: [f64; 3]) -> Wrench {
        let (weight, to_left) = (self.weight, self.weight_to_left);
        [x * weight, y * weight, z * weight, z * to_left, 0.0, -x * to_left]
    }

    /// What the bearings carry under a force on the hub.
    ///
    /// - `stretch`: how far the loads of the line move the outer bearing to the left of the inner one
    pub(crate) fn bearing_forces(&self, force: &Wrench, stretch: f64) -> BearingForces {
        let [x, y, z, mx, my, mz] = *force;
        let (arm, apart) = (self.face - self.inner, self.outer - self.inner);
        let along = self.outer_share * (y - self.axial_stiffness * stretch);
        let outer = [(arm * x - mz) / apart, along, (arm * z + mx) / apart];
        BearingForces { inner: [x - outer[0], y - outer[1], z - outer[2]], outer, brake: my }
    }

    /// Motion of the hub when its bearings carry nothing and the spindle moves as it does at both.
    pub(crate) fn carried(&self, inner: &Motion, outer: &Motion) -> Motion {
        let (arm, apart) = (self.face - self.inner, self.outer - self.inner);
        let (rx, rz) = ((outer[2] - inner[2]) / apart, (inner[0] - outer[0]) / apart);
        let along = inner[1] + self.outer_share * (outer[1] - inner[1]);
        [inner[0] - rz * arm, along, inner[2] + rx * arm, rx, inner[4], rz]
    }

    /// Flexibility of the hub against the seat of its side; `overhang` is that of the axle up to the inner bearing, seen
    /// from the mounting face.
    pub(crate) fn flexibility(&self, overhang: &RowFlexibility) -> [[f64; 6]; 6] {
        let mut sum = [[0.0; 6]; 6];
        overhang.add_to(&mut sum);
        let (arm, apart) = (self.face - self.inner, self.outer - self.inner);
        let (share, turn) = (arm / apart, 1.0 / apart);
        let spring = 1.0 / self.radial_stiffness;
        let mut add = |[i, j]: [usize; 2], [a, b]: [f64; 2], flexibility: f64| {
            sum[i][i] += flexibility * a * a;
            sum[i][j] += flexibility * a * b;
            sum[j][i] += flexibility * a * b;
            sum[j][j] += flexibility * b * b;
        };
        add([2, 3], [share, turn], spring + self.between.upright.shift);
        add([2, 3], [1.0 - share, -turn], spring);
        add([0, 5], [share, -turn], spring + self.between.level.shift);
        add([0, 5], [1.0 - share, turn], spring);
        let (inner, outer, axial) = (1.0 - self.outer_share, self.outer_share, 1.0 / self.axial_stiffness);
        sum[1][1] += inner * inner * axial + outer * outer * (axial + self.between.along);
        sum[4][4] += 1.0 / BRAKE_STIFFNESS;
        sum
    }
}

impl BearingForces {
    /// Work of these forces on what the bearings and the brake give under others.
    pub(crate) fn work_on(&self, other: &BearingForces, hub: &Hub) -> f64 {
        let radial = |one: &[f64; 3], other: &[f64; 3]| one[0] * other[0] + one[2] * other[2];
        (radial(&self.inner, &other.inner) + radial(&self.outer, &other.outer)) / hub.radial_stiffness
            + (self.inner[1] * other.inner[1] + self.outer[1] * other.outer[1]) / hub.axial_stiffness
            + self.brake * other.brake / BRAKE_STIFFNESS
    }
}
