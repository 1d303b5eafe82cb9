//! Statics of bearings with play: how far a hub has moved before its loose bearing presses.
//!
//! The motion g that a hub takes up at its loose bearing is a dislocation of a structure that stays linear:
//! the bearing presses with `F = k (d − g)`, d the whole motion of the hub against the spindle. Either the
//! bearing presses and g lies along F with the length of the clearance, or it does not press and g is shorter:
//! `g = P(g + F(g)/κ)` for any κ > 0, P the nearest place within the clearance. F falls as g grows, so that
//! the iteration contracts for κ beyond half the steepest fall (projected gradient, a convex problem). Where
//! the bearing presses hard it takes two or three rounds.
//!
//! Source: S. Boyd & L. Vandenberghe, Convex Optimization, Cambridge 2004, sec. 4.2.3 (the condition), and
//! D. P. Bertsekas, Nonlinear Programming, 3rd ed. 2016, sec. 3.3 (gradient projection); from memory.

use axlebow_fe::{Attachment, Displacements, Loads, State};
use nalgebra::SVector;

use crate::assembly::bearing_play::{LooseBearing, TakenUp, has_play, loose_bearing};
use crate::mesh::frame::Frame;
use crate::parts::bearing_place::{BearingPlace, Pair};
use crate::road_contact::ground::{COLUMNS, Case, Contact, GroundModel, Hubs, hub_motion};
use crate::{Axle, AxleError, Side, Sides};

/// Load columns of the play: forward and up at each bearing, after all others.
const PLAY_COLUMNS: usize = 8;
/// Most rounds of the iteration.
const MOST_ROUNDS: usize = 2000;
/// Share of the clearance within which the motion is found.
const TOLERANCE: f64 = 1e-11;

/// Forward and up at the loose bearing of the left and of the right end.
type Motions = SVector<f64, 4>;

/// Number of load columns that an axle needs.
pub(crate) fn columns(axle: &Axle) -> usize {
    COLUMNS + if has_play(axle) { PLAY_COLUMNS } else { 0 }
}

fn column(side: Side, place: BearingPlace, axis: usize) -> usize {
    let side = if side == Side::Left { 0 } else { 4 };
    let place = if place == BearingPlace::Inner { 0 } else { 2 };
    COLUMNS + side + place + axis
}

/// Every play column with its bearing and axis.
fn each_column() -> impl Iterator<Item = (Side, BearingPlace, usize)> {
    let places = Side::BOTH.into_iter().flat_map(|side| BearingPlace::BOTH.map(|place| (side, place)));
    places.flat_map(|(side, place)| [0, 1].map(|axis| (side, place, axis)))
}

/// Adds the loads that dislocate each bearing by one unit, its stiffness times the unit at both of its sides.
pub(crate) fn add_loads(axle: &Axle, frame: &Frame, loads: &mut Loads) {
    for (side, place, axis) in each_column() {
        let end = axle.wheel_ends.of(side);
        let y = side.sign() * end.bearing_at(place);
        let arm = [0.0, y - side.sign() * end.mounting_face, 0.0];
        let (hub, spindle) =
            (Attachment::on_arm(*frame.barrels.of(side), arm), Attachment::at(frame.node_at(y)));
        let mut push = [0.0; 3];
        push[2 * axis] = end.bearing_stiffness(place).radial;
        loads.add_force(column(side, place, axis), &hub, push);
        loads.add_force(column(side, place, axis), &spindle, push.map(|part| -part));
    }
}

/// Factors of all load columns of a case.
pub(crate) fn factors(contact: &Contact) -> Vec<f64> {
    let mut factors = contact.factors.to_vec();
    for side in Side::BOTH {
        if let Some(TakenUp { bearing, motion }) = contact.endplay_contact.of(side) {
            factors.resize(COLUMNS + PLAY_COLUMNS, 0.0);
            for (axis, part) in motion.iter().enumerate() {
                factors[column(side, bearing.place, axis)] = *part;
            }
        }
    }
    factors
}

/// What the bearings of an axle do under each load column.
#[derive(Debug, Clone)]
pub(crate) struct BearingPlay<'a> {
    axle: &'a Axle,
    /// Forward and upward force of the hub on the spindle for each column.
    forces: Sides<Pair<Vec<[f64; 2]>>>,
    /// Motion of both hubs for each play column.
    shifts: Vec<Hubs>,
}

impl<'a> BearingPlay<'a> {
    /// The play of an axle; `None` when its bearings have none.
    pub(crate) fn of(axle: &'a Axle, frame: &Frame, unit: &Displacements) -> Option<Self> {
        if !has_play(axle) {
            return None;
        }
        let states: Vec<State> =
            (0..unit.columns()).map(|column| unit.state(&frame.structure, column)).collect();
        let forces = Sides::each(|side| {
            let of = |place| column_forces(axle, frame, &states, (side, place));
            Pair { inner: of(BearingPlace::Inner), outer: of(BearingPlace::Outer) }
        });
        let shifts = (COLUMNS..unit.columns()).map(|column| hub_motion(&frame.hubs, unit, column));
        Some(BearingPlay { axle, forces, shifts: shifts.collect() })
    }

