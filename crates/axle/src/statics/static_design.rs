//! Static flex: bow, slope, camber and toe change, moment and stress along the axle.

use axlebow_fe::{Attachment, Displacements, Loads, State, StaticSystem};

use crate::assembly::bearing_play::has_play;
use crate::assembly::preheat::preheats;
use crate::mesh::frame::{Frame, StiffenerModel, VehicleBody};
use crate::outcome::{CaseOutcome, FlexOutcome, SeatOutcome, WheelOutcome};
use crate::parts::load_case::LoadCase;
use crate::road_contact::ground::{
    COLUMNS, Case, Contact, GroundModel, Hubs, OWN, STANDARD_GRAVITY, hub_motion,
};
use crate::road_contact::own_loads::OwnLoads;
use crate::statics::endplay_contact::{self, BearingPlay};
use crate::statics::hub_line::HubLine;
use crate::statics::results::SeatLineFrame;
use crate::statics::split::CamberUnits;
use crate::statics::stiffening::add_stiffening;
use crate::statics::{along, results};
use crate::{Axle, AxleError, Side, Sides};

/// Solves every case of an axle.
///
/// # Errors
/// [`AxleError::LoadBelowWeight`], [`AxleError::NoEquilibrium`], or [`AxleError::Fe`] when nothing holds the
/// axle somewhere.
pub fn flex(axle: &Axle, cases: &[LoadCase]) -> Result<FlexOutcome, AxleError> {
    let design = StaticDesign::of(axle)?;
    let mut outcomes: Vec<CaseOutcome> =
        cases.iter().map(|case| design.case(case)).collect::<Result<_, _>>()?;
    add_stiffening(&design, cases, &mut outcomes)?;
    let walls = design.frame.walls.clone();
    let of_walls = crate::statics::warnings::of_walls(&walls);
    let warnings = crate::statics::warnings::warnings(axle, &outcomes).into_iter().chain(of_walls).collect();
    let (axle_mass, unsprung_mass) = (axle.mass(), axle.unsprung_mass());
    let preheat = if axle.stiffeners.is_empty() { Vec::new() } else { preheats(axle)? };
    Ok(FlexOutcome { axle_mass, unsprung_mass, walls, cases: outcomes, preheat, warnings })
}

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

    /// Everything about one case.
    ///
    /// # Errors
    /// [`AxleError::LoadBelowWeight`] or [`AxleError::NoEquilibrium`].
    pub fn case(&self, case: &LoadCase) -> Result<CaseOutcome, AxleError> {
        let (contact, state) = self.loaded(case)?;
        let wheels = self.wheels(&contact, &state);
        let leveled = SeatLineFrame::on_seats(self, &state);
        let diagram = along::diagram(self, &state, &leveled);
        let peak = along::peak_stress(&diagram);
        Ok(CaseOutcome {
            name: case.name.clone(),
            description: case.description.clone(),
            dynamic_factor: case.dynamic_factor,
            bearings: results::bearings(self, &state, &contact),
            seats: Sides::each(|side| self.seat(side, &state)),
            stations: results::stations(self, &state, &contact, &leveled),
            peak_stress: peak.stress,
            peak_stress_y: peak.y,
            bow: self.hub_line(&state).bow(),
            axle_roll: self.hub_line(&state).lean() + contact.body_roll,
            equilibrium_residual: state.equilibrium_residual().max(contact.residual),
            wheels,
            diagram,
            stiffening: None,
        })
    }

    /// Camber, toe and loads of both wheels only: the short way for sweeps.
    ///
    /// # Errors
    /// As [`StaticDesign::case`].
    pub fn wheel_outcomes(&self, case: &LoadCase) -> Result<Sides<WheelOutcome>, AxleError> {
        let (contact, state) = self.loaded(case)?;
        Ok(self.wheels(&contact, &state))
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

    fn seat(&self, side: Side, state: &State) -> SeatOutcome {
        let spring = *self.frame.seats.of(side);
        let (force, motion) = (state.spring_force(spring), state.spring_deformation(spring));
        SeatOutcome {
            y: side.sign() * self.axle.seats.of(side).at,
            vertical: -force[2],
            moment_x: -force[3],
            rotation: motion[3],
        }
    }

    fn wheels(&self, contact: &Contact, state: &State) -> Sides<WheelOutcome> {
        let splits = CamberUnits::of(self).splits(self, state, contact);
        Sides::each(|side| {
            let end = self.axle.wheel_ends.of(side);
            let line = self.hub_line(state);
            let (camber_change, toe_change) = (line.camber_change(side), line.toe_change(side));
            let (contacts, total) = results::contacts(self, side, contact);
            WheelOutcome {
                camber_change,
                camber: end.camber + camber_change,
                toe_change,
                toe: end.toe + toe_change,
                vertical_load: total.vertical,
                lateral_load: total.lateral,
                longitudinal_load: total.longitudinal,
                contacts,
                split: *splits.of(side),
            }
        })
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
    let carrier = Attachment::at(along::node_at(frame, 0.0));
    for i in 0..2 {
        loads.add_moment(OWN + 3 + i, &carrier, unit(i));
    }
    loads
}

fn unit(axis: usize) -> [f64; 3] {
    std::array::from_fn(|i| if i == axis { 1.0 } else { 0.0 })
}
