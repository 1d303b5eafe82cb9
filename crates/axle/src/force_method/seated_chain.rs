//! The line of an axle on its two seats: motions of the seats per force, and of the hubs.

use axlebow_fe::{Attachment, NodeId};
use nalgebra::SMatrix;

use super::chain::Chain;
use super::hub::Hub;
use super::positive_inverse::{Square12, positive_inverse};
use super::row_flexibility::start_motion;
use super::state::{LineState, PlaceForces};
use super::wrench::{Motion, Wrench, add, carried, moved};
use crate::mesh::springs::seat_spring;
use crate::road_contact::ground::Hubs;
use crate::road_contact::own_loads::OwnLoads;
use crate::{AxleError, Side, Sides};

type Matrix12 = SMatrix<f64, 12, 12>;
type Vector12 = [f64; 12];

/// The line of an axle on its seats.
#[derive(Debug)]
pub(crate) struct SeatedChain<'a> {
    pub chain: Chain<'a>,
    pub hubs: Sides<Hub>,
    seat_stiffness: Sides<[[f64; 6]; 6]>,
    /// Motion of both seats per force at them, left first.
    seat_compliance: Square12,
    middle: Middle,
    /// Motion of both hubs per force on them.
    pub compliance: Matrix12,
}

/// Loads of the axle itself, and what those of its line do at the seats.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct LineLoads {
    own: OwnLoads,
    at_seats: Vector12,
    /// How far they move the outer bearing of each side to the left of the inner one.
    stretch: Sides<f64>,
}

impl<'a> SeatedChain<'a> {
    /// Solves for the motions of the seats; none where nothing holds the axle.
    pub(crate) fn of(chain: Chain<'a>) -> Result<Option<Self>, AxleError> {
        let hubs = Sides::each(|side| Hub::of(&chain, side));
        let (left, right) = (seat_stiffness(&chain, Side::Left)?, seat_stiffness(&chain, Side::Right)?);
        let seat_stiffness = Sides { left, right };
        let middle = Middle::of(&chain);
        let Some(seat_compliance) = positive_inverse(middle.equations(&seat_stiffness)) else {
            return Ok(None);
        };
        let mut seated = SeatedChain {
            chain,
            hubs,
            seat_stiffness,
            seat_compliance,
            middle,
            compliance: Matrix12::zeros(),
        };
        seated.compliance = seated.hub_compliance();
        Ok(Some(seated))
    }

    /// The axle under loads of its own.
    pub(crate) fn line_loads(&self, own: OwnLoads) -> LineLoads {
        let places = PlaceForces::of(&self.chain, &own);
        let stretch = Sides::each(|side| places.stretch(&self.chain, side, &own));
        LineLoads { own, at_seats: self.middle.push_at_seats(&self.chain, (places, &own)), stretch }
    }

    /// What the line carries under forces on the hubs (left first) beside their weight, and loads of its own.
    pub(crate) fn state(&self, hub_forces: &Hubs, loads: &LineLoads) -> LineState {
        let discs = Sides::each(|side| {
            self.hubs.of(side).disc_force(&hub_forces.as_slice()[first(side)..], loads.own.field)
        });
        let forces = Sides::each(|side| self.hub_force(hub_forces, side, &loads.own));
        LineState { discs, ..self.loaded(&forces, loads) }
    }

    /// The force on a hub with its weight.
    fn hub_force(&self, hub_forces: &Hubs, side: Side, own: &OwnLoads) -> Wrench {
        let weight = self.hubs.of(side).weight_in(own.field);
        std::array::from_fn(|i| hub_forces[first(side) + i] + weight[i])
    }

    /// What the line carries under forces on the hubs, their weight among them, and loads of its own.
    fn loaded(&self, forces: &Sides<Wrench>, loads: &LineLoads) -> LineState {
        let chain = &self.chain;
        let mut push = loads.at_seats;
        for side in Side::BOTH {
            let own = moved(*forces.of(side), self.to_seat(side));
            (0..6).for_each(|i| push[first(side) + i] += own[i]);
        }
        // The compliance is symmetric: a sum of rows.
        let mut motions = [0.0; 12];
        for (row, part) in self.seat_compliance.iter().zip(push) {
            motions.iter_mut().zip(row).for_each(|(sum, c)| *sum += c * part);
        }
        let seat_motions = Sides::each(|side| std::array::from_fn(|i| motions[first(side) + i]));
        let seat_forces = Sides::each(|side| product(self.seat_stiffness.of(side), seat_motions.of(side)));
        let bearings =
            Sides::each(|side| self.hubs.of(side).bearing_forces(forces.of(side), *loads.stretch.of(side)));
        let mut places = PlaceForces::of(chain, &loads.own);
        for side in Side::BOTH {
            places.add_bearings(chain, side, bearings.of(side));
            places.add_reaction(*chain.seats.of(side), seat_forces.of(side));
        }
        let field = loads.own.field;
        let (starts, discs) = (places.summed(chain, field), Sides::default());
        LineState { starts, field, bearings, discs, seat_motions, seat_forces }
    }

    /// From a hub's face to its seat, to the left.
    fn to_seat(&self, side: Side) -> f64 {
        self.chain.places[*self.chain.seats.of(side)] - self.hubs.of(side).face
    }

