//! The line of an axle on its two seats: motions of the seats per force, kept while the line stays the same.

use std::cell::OnceCell;

use axlebow_fe::{Attachment, NodeId};
use nalgebra::SMatrix;

use super::chain::Chain;
use super::hub::BearingForces;
use super::positive_inverse::{Square12, positive_inverse};
use super::row_flexibility::{RowFlexibility, start_motion};
use super::state::{LineState, PlaceForces};
use super::wrench::{Motion, Wrench, add, carried, moved};
use crate::assembly::wall_at_seat::WallAtSeat;
use crate::mesh::springs::seat_spring;
use crate::road_contact::own_loads::OwnLoads;
use crate::{Axle, AxleError, Side, Sides};

pub(crate) type Matrix12 = SMatrix<f64, 12, 12>;
type Vector12 = [f64; 12];

/// The line of an axle on its seats, and what does not change with loads, tires, wheels or the stiffness of bearings.
#[derive(Debug)]
pub(crate) struct SeatedChain {
    pub chain: Chain,
    seat_stiffness: Sides<[[f64; 6]; 6]>,
    /// Motion of both seats per force at them, left first.
    seat_compliance: Square12,
    /// The same brought to the mounting faces.
    pub at_faces: Matrix12,
    /// From each seat to its inner bearing.
    pub overhangs: Sides<RowFlexibility>,
    /// Between the bearings of each side.
    pub spindles: Sides<RowFlexibility>,
    middle: Middle,
    /// The answer to loads of the axle itself that was asked for last.
    own: Option<OwnAnswer>,
    /// What the line carries under the unit load of each wheel's camber, once it is known.
    pub camber_units: OnceCell<Sides<LineState>>,
}

/// Loads of the axle itself, and what those of its line do at the seats.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct LineLoads {
    pub own: OwnLoads,
    at_seats: Vector12,
    /// How far they move the outer bearing of each side to the left of the inner one.
    stretch: Sides<f64>,
}

/// What loads of the line do to it without the hubs.
#[derive(Debug, Clone, Copy)]
pub(crate) struct OwnAnswer {
    pub loads: LineLoads,
    /// Motions of the inner bearings.
    pub inner: Sides<Motion>,
    /// Motions of the outer bearings.
    pub outer: Sides<Motion>,
}

impl LineLoads {
    /// How far they move the outer bearing of a side to the left of the inner one, m.
    pub(crate) fn stretch(&self, side: Side) -> f64 {
        *self.stretch.of(side)
    }
}

impl SeatedChain {
    /// Solves for the motions of the seats; none where nothing holds the axle.
    pub(crate) fn of(axle: &Axle, chain: Chain) -> Result<Option<Self>, AxleError> {
        let stiffness = |side: Side| seat_stiffness(axle, chain.walls.of(side), side);
        let seat_stiffness = Sides { left: stiffness(Side::Left)?, right: stiffness(Side::Right)? };
        let middle = Middle::of(&chain);
        let Some(seat_compliance) = positive_inverse(middle.equations(&seat_stiffness)) else {
            return Ok(None);
        };
        Ok(Some(SeatedChain {
            at_faces: at_faces(&chain, &seat_compliance),
            overhangs: Sides::each(|side| chain.overhang(side)),
            spindles: Sides::each(|side| chain.spindle(side)),
            chain,
            seat_stiffness,
            seat_compliance,
            middle,
            own: None,
            camber_units: OnceCell::new(),
        }))
    }

    /// The line under loads of the axle itself.
    pub(crate) fn under(&mut self, own: OwnLoads) -> OwnAnswer {
        match self.own {
            Some(known) if known.loads.own == own => known,
            _ => *self.own.insert(self.answer(own)),
        }
    }

    fn answer(&self, own: OwnLoads) -> OwnAnswer {
        let places = PlaceForces::of(&self.chain, &own);
        let stretch = Sides::each(|side| places.stretch(&self.chain, side, &own));
        let at_seats = self.middle.push_at_seats(&self.chain, (places, &own));
        let loads = LineLoads { own, at_seats, stretch };
        // Hubs that nothing holds to the spindle go with it, their bearings without force.
        let state = self.loaded(&loads, &Sides::default(), Sides::default());
        let at =
            |place: &Sides<usize>| Sides::each(|side| state.outboard(&self.chain, side, *place.of(side)));
        OwnAnswer { loads, inner: at(&self.chain.inner), outer: at(&self.chain.outer) }
    }

    /// What the line carries on its seats.
    ///
    /// - `hubs`: force of each wheel end on its mounting face, weight and all
    /// - `bearings`: how its bearings put it on the line
    pub(crate) fn loaded(
        &self,
        loads: &LineLoads,
        hubs: &Sides<Wrench>,
        bearings: Sides<BearingForces>,
    ) -> LineState {
        let chain = &self.chain;
        let mut push = loads.at_seats;
        for side in Side::BOTH {
            let own = moved(*hubs.of(side), chain.to_seat(side));
            (0..6).for_each(|i| push[first(side) + i] += own[i]);
        }
        // The compliance is symmetric: a sum of rows.
        let mut motions = [0.0; 12];
        for (row, part) in self.seat_compliance.iter().zip(push) {
            motions.iter_mut().zip(row).for_each(|(sum, c)| *sum += c * part);
        }
        let seat_motions = Sides::each(|side| std::array::from_fn(|i| motions[first(side) + i]));
        let seat_forces = Sides::each(|side| product(self.seat_stiffness.of(side), seat_motions.of(side)));
        let mut places = PlaceForces::of(chain, &loads.own);
        for side in Side::BOTH {
            places.add_bearings(chain, side, bearings.of(side));
            places.add_reaction(*chain.seats.of(side), seat_forces.of(side));
        }
        let field = loads.own.field;
        let (starts, discs) = (places.summed(chain, field), Sides::default());
        LineState { starts, field, bearings, discs, seat_motions, seat_forces }
    }
}

/// The seats' compliance brought to the mounting faces.
fn at_faces(chain: &Chain, seat_compliance: &Square12) -> Matrix12 {
    let mut c = Matrix12::from_fn(|i, j| seat_compliance[i][j]);
    for side in Side::BOTH {
        let (o, by) = (first(side), chain.to_seat(side));
        for i in 0..12 {
            c[(i, o + 2)] -= by * c[(i, o + 3)];
            c[(i, o)] += by * c[(i, o + 5)];
        }
        for i in 0..12 {
            c[(o + 2, i)] -= by * c[(o + 3, i)];
            c[(o, i)] += by * c[(o + 5, i)];
        }
    }
    c
}

/// First of a side's six numbers among twelve.
pub(crate) fn first(side: Side) -> usize {
    if side == Side::Left { 0 } else { 6 }
}

fn product(matrix: &[[f64; 6]; 6], vector: &[f64; 6]) -> [f64; 6] {
    std::array::from_fn(|i| (0..6).map(|j| matrix[i][j] * vector[j]).sum())
}

fn seat_stiffness(axle: &Axle, wall: &WallAtSeat, side: Side) -> Result<[[f64; 6]; 6], AxleError> {
    // A stiffness is the same wherever the spring is.
    let spring = seat_spring(axle.seats.of(side), wall, Attachment::at(NodeId::FIRST));
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
