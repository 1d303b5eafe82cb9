//! What the line of an axle carries under forces on its hubs, and how it moves.

use axlebow_fe::BeamForces;

use super::chain::{Chain, Link};
use super::hub::BearingForces;
use super::row_flexibility::start_motion;
use super::wrench::{Motion, Wrench, add, carried, moved};
use crate::ground::STANDARD_GRAVITY;
use crate::stations::nearest_of;
use crate::{Side, Sides};

/// What the line of an axle carries.
#[derive(Debug, Clone)]
pub(crate) struct LineState {
    /// Force on the start of each stretch, and what is left over at the left end.
    pub starts: Vec<Wrench>,
    /// Share of the weight that acts.
    pub gravity: f64,
    pub bearings: Sides<BearingForces>,
    /// Motion of each seat.
    pub seat_motions: Sides<Motion>,
    /// Force of the axle on each seat.
    pub seat_forces: Sides<Wrench>,
}

/// Forces at the places of a chain.
#[derive(Debug)]
pub(crate) struct PlaceForces(Vec<Wrench>);

impl PlaceForces {
    /// The weight of masses fixed to the axle, a share of it.
    pub(crate) fn weights(chain: &Chain, gravity: f64) -> Self {
        let mut forces = vec![[0.0; 6]; chain.places.len()];
        for fixed in &chain.axle.fixed_masses {
            let place = nearest_of(&chain.places, fixed.y);
            let weight = -gravity * STANDARD_GRAVITY * fixed.mass;
            let moment = weight * (fixed.y - chain.places[place]);
            add(&mut forces[place], &[0.0, 0.0, weight, moment, 0.0, 0.0]);
        }
        PlaceForces(forces)
    }

    pub(crate) fn add_bearings(&mut self, chain: &Chain, side: Side, forces: &BearingForces) {
        let BearingForces { inner: [x, y, z], outer, brake } = *forces;
        add(&mut self.0[*chain.inner.of(side)], &[x, y, z, 0.0, brake, 0.0]);
        let [x, y, z] = outer;
        add(&mut self.0[*chain.outer.of(side)], &[x, y, z, 0.0, 0.0, 0.0]);
    }

    /// Adds what a seat puts on the axle: the opposite of what the axle puts on the seat.
    pub(crate) fn add_reaction(&mut self, place: usize, force: &Wrench) {
        add(&mut self.0[place], &force.map(|part| -part));
    }

    /// Force on the start of each stretch, which is everything to the right of it; last what is left over at the left end.
    pub(crate) fn summed(mut self, chain: &Chain, gravity: f64) -> Vec<Wrench> {
        let mut sum = [0.0; 6];
        for (here, link) in self.0.iter_mut().zip(&chain.links) {
            add(&mut sum, here);
            *here = sum;
            sum = moved(sum, link.length);
            let weight = gravity * link.load * link.length;
            sum[2] += weight;
            sum[3] -= 0.5 * weight * link.length;
        }
        if let Some(last) = self.0.last_mut() {
            add(last, &sum);
        }
        self.0
    }
}

impl LineState {
    /// What a stretch carries.
    pub(crate) fn beam_forces(&self, number: usize, link: &Link) -> BeamForces {
        let [fx, fy, fz, mx, my, mz] = self.starts[number];
        BeamForces { start: [fy, fz, fx, my, mz, mx], line_load: [0.0, self.gravity * link.load, 0.0] }
    }

    /// Motions of places from a seat to the left, as far as another place.
    pub(crate) fn leftward(&self, chain: &Chain, from: Side, to: usize) -> Motion {
        let mut motion = *self.seat_motions.of(from);
        for number in *chain.seats.of(from)..to {
            let link = &chain.links[number];
            let given = start_motion(&link.flexibility, &self.starts[number], self.gravity * link.load);
            motion.iter_mut().zip(given).for_each(|(sum, part)| *sum -= part);
            motion = carried(motion, link.length);
        }
        motion
    }

    /// Motion of a place to the right of the right seat.
    fn rightward(&self, chain: &Chain, to: usize) -> Motion {
        let mut motion = self.seat_motions.right;
        for number in (to..chain.seats.right).rev() {
            let link = &chain.links[number];
            motion = carried(motion, -link.length);
            add(
                &mut motion,
                &start_motion(&link.flexibility, &self.starts[number], self.gravity * link.load),
            );
        }
        motion
    }

    /// Motion of a place outboard of the seat of a side.
    pub(crate) fn outboard(&self, chain: &Chain, side: Side, to: usize) -> Motion {
        match side {
            Side::Left => self.leftward(chain, Side::Left, to),
            Side::Right => self.rightward(chain, to),
        }
    }
}
