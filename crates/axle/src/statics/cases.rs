//! Everything about one case.

use axlebow_fe::State;

use crate::outcome::{CaseOutcome, SeatOutcome, WheelOutcome};
use crate::parts::load_case::LoadCase;
use crate::road_contact::ground::Contact;
use crate::statics::seat_line::SeatLineFrame;
use crate::statics::split::CamberUnits;
use crate::statics::{along, results};
use crate::{AxleError, Side, Sides, StaticDesign};

impl StaticDesign<'_> {
    /// Everything about one case.
    ///
    /// # Errors
    /// [`AxleError::LoadBelowWeight`] or [`AxleError::NoEquilibrium`].
    pub fn case(&self, case: &LoadCase) -> Result<CaseOutcome, AxleError> {
        let (contact, state) = self.loaded(case)?;
        let leveled = SeatLineFrame::on_seats(self, &state);
        let wheels = self.wheels(&contact, &state, &leveled);
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
        Ok(self.wheels(&contact, &state, &SeatLineFrame::on_seats(self, &state)))
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

    fn wheels(&self, contact: &Contact, state: &State, leveled: &SeatLineFrame) -> Sides<WheelOutcome> {
        let splits = CamberUnits::of(self).splits(self, state, contact);
        Sides::each(|side| {
            let end = self.axle.wheel_ends.of(side);
            let line = self.hub_line(state);
            let (camber_change, toe_change) = (line.camber_change(side), line.toe_change(side));
            let (contacts, total) = results::contacts(self, side, contact);
            let hub = results::hub_displacement(self, side, state, leveled);
            WheelOutcome {
                camber_change,
                camber: end.camber + camber_change,
                toe_change,
                toe: end.toe + toe_change,
                hub_rise: hub[2],
                vertical_load: total.vertical,
                lateral_load: total.lateral,
                longitudinal_load: total.longitudinal,
                contacts,
                split: *splits.of(side),
            }
        })
    }
}
