//! What the line of an axle carries under forces on its hubs, and how it moves.

use axlebow_fe::BeamForces;

use super::chain::{Chain, Link};
use super::hub::BearingForces;
use super::row_flexibility::start_motion;
use super::wrench::{Motion, Wrench, add, carried, moved};
use crate::road_contact::ground::STANDARD_GRAVITY;
use crate::road_contact::own_loads::OwnLoads;
use crate::{Side, Sides};

/// What the line of an axle carries.
#[derive(Debug, Clone)]
pub(crate) struct LineState {
    /// Force on the start of each stretch, and what is left over at the left end.
    pub starts: Vec<Wrench>,
    /// Field of force per mass that acts, in units of standard gravity.
    pub field: [f64; 3],
    pub bearings: Sides<BearingForces>,
    /// What each disc carries between wheel and hub.
    pub discs: Sides<Wrench>,
    /// Motion of each seat.
    pub seat_motions: Sides<Motion>,
    /// Force of the axle on each seat.
    pub seat_forces: Sides<Wrench>,
}

/// Forces at the places of a chain.
#[derive(Debug)]
pub(crate) struct PlaceForces(Vec<Wrench>);

impl PlaceForces {
    /// What fixed masses and the carrier put on the line.
    pub(crate) fn of(chain: &Chain, own: &OwnLoads) -> Self {
        let mut forces = vec![[0.0; 6]; chain.places.len()];
        for (place, fixed) in &chain.fixed_masses {
            let [x, y, z] = own.field.map(|part| part * STANDARD_GRAVITY * fixed.mass);
            let to_left = fixed.y - chain.places[*place];
            add(&mut forces[*place], &[x, y, z, z * to_left, 0.0, -x * to_left]);
        }
        let [about_x, about_y] = own.carrier;
        add(&mut forces[chain.center()], &[0.0, 0.0, 0.0, about_x, about_y, 0.0]);
        PlaceForces(forces)
    }

    /// How far these forces and those of the line move the outer bearing of a side to the left of the inner one.
    pub(crate) fn stretch(&self, chain: &Chain, side: Side, own: &OwnLoads) -> f64 {
        let (right, left) = chain.between_bearings(side);
        let along = |link: &Link| own.field[1] * link.weight;
        let (mut outboard, mut stretch) = (0.0, 0.0);
        let mut pass = |number: usize, place: usize| {
            let link = &chain.links[number];
            let [a0, a1] = link.flexibility.axial;
            let (load, all) = (along(link), along(link) * link.length);
            outboard += self.0[place][1];
            if (right..left).contains(&number) {
                stretch += match side {
                    Side::Left => (outboard + all) * a0 - load * a1,
                    Side::Right => outboard * a0 + load * a1,
                };
            }
            outboard += all;
        };
        match side {
            Side::Left => (right..chain.links.len()).rev().for_each(|number| pass(number, number + 1)),
            Side::Right => (0..left).for_each(|number| pass(number, number)),
        }
        stretch
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
    pub(crate) fn summed(mut self, chain: &Chain, field: [f64; 3]) -> Vec<Wrench> {
        let mut sum = [0.0; 6];
        for (here, link) in self.0.iter_mut().zip(&chain.links) {
            add(&mut sum, here);
            *here = sum;
            sum = moved(sum, link.length);
            let [x, y, z] = field.map(|part| part * link.weight * link.length);
            let half = 0.5 * link.length;
            add(&mut sum, &[x, y, z, -half * z, 0.0, half * x]);
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
        let [x, y, z] = self.line_load(link);
        BeamForces { start: [fy, fz, fx, my, mz, mx], line_load: [y, z, x] }
    }

    fn line_load(&self, link: &Link) -> [f64; 3] {
        self.field.map(|part| part * link.weight)
    }

    /// Motions of places from a seat to the left, as far as another place.
    pub(crate) fn leftward(&self, chain: &Chain, from: Side, to: usize) -> Motion {
        let mut motion = *self.seat_motions.of(from);
        for number in *chain.seats.of(from)..to {
            let link = &chain.links[number];
            let given = start_motion(&link.flexibility, &self.starts[number], self.line_load(link));
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
            add(&mut motion, &start_motion(&link.flexibility, &self.starts[number], self.line_load(link)));
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
