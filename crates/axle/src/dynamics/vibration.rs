//! The axle with its vehicle body free to heave and roll, and where its tires and dampers act.

use axlebow_fe::{Attachment, NodeId, RigidBody, Spring, SpringId};

use crate::assembly::bearing_play::{BearingRates, LooseBearing, has_play};
use crate::dynamics::at_rest::AtRest;
use crate::mesh::frame::Frame;
use crate::mesh::plan::VehicleBody;
use crate::road_contact::ground::STANDARD_GRAVITY;
use crate::{Axle, AxleError, Side, Sides};

/// The axle with a body that moves; tires are the caller's to add.
#[derive(Debug)]
pub(crate) struct VibrationModel<'a> {
    pub axle: &'a Axle,
    pub frame: Frame,
    pub body: NodeId,
    /// What the rest of the vehicle puts against roll of the body.
    pub rest_of_vehicle: SpringId,
    /// Load of the axle on the road at rest, N.
    pub axle_load: f64,
    pub sprung_mass: f64,
    /// The sprung weight, which roll of the body carries sideways.
    pub weight_above: SpringId,
    /// The bearing of each end that has the play.
    pub loose: Sides<Option<LooseBearing>>,
}

/// How a bearing with play is built in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum LooseAs {
    /// As stiff as it is in small motions about the loaded rest.
    Pressed,
    /// Without radial stiffness.
    LeftOut,
}

/// How the model is built.
struct Plan<'a> {
    /// Names it in an error.
    case: &'a str,
    loose_as: LooseAs,
    /// Length that no element exceeds, m.
    longest: f64,
}

/// Where a tire meets the road.
#[derive(Debug, Clone, Copy)]
pub(crate) struct TireContact {
    pub side: Side,
    pub hub: NodeId,
    /// Lateral distance of the contact from the hub, m.
    pub across: f64,
    /// How far manufactured camber and a small radius lift it off the road, m.
    pub rise: f64,
    /// Vertical stiffness, N/m.
    pub stiffness: f64,
    pub at: Attachment,
}

impl<'a> VibrationModel<'a> {
    /// The model of an axle that carries `axle_load` (N) on the road, for small motions about its rest; its elements are
    /// no longer than `longest` (m).
    pub(crate) fn of(axle: &'a Axle, axle_load: f64, longest: f64) -> Result<Self, AxleError> {
        Self::built(axle, axle_load, &Plan { case: "modes", loose_as: LooseAs::Pressed, longest })
    }

    /// The same for motions of any size, between stations: bearings with play are the caller's to add; `case` names it
    /// in an error.
    pub(crate) fn without_loose(axle: &'a Axle, axle_load: f64, case: &str) -> Result<Self, AxleError> {
        Self::built(axle, axle_load, &Plan { case, loose_as: LooseAs::LeftOut, longest: f64::INFINITY })
    }

    fn built(axle: &'a Axle, axle_load: f64, plan: &Plan) -> Result<Self, AxleError> {
        let weight = axle.unsprung_mass() * STANDARD_GRAVITY;
        if !axle_load.is_finite() || axle_load <= weight {
            return Err(AxleError::LoadBelowWeight { case: plan.case.to_owned(), load: axle_load, weight });
        }
        let sprung_mass = (axle_load - weight) / STANDARD_GRAVITY;
        let loose = if has_play(axle) { AtRest::under(axle, axle_load)?.loose } else { Sides::default() };
        let rates = rates(axle, &loose, plan.loose_as);
        let mut frame = Frame::fine(axle, VehicleBody::Free, (&rates, plan.longest))?;
        let body = frame.body.expect("a free body has a node");
        let height = axle.body_above();
        let roll = sprung_mass * axle.body_roll_radius.powi(2);
        let place = Attachment::on_arm(body, [0.0, 0.0, height]);
        frame.structure.add_mass(RigidBody::with_moments(place, sprung_mass, [roll, 0.0, 0.0]));
        let weight_above = frame.structure.add_weight_above(body, STANDARD_GRAVITY * sprung_mass * height)?;
        let against_roll = [0.0, 0.0, 0.0, axle.body_roll_stiffness, 0.0, 0.0];
        let against_roll = Spring::to_ground(Attachment::at(body), against_roll);
        let rest_of_vehicle = frame.structure.add_spring(against_roll)?;
        let loose = Sides::each(|side| loose.of(side).map(|(bearing, _)| bearing));
        Ok(VibrationModel { axle, frame, body, rest_of_vehicle, axle_load, sprung_mass, weight_above, loose })
    }

    /// Every tire, left first, the outer one of a dual first.
    pub(crate) fn contacts(&self) -> Vec<TireContact> {
        let mut contacts = Vec::with_capacity(4);
        for side in Side::BOTH {
            let (wheel, hub) = (self.axle.wheels.of(side), *self.frame.hubs.of(side));
            for place in wheel.tires() {
                let across = side.sign() * place.outboard;
                let at = Attachment::on_arm(hub, [0.0, across, -wheel.tire().loaded_radius]);
                let rise = self.axle.tire_rise(side, place);
                let stiffness = place.vertical_stiffness;
                contacts.push(TireContact { side, hub, across, rise, stiffness, at });
            }
        }
        contacts
    }

    /// Node and position (m) of a seat on the axle.
    pub(crate) fn seat(&self, side: Side) -> (NodeId, f64) {
        let y = side.sign() * self.axle.seats.of(side).at;
        (self.frame.node_at(y), y)
    }
}

/// Radial stiffness of all bearings. Pressed up with F against the clearance c, a loose one keeps its stiffness k
/// up and has `F/(c + F/k)` across, as a ball in a bowl.
fn rates(axle: &Axle, loose: &Sides<Option<(LooseBearing, f64)>>, loose_as: LooseAs) -> BearingRates {
    let mut rates = BearingRates::tight(axle);
    for side in Side::BOTH {
        let Some((bearing, force)) = loose.of(side) else { continue };
        let stiffness = axle.wheel_ends.of(side).bearing_stiffness(bearing.place).radial;
        let own = match loose_as {
            LooseAs::Pressed => [force / (bearing.clearance + force / stiffness), stiffness],
            LooseAs::LeftOut => [0.0; 2],
        };
        rates = rates.with(side, bearing.place, own);
    }
    rates
}
