//! What joins an axle's line to hubs, wheels and vehicle body.

use axlebow_fe::{Attachment, NodeId, Spring};

use crate::assembly::bearing_play::BearingRates;
use crate::assembly::stations::{Place, nearest};
use crate::assembly::wall_at_seat::WallAtSeat;
use crate::mesh::nodes::Nodes;
use crate::mesh::springs::{BRAKE_STIFFNESS, disc_rates, seat_spring};
use crate::parts::bearing_place::BearingPlace;
use crate::{Axle, AxleError, Side};

/// The springs of an axle between its nodes.
pub(crate) struct Joints<'a> {
    pub axle: &'a Axle,
    pub places: &'a [Place],
    pub nodes: &'a Nodes,
}

impl Joints<'_> {
    /// A point of the axle's line: where places are merged, what acts beside one does so on an arm.
    pub(crate) fn on_line(&self, y: f64) -> Attachment {
        let number = nearest(self.places, y);
        Attachment::on_arm(self.nodes.line[number], [0.0, y - self.places[number].y, 0.0])
    }

    /// Node of the line nearest to a seat.
    pub(crate) fn seat_node(&self, side: Side) -> NodeId {
        self.nodes.line[nearest(self.places, side.sign() * self.axle.seats.of(side).at)]
    }

    /// A bearing between hub and spindle.
    pub(crate) fn bearing(&self, side: Side, place: BearingPlace, rates: &BearingRates) -> Spring {
        let end = self.axle.wheel_ends.of(side);
        let y = side.sign() * end.bearing_at(place);
        let face = side.sign() * end.mounting_face;
        let hub_point = Attachment::on_arm(*self.nodes.barrels.of(side), [0.0, y - face, 0.0]);
        let [forward, up] = rates.of(side, place);
        let rates = [forward, end.bearing_stiffness(place).axial, up, 0.0, 0.0, 0.0];
        Spring::between(hub_point, self.on_line(y), rates)
    }

    /// The brake between hub and spindle.
    pub(crate) fn brake(&self, side: Side) -> Spring {
        let spindle = self.on_line(side.sign() * self.axle.wheel_ends.of(side).inner_bearing);
        let rates = [0.0, 0.0, 0.0, 0.0, BRAKE_STIFFNESS, 0.0];
        // A pure couple: the point at which it acts does not matter.
        Spring::between(Attachment::at(*self.nodes.barrels.of(side)), spindle, rates)
    }

    /// Disc and flange between wheel and hub; none where they are rigid.
    pub(crate) fn disc(&self, side: Side) -> Option<Spring> {
        let rates = disc_rates(self.axle.wheels.of(side))?;
        let (barrel, wheel) = (*self.nodes.barrels.of(side), *self.nodes.hubs.of(side));
        Some(Spring::between(Attachment::at(wheel), Attachment::at(barrel), rates))
    }

    /// The seat between axle and vehicle body, or the ground where the body rests.
    ///
    /// # Errors
    /// [`AxleError::SeatTooStiff`].
    pub(crate) fn seat(&self, side: Side, wall: &WallAtSeat) -> Result<Spring, AxleError> {
        let seat = self.axle.seats.of(side);
        let y = side.sign() * seat.at;
        let far = self.nodes.body.map(|body| Attachment::on_arm(body, [0.0, y, 0.0]));
        let spring = seat_spring(seat, wall, self.on_line(y)).ok_or(AxleError::SeatTooStiff { side })?;
        Ok(Spring { far, ..spring })
    }
}
