//! One wheel end by statics: what its bearings carry, and how far its hub moves against the spindle.

use super::row_flexibility::RowFlexibility;
use super::wrench::{Motion, Wrench};
use crate::mesh::springs::{BRAKE_STIFFNESS, DISC_STIFFNESS};
use crate::parts::bearing_stiffness::BearingStiffness;
use crate::road_contact::ground::STANDARD_GRAVITY;
use crate::{Axle, Side};

/// A hub on its two bearings.
#[derive(Debug)]
pub(crate) struct Hub {
    /// Positions of mounting face, inner and outer bearing, m.
    pub face: f64,
    pub inner: f64,
    pub outer: f64,
    pub inner_stiffness: BearingStiffness,
    pub outer_stiffness: BearingStiffness,
    /// Motion of the wheel against the hub per force on it, in each direction.
    disc: [f64; 6],
    /// Share of a side force that the outer bearing carries.
    outer_share: f64,
    /// The spindle between the bearings, seen from the outer one.
    between: RowFlexibility,
    /// Weight of the hub, which the disc does not carry.
    hub_weight: Weight,
    wheel_weight: Weight,
}

/// A weight beside the mounting face.
#[derive(Debug, Clone, Copy)]
struct Weight {
    /// N.
    force: f64,
    /// Its first moment about the mounting face, to the left, N m.
    to_left: f64,
}

impl Weight {
    /// What its mass puts on the mounting face in a field of force per mass, in units of standard gravity.
    fn in_field(&self, [x, y, z]: [f64; 3]) -> Wrench {
        let Weight { force, to_left } = *self;
        [x * force, y * force, z * force, z * to_left, 0.0, -x * to_left]
    }
}

/// Forces of a hub on its spindle.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct BearingForces {
    pub inner: [f64; 3],
    pub outer: [f64; 3],
    /// Torque of the brake, which acts at the inner bearing.
    pub brake: f64,
}

impl Hub {
    /// - `between`: the spindle between the bearings, seen from the outer one
    pub(crate) fn of(axle: &Axle, side: Side, between: RowFlexibility) -> Self {
        let (sign, end, wheel) = (side.sign(), axle.wheel_ends.of(side), axle.wheels.of(side));
        let middle = 0.5 * (end.inner_bearing + end.outer_bearing) - end.mounting_face;
        let (hub, wheels) = (STANDARD_GRAVITY * end.hub_mass, STANDARD_GRAVITY * wheel.mass());
        let (lean, stiff) = (wheel.disc_flexibility(), DISC_STIFFNESS.recip());
        let disc = [stiff, stiff, stiff, lean, stiff, lean];
        Hub {
            face: sign * end.mounting_face,
            inner: sign * end.inner_bearing,
            outer: sign * end.outer_bearing,
            inner_stiffness: end.inner_stiffness,
            outer_stiffness: end.outer_stiffness,
            disc: if lean > 0.0 { disc } else { [0.0; 6] },
            // Both push through their own spring, the outer one through the spindle too.
            outer_share: {
                let (inner, outer) = (end.inner_stiffness.axial.recip(), end.outer_stiffness.axial.recip());
                inner / (inner + outer + between.along)
            },
            between,
            hub_weight: Weight { force: hub, to_left: sign * hub * middle },
            wheel_weight: Weight { force: wheels, to_left: sign * wheels * wheel.outset() },
        }
    }

    /// What the mass of hub and wheels puts on the hub in a field of force per mass, in units of standard gravity.
    pub(crate) fn weight_in(&self, field: [f64; 3]) -> Wrench {
        let (hub, wheels) = (self.hub_weight.in_field(field), self.wheel_weight.in_field(field));
        std::array::from_fn(|i| hub[i] + wheels[i])
    }

    /// What the disc carries under a force on the wheel and in a field of force per mass.
    pub(crate) fn disc_force(&self, force: &[f64], field: [f64; 3]) -> Wrench {
        let wheels = self.wheel_weight.in_field(field);
        std::array::from_fn(|i| force[i] + wheels[i])
    }

    /// Work of a force in the disc on what it gives under another.
    pub(crate) fn disc_work(&self, force: &Wrench, other: &Wrench) -> f64 {
        (0..6).map(|i| force[i] * self.disc[i] * other[i]).sum()
    }

    /// What the disc does not give in a field of force per mass: it does not carry the hub.
    pub(crate) fn disc_relief(&self, field: [f64; 3]) -> Motion {
        let hub = self.hub_weight.in_field(field);
        std::array::from_fn(|i| -self.disc[i] * hub[i])
    }

    /// What the bearings carry under a force on the hub.
    ///
    /// - `stretch`: how far the loads of the line move the outer bearing to the left of the inner one
    pub(crate) fn bearing_forces(&self, force: &Wrench, stretch: f64) -> BearingForces {
        let [x, y, z, mx, my, mz] = *force;
        let (arm, apart) = (self.face - self.inner, self.outer - self.inner);
        let along = self.outer_share * (y - self.inner_stiffness.axial * stretch);
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
        let (inner, outer) = (self.inner_stiffness.radial.recip(), self.outer_stiffness.radial.recip());
        let mut add = |[i, j]: [usize; 2], [a, b]: [f64; 2], flexibility: f64| {
            sum[i][i] += flexibility * a * a;
            sum[i][j] += flexibility * a * b;
            sum[j][i] += flexibility * a * b;
            sum[j][j] += flexibility * b * b;
        };
        add([2, 3], [share, turn], outer + self.between.upright.shift);
        add([2, 3], [1.0 - share, -turn], inner);
        add([0, 5], [share, -turn], outer + self.between.level.shift);
        add([0, 5], [1.0 - share, turn], inner);
        let (inner, outer) = (1.0 - self.outer_share, self.outer_share);
        sum[1][1] += inner * inner / self.inner_stiffness.axial
            + outer * outer * (self.outer_stiffness.axial.recip() + self.between.along);
        sum[4][4] += 1.0 / BRAKE_STIFFNESS;
        (0..6).for_each(|i| sum[i][i] += self.disc[i]);
        sum
    }
}

impl BearingForces {
    /// Work of these forces on what the bearings and the brake give under others.
    pub(crate) fn work_on(&self, other: &BearingForces, hub: &Hub) -> f64 {
        let work = |stiffness: &BearingStiffness, [x, y, z]: [f64; 3], [u, v, w]: [f64; 3]| {
            (x * u + z * w) / stiffness.radial + y * v / stiffness.axial
        };
        work(&hub.inner_stiffness, self.inner, other.inner)
            + work(&hub.outer_stiffness, self.outer, other.outer)
            + self.brake * other.brake / BRAKE_STIFFNESS
    }
}
