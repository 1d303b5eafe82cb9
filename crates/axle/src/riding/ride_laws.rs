//! Forces of a ride that act at one place, beside those of the tires: dampers and bump stops at the seats, and
//! bearings with play.
//!
//! Dampers and stops act between axle and body along the vertical at a seat. Their compression is the rise of
//! the axle against the body, so that compressing is bump and extending is rebound. A bearing with play acts
//! between hub and spindle in the plane across the axle; which bearing of a pair that is follows from the loads
//! at rest ([`crate::assembly::bearing_play`]) and stays so: over bumps the hub has no time to wander along the axle.

use axlebow_fe::{Attachment, Direction, ForceLaw, LocalLaw};

use crate::dynamics::at_rest::AtRest;
use crate::dynamics::vibration::VibrationModel;
use crate::parts::bearing_place::BearingPlace;
use crate::{AxleError, Side};

/// What a law stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum RidePart {
    /// The damper at a seat.
    Damper(Side),
    /// The bump stop at a seat.
    BumpStop(Side),
    /// A bearing with play.
    Bearing(Side, BearingPlace),
}

impl RidePart {
    /// The trade's words.
    pub(crate) fn words(self) -> String {
        match self {
            RidePart::Damper(side) => format!("{} damper", side.word()),
            RidePart::BumpStop(side) => format!("{} bump stop", side.word()),
            RidePart::Bearing(side, place) => format!("{} {} bearing", side.word(), place.word()),
        }
    }
}

/// The laws of a ride that follow those of its tires, each with what it stands for.
///
/// # Errors
/// As [`AtRest::under`].
pub(crate) fn ride_laws(model: &VibrationModel) -> Result<Vec<(RidePart, LocalLaw)>, AxleError> {
    let mut laws = Vec::with_capacity(4);
    for side in Side::BOTH {
        let seat = model.axle.seats.of(side);
        let force = ForceLaw::Damper { compression: seat.damping, extension: seat.rebound_damping };
        laws.push((RidePart::Damper(side), LocalLaw::along(bump(model, side), force)));
    }
    laws.extend(bump_stops(model)?);
    laws.extend(Side::BOTH.into_iter().filter_map(|side| bearing(model, side)));
    Ok(laws)
}

/// The bearing of one end that has play.
fn bearing(model: &VibrationModel, side: Side) -> Option<(RidePart, LocalLaw)> {
    let loose = model.loose.of(side).as_ref()?;
    let end = model.axle.wheel_ends.of(side);
    let y = side.sign() * end.bearing_at(loose.place);
    let hub =
        Attachment::on_arm(*model.frame.barrels.of(side), [0.0, y - side.sign() * end.mounting_face, 0.0]);
    let spindle = Attachment::at(model.frame.node_at(y));
    let across = [[1.0, 0.0, 0.0], [0.0, 0.0, 1.0]].map(|axis| between(model, (spindle, hub), axis));
    let law = LocalLaw::plane_gap(across, end.bearing_stiffness(loose.place).radial, loose.clearance);
    Some((RidePart::Bearing(side, loose.place), law))
}

fn bump_stops(model: &VibrationModel) -> Result<Vec<(RidePart, LocalLaw)>, AxleError> {
    let axle = model.axle;
    if Side::BOTH.iter().all(|side| axle.seats.of(*side).bump_stop.is_none()) {
        return Ok(Vec::new());
    }
    let rest = AtRest::under(axle, axle.loading.rated_load)?;
    let of = |side: Side| {
        let stop = axle.seats.of(side).bump_stop?;
        let clearance = rest.seat_rise.of(side) + stop.clearance;
        let force = ForceLaw::Contact { stiffness: stop.stiffness, damping: stop.damping, clearance };
        Some((RidePart::BumpStop(side), LocalLaw::along(bump(model, side), force)))
    };
    Ok(Side::BOTH.into_iter().filter_map(of).collect())
}

/// Height of the body at a seat less that of the axle: it falls as the suspension is compressed.
pub(crate) fn bump(model: &VibrationModel, side: Side) -> Direction {
    let (node, y) = model.seat(side);
    let body = Attachment::on_arm(model.body, [0.0, y, 0.0]);
    between(model, (body, Attachment::at(node)), [0.0, 0.0, 1.0])
}

/// Motion of one point less that of another, along an axis.
fn between(model: &VibrationModel, (point, other): (Attachment, Attachment), axis: [f64; 3]) -> Direction {
    let [point, other] = [point, other].map(|place| Direction::at(&model.frame.structure, &place, axis));
    let less = other.parts().iter().map(|(freedom, part)| (*freedom, -part));
    Direction::new(point.parts().iter().copied().chain(less))
}
