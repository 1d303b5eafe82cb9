//! Seats that let the axle slope against the line through both by nothing but the wall under them.

use axlebow_fe::{Attachment, NodeId, Spring};

use crate::assembly::wall_at_seat::WallAtSeat;
use crate::{Axle, Side, Sides};

/// Stiffness against slope and against a kink, N m/rad and N/m: against some 4e6 N m/rad of an axle between its seats.
const HELD: f64 = 1e10;

/// A link between the seats that keeps the axle straight from one to the other; the give of the wall at each stays.
///
/// Rates are those of the middle, at the ends of a rigid arm from each seat: equal slopes there turn the two arms apart, slopes
/// that are opposite move their ends apart. Walls whose give differs from side to side are taken as alike.
pub(crate) fn straight_seats(axle: &Axle, nodes: &Sides<NodeId>, walls: &Sides<WallAtSeat>) -> Spring {
    let wall = walls.left.rotational_flexibility() + walls.right.rotational_flexibility();
    let arm = 0.5 * (axle.seats.left.at + axle.seats.right.at);
    let (slope, kink) = ((HELD.recip() + wall).recip(), (HELD.recip() + wall * arm * arm).recip());
    let end =
        |side: Side| Attachment::on_arm(*nodes.of(side), [0.0, -side.sign() * axle.seats.of(side).at, 0.0]);
    Spring::between(end(Side::Left), end(Side::Right), [0.0, 0.0, kink, slope, 0.0, 0.0])
}