    /// Forces of the road for one case, and what the hubs take up; `moved` as of [`GroundModel::contact`].
    ///
    /// # Errors
    /// As [`GroundModel::contact`]; [`AxleError::NoEquilibrium`] when a bearing neither presses nor parts.
    pub(crate) fn contact(
        &self,
        ground: &GroundModel,
        case: &Case,
        moved: &Hubs,
    ) -> Result<Contact, AxleError> {
        let tight = ground.contact(case, moved)?;
        let loose = Sides::each(|side| self.loose(side, ground, &tight));
        let settle = |g: &Motions| -> Result<(Contact, Motions), AxleError> {
            let mut contact = ground.contact(case, &(moved + self.shift(&loose, g)))?;
            contact.endplay_contact = endplay_contact(&loose, g);
            let forces = self.forces(&contact);
            Ok((contact, forces))
        };
        let start = Motions::zeros();
        let (_, free) = settle(&start)?;
        let fall = self.steepest_fall(&loose, &free, settle)?;
        let mut g = start;
        for _ in 0..MOST_ROUNDS {
            let (contact, forces) = settle(&g)?;
            let next = within(&loose, g + forces / fall);
            let moved = (next - g).amax();
            if moved <= TOLERANCE * largest(&loose) {
                return Ok(contact);
            }
            g = next;
        }
        let reason = "a wheel bearing with play neither presses nor parts; change endplay or loads a little";
        Err(AxleError::NoEquilibrium { case: case.name.to_owned(), reason })
    }

    /// The loose bearing of one end, as the loads without play say.
    fn loose(&self, side: Side, ground: &GroundModel, tight: &Contact) -> Option<LooseBearing> {
        let radial = |place| {
            let [x, z] = self.force(side, place, &tight.factors);
            f64::hypot(x, z)
        };
        let radial = Pair { inner: radial(BearingPlace::Inner), outer: radial(BearingPlace::Outer) };
        let own = ground.tires.iter().zip(&tight.tires).filter(|(tire, _)| tire.side == side);
        let lateral: f64 = own.map(|(_, force)| force.lateral).sum();
        loose_bearing(self.axle, side, radial, side.sign() * lateral)
    }

    fn force(&self, side: Side, place: BearingPlace, factors: &[f64]) -> [f64; 2] {
        let columns = self.forces.of(side).of(place).iter().zip(factors);
        columns.fold([0.0; 2], |sum, (force, factor)| [0, 1].map(|i| sum[i] + force[i] * factor))
    }

    /// Forces of both hubs on their spindles at the loose bearings.
    fn forces(&self, contact: &Contact) -> Motions {
        let factors = factors(contact);
        let mut forces = Motions::zeros();
        for (first, side) in [(0, Side::Left), (2, Side::Right)] {
            if let Some(TakenUp { bearing, .. }) = contact.endplay_contact.of(side) {
                let [x, z] = self.force(side, bearing.place, &factors);
                (forces[first], forces[first + 1]) = (x, z);
            }
        }
        forces
    }

    /// Motion of the hubs by what they take up.
    fn shift(&self, loose: &Sides<Option<LooseBearing>>, g: &Motions) -> Hubs {
        let mut shift = Hubs::zeros();
        for (first, side) in [(0, Side::Left), (2, Side::Right)] {
            let Some(bearing) = loose.of(side) else { continue };
            for axis in 0..2 {
                shift += self.shifts[column(side, bearing.place, axis) - COLUMNS] * g[first + axis];
            }
        }
        shift
    }

    /// A bound on how fast the forces fall with what is taken up, N/m: the sum of the falls along each motion.
    fn steepest_fall(
        &self,
        loose: &Sides<Option<LooseBearing>>,
        free: &Motions,
        settle: impl Fn(&Motions) -> Result<(Contact, Motions), AxleError>,
    ) -> Result<f64, AxleError> {
        let step = largest(loose);
        // A wheel that no motion of its hub unloads falls by nothing: then any bound will do.
        let mut fall = 1e-6 * self.axle.wheel_ends.left.inner_stiffness.radial;
        for i in 0..4 {
            let mut g = Motions::zeros();
            g[i] = step;
            let (_, forces) = settle(&g)?;
            fall += ((free[i] - forces[i]) / step).abs();
        }
        Ok(fall)
    }
}

/// Forward and upward force of the hub on the spindle at one bearing for each load column. In its own columns a
/// bearing is dislocated by one unit, which presses nothing.
fn column_forces(
    axle: &Axle,
    frame: &Frame,
    states: &[State],
    (side, place): (Side, BearingPlace),
) -> Vec<[f64; 2]> {
    let spring = frame.bearing(side, place);
    let stiffness = axle.wheel_ends.of(side).bearing_stiffness(place).radial;
    let one = |(number, state): (usize, &State)| {
        let [x, _, z, ..] = state.spring_force(spring);
        let own = |axis| if number == column(side, place, axis) { stiffness } else { 0.0 };
        [x - own(0), z - own(1)]
    };
    states.iter().enumerate().map(one).collect()
}

fn largest(loose: &Sides<Option<LooseBearing>>) -> f64 {
    let clearance = |side: Side| loose.of(side).map_or(0.0, |bearing| bearing.clearance);
    clearance(Side::Left).max(clearance(Side::Right))
}

fn endplay_contact(loose: &Sides<Option<LooseBearing>>, g: &Motions) -> Sides<Option<TakenUp>> {
    let of = |bearing: Option<LooseBearing>, first: usize| {
        bearing.map(|bearing| TakenUp { bearing, motion: [g[first], g[first + 1]] })
    };
    Sides { left: of(loose.left, 0), right: of(loose.right, 2) }
}

/// The nearest motions within the clearances.
fn within(loose: &Sides<Option<LooseBearing>>, mut g: Motions) -> Motions {
    for (first, side) in [(0, Side::Left), (2, Side::Right)] {
        let clearance = loose.of(side).map_or(0.0, |bearing| bearing.clearance);
        let length = f64::hypot(g[first], g[first + 1]);
        if length > clearance {
            g[first] *= clearance / length;
            g[first + 1] *= clearance / length;
        }
    }
    g
}
