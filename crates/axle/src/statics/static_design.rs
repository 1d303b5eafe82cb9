//! An axle solved for unit loads, ready for any number of cases.

use axlebow_fe::{Attachment, Displacements, Loads, State, StaticSystem};

use crate::assembly::bearing_play::has_play;
use crate::mesh::frame::Frame;
use crate::mesh::plan::{StiffenerModel, VehicleBody};
use crate::parts::load_case::LoadCase;
use crate::road_contact::ground::{
    COLUMNS, Case, Contact, GroundModel, Hubs, OWN, STANDARD_GRAVITY, hub_motion,
};
use crate::road_contact::own_loads::OwnLoads;
use crate::statics::endplay_contact::{self, BearingPlay};
use crate::statics::hub_line::HubLine;
use crate::{Axle, AxleError, Side};

/// An axle whose answer to unit hub forces and to gravity is known, ready for any number of cases.
#[derive(Debug)]
pub struct StaticDesign<'a> {
    pub(crate) axle: &'a Axle,
    pub(crate) frame: Frame,
    unit: Displacements,
    ground: GroundModel,
    play: Option<BearingPlay<'a>>,
}

impl<'a> StaticDesign<'a> {
    /// Builds, factors and solves the axle's finite-element model.
    ///
    /// # Errors
    /// [`AxleError::Fe`] when nothing holds the axle somewhere.
    pub fn of(axle: &'a Axle) -> Result<Self, AxleError> {
        StaticDesign::with_system(axle, &mut StaticSystem::new())
    }

    /// As [`StaticDesign::of`], in the storage of `system`, which is kept from one design to the next.
    ///
    /// # Errors
    /// As [`StaticDesign::of`].
    pub fn with_system(axle: &'a Axle, system: &mut StaticSystem) -> Result<Self, AxleError> {
        StaticDesign::on_frame(axle, Frame::of(axle, VehicleBody::AtRest)?, system)
    }

    /// As [`StaticDesign::of`], with stiffeners in a given way.
    pub(crate) fn with_stiffeners(axle: &'a Axle, stiffeners: StiffenerModel) -> Result<Self, AxleError> {
        let frame = Frame::with_stiffeners(axle, stiffeners)?;
        StaticDesign::on_frame(axle, frame, &mut StaticSystem::new())
    }

    fn on_frame(axle: &'a Axle, frame: Frame, system: &mut StaticSystem) -> Result<Self, AxleError> {
        system.prepare(&frame.structure)?;
        let mut loads = unit_loads(&frame, endplay_contact::columns(axle));
        if has_play(axle) {
            endplay_contact::add_loads(axle, &frame, &mut loads);
        }
        let unit = system.solve(&frame.structure, loads)?;
        let ground = GroundModel::of(axle, &frame.hubs, &unit);
        let play = BearingPlay::of(axle, &frame, &unit);
        Ok(StaticDesign { axle, frame, unit, ground, play })
    }

    /// What the road does in a case, and what the axle does then.
    pub(crate) fn loaded(&self, case: &LoadCase) -> Result<(Contact, State<'_>), AxleError> {
        let case = Case::of(self.axle, case);
        let moved = self.own_motion(&case.own);
        let contact = match &self.play {
            None => self.ground.contact(&case, &moved)?,
            Some(play) => play.contact(&self.ground, &case, &moved)?,
        };
        let state = self.state(&endplay_contact::factors(&contact));
        Ok((contact, state))
    }

    /// Motion of the hubs under the axle's own loads.
    pub(crate) fn own_motion(&self, own: &OwnLoads) -> Hubs {
        let columns = (OWN..COLUMNS).zip(own.factors()).filter(|(_, factor)| *factor != 0.0);
        columns.map(|(column, factor)| hub_motion(&self.frame.hubs, &self.unit, column) * factor).sum()
    }

    /// What the axle does when the first columns act with the given factors.
    pub(crate) fn state(&self, factors: &[f64]) -> State<'_> {
        let mut all = factors.to_vec();
        all.resize(self.unit.columns(), 0.0);
        self.unit.combined(&self.frame.structure, &all)
    }

    pub(crate) fn ground(&self) -> &GroundModel {
        &self.ground
    }

    pub(crate) fn tires(&self) -> &[crate::road_contact::ground::Tire] {
        &self.ground.tires
    }

    /// A state, read against the line through the two hubs.
    pub(crate) fn hub_line<'s>(&'s self, state: &'s State<'s>) -> HubLine<'s> {
        HubLine { axle: self.axle, frame: &self.frame, state }
    }
}

/// Six unit forces at each hub, and the axle's own loads; columns after them are left empty.
pub(crate) fn unit_loads(frame: &Frame, columns: usize) -> Loads {
    let mut loads = Loads::new(&frame.structure, columns);
    for (side, first) in Side::BOTH.into_iter().zip([0, 6]) {
        let hub = Attachment::at(*frame.hubs.of(side));
        for i in 0..3 {
            loads.add_force(first + i, &hub, unit(i));
            loads.add_moment(first + 3 + i, &hub, unit(i));
        }
    }
    for i in 0..3 {
        loads.add_gravity(&frame.structure, OWN + i, unit(i).map(|part| STANDARD_GRAVITY * part));
    }
    let carrier = Attachment::at(frame.node_at(0.0));
    for i in 0..2 {
        loads.add_moment(OWN + 3 + i, &carrier, unit(i));
    }
    loads
}

fn unit(axis: usize) -> [f64; 3] {
    std::array::from_fn(|i| if i == axis { 1.0 } else { 0.0 })
}
