//! Masses of hubs, wheels and what else is fixed to an axle.

use axlebow_fe::{Attachment, LumpedMass, RigidBody, Structure};

use crate::Side;
use crate::mesh::joints::Joints;

/// Adds the mass of each hub and wheel, and of what else is fixed to the axle.
pub(crate) fn add_masses(joints: &Joints, structure: &mut Structure) {
    let (axle, nodes) = (joints.axle, joints.nodes);
    for side in Side::BOTH {
        let (end, wheel) = (axle.wheel_ends.of(side), axle.wheels.of(side));
        let middle = 0.5 * (end.inner_bearing + end.outer_bearing) - end.mounting_face;
        let place = Attachment::on_arm(*nodes.barrels.of(side), [0.0, side.sign() * middle, 0.0]);
        structure.add_mass(RigidBody::with_moments(place, end.hub_mass, [0.0; 3]));
        let place = Attachment::on_arm(*nodes.hubs.of(side), [0.0, side.sign() * wheel.outset(), 0.0]);
        // A rolling wheel does not take part in the axle's rotation about Y.
        let tilt = wheel.mass() * wheel.tilt_radius().powi(2);
        structure.add_mass(RigidBody::with_moments(place, wheel.mass(), [tilt, 0.0, tilt]));
    }
    for fixed in &axle.fixed_masses {
        structure.add_mass(LumpedMass { place: joints.on_line(fixed.y), mass: fixed.mass });
    }
}
