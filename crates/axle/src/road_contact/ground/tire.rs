//! A tire on the road.

use super::Hubs;
use crate::{Axle, Side, TireSlot};

/// A tire on the road.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Tire {
    pub side: Side,
    pub slot: TireSlot,
    pub y: f64,
    /// How far manufactured camber and a small radius lift it off the road, m.
    pub rise: f64,
    pub radius: f64,
    pub vertical_stiffness: f64,
    pub lateral_stiffness: f64,
    /// Hub forces for a unit force forward, left and up at the contact.
    pub unit: [Hubs; 3],
    /// Hub forces for a unit force forward that the torque of a drive shaft makes.
    pub pull: Hubs,
}

/// Every tire, left first, the outer one of a dual first.
pub(super) fn tires(axle: &Axle) -> Vec<Tire> {
    let of_side = |side: Side| {
        let wheel = axle.wheels.of(side);
        wheel.tires().map(move |place| {
            let tire = wheel.tire();
            let arm = [0.0, side.sign() * place.outboard, -tire.loaded_radius];
            let unit = [0, 1, 2].map(|i| unit_force(side, arm, i));
            Tire {
                side,
                slot: place.slot,
                y: axle.tire_y(side, place.outboard),
                rise: axle.tire_rise(side, place),
                radius: tire.loaded_radius,
                vertical_stiffness: place.vertical_stiffness,
                lateral_stiffness: tire.lateral_stiffness,
                unit,
                pull: unit_force(side, [arm[0], arm[1], 0.0], 0),
            }
        })
    };
    Side::BOTH.into_iter().flat_map(of_side).collect()
}

/// Hub forces of a unit force along axis `i` at the end of `arm` from the hub of `side`.
fn unit_force(side: Side, arm: [f64; 3], i: usize) -> Hubs {
    let mut force = nalgebra::Vector3::zeros();
    force[i] = 1.0;
    let moment = nalgebra::Vector3::from(arm).cross(&force);
    let first = match side {
        Side::Left => 0,
        Side::Right => 6,
    };
    let mut hubs = Hubs::zeros();
    for j in 0..3 {
        hubs[first + j] = force[j];
        hubs[first + 3 + j] = moment[j];
    }
    hubs
}