    /// The seats' compliance brought to the hubs, and each hub's own against its seat.
    fn hub_compliance(&self) -> Matrix12 {
        let mut c = Matrix12::from_fn(|i, j| self.seat_compliance[i][j]);
        for side in Side::BOTH {
            let (o, by) = (first(side), self.to_seat(side));
            for i in 0..12 {
                c[(i, o + 2)] -= by * c[(i, o + 3)];
                c[(i, o)] += by * c[(i, o + 5)];
            }
            for i in 0..12 {
                c[(o + 2, i)] -= by * c[(o + 3, i)];
                c[(o, i)] += by * c[(o + 5, i)];
            }
        }
        for side in Side::BOTH {
            let hub = self.hubs.of(side);
            let own = hub.flexibility(&self.chain.flexibility(self.chain.overhang(side), hub.face));
            let o = first(side);
            (0..36).for_each(|k| c[(o + k / 6, o + k % 6)] += own[k / 6][k % 6]);
        }
        c
    }

    /// Motion of both hubs under the loads of the line.
    fn line_motion(&self, loads: &LineLoads) -> Hubs {
        // Hubs that nothing holds to the spindle go with it, their bearings without force.
        let free = LineLoads { stretch: Sides::default(), ..*loads };
        let state = self.loaded(&Sides::default(), &free);
        let mut motion = Hubs::zeros();
        for side in Side::BOTH {
            let at = |place: &Sides<usize>| state.outboard(&self.chain, side, *place.of(side));
            let own = self.hubs.of(side).carried(&at(&self.chain.inner), &at(&self.chain.outer));
            let relief = self.hubs.of(side).disc_relief(loads.own.field);
            (0..6).for_each(|i| motion[first(side) + i] = own[i] + relief[i]);
        }
        motion
    }

    /// Motion of both hubs under loads of the axle itself.
    pub(crate) fn own_motion(&self, loads: &LineLoads) -> Hubs {
        let weight = Sides::each(|side| self.hubs.of(side).weight_in(loads.own.field));
        let weight = Hubs::from_iterator(weight.left.into_iter().chain(weight.right));
        self.compliance * weight + self.line_motion(loads)
    }
}

/// First of a side's six numbers among twelve.
pub(crate) fn first(side: Side) -> usize {
    if side == Side::Left { 0 } else { 6 }
}

fn product(matrix: &[[f64; 6]; 6], vector: &[f64; 6]) -> [f64; 6] {
    std::array::from_fn(|i| (0..6).map(|j| matrix[i][j] * vector[j]).sum())
}

fn seat_stiffness(chain: &Chain, side: Side) -> Result<[[f64; 6]; 6], AxleError> {
    let seat = chain.axle.seats.of(side);
    // A stiffness is the same wherever the spring is.
    let spring = seat_spring(seat, chain.walls.of(side), Attachment::at(NodeId::FIRST));
    Ok(spring.ok_or(AxleError::SeatTooStiff { side })?.stiffness)
}

/// The axle between its seats.
#[derive(Debug)]
struct Middle {
    /// Force on its right end per motion of it, its left end held.
    stiffness: [[f64; 6]; 6],
    /// Distance between the seats.
    length: f64,
    seats: Sides<usize>,
}

impl Middle {
    fn of(chain: &Chain) -> Self {
        let seats = chain.seats;
        let (right, left) = (chain.places[seats.right], chain.places[seats.left]);
        let flexibility = chain.flexibility((seats.right, seats.left), right);
        Middle { stiffness: flexibility.stiffness(), length: left - right, seats }
    }

    /// Stiffness equations of both seats' motions, left first.
    fn equations(&self, seats: &Sides<[[f64; 6]; 6]>) -> Square12 {
        let mut k = [[0.0; 12]; 12];
        for j in 0..6 {
            let mut unit = [0.0; 6];
            unit[j] = 1.0;
            let from_right = product(&self.stiffness, &unit);
            let from_left = product(&self.stiffness, &carried(unit, -self.length));
            let (of_right, of_left) = (moved(from_right, self.length), moved(from_left, self.length));
            for i in 0..6 {
                k[6 + i][6 + j] = seats.right[i][j] + from_right[i];
                k[6 + i][j] = -from_left[i];
                k[i][6 + j] = -of_right[i];
                k[i][j] = seats.left[i][j] + of_left[i];
            }
        }
        k
    }

    /// What the loads of the whole line do at the seats when these are held: left first.
    fn push_at_seats(&self, chain: &Chain, (places, own): (PlaceForces, &OwnLoads)) -> Vector12 {
        let last = chain.links.len();
        let starts = places.summed(chain, own.field);
        let (total, places) = (starts[last], (chain.places[self.seats.left], chain.places[last]));
        let outer_right = starts[self.seats.right];
        let mut free: Motion = [0.0; 6];
        for number in self.seats.right..self.seats.left {
            let link = &chain.links[number];
            let by = link.start - chain.places[self.seats.right];
            let before = moved(outer_right, by);
            let force = std::array::from_fn(|i| starts[number][i] - before[i]);
            let load = own.field.map(|part| part * link.weight);
            add(&mut free, &carried(start_motion(&link.flexibility, &force, load), -by));
        }
        let held = product(&self.stiffness, &free);
        let right: Wrench = std::array::from_fn(|i| outer_right[i] + held[i]);
        let (all, beyond) = (moved(total, places.0 - places.1), moved(right, self.length));
        std::array::from_fn(|i| if i < 6 { all[i] - beyond[i] } else { right[i - 6] })
    }
}
