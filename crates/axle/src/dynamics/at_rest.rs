//! The axle at rest on a level road.

use crate::assembly::bearing_play::LooseBearing;
use crate::parts::load_case::{Actions, LoadCase};
use crate::{Axle, AxleError, Side, Sides, StaticDesign};

/// What an axle does as it rests on a level road on which it has rolled.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct AtRest {
    /// Rise of the axle at each seat against the body, from where its springs carry nothing, m.
    pub seat_rise: Sides<f64>,
    /// Roll of the body about X, rad.
    pub body_roll: f64,
    /// The bearing of each end that has the play, with the radial force (N) that presses it.
    pub loose: Sides<Option<(LooseBearing, f64)>>,
    /// Whether each tire stands on the road: left first, the outer one of a dual first.
    pub on_road: Vec<bool>,
}

impl AtRest {
    /// At rest under an axle load on the road (N).
    ///
    /// # Errors
    /// [`AxleError::LoadBelowWeight`], [`AxleError::Fe`].
    pub(crate) fn under(axle: &Axle, axle_load: f64) -> Result<AtRest, AxleError> {
        let axle = axle.rolling();
        let design = StaticDesign::of(&axle)?;
        let actions = Actions { axle_load, gravity: 1.0, ..Actions::default() };
        let case =
            LoadCase { name: "rest".to_owned(), description: String::new(), dynamic_factor: 1.0, actions };
        let (contact, state) = design.loaded(&case)?;
        let bearings = crate::statics::results::bearings(&design, &state, &contact);
        let loose = |side: Side| {
            let bearing = contact.endplay_contact.of(side).as_ref()?.bearing;
            let own = bearings.iter().find(|own| own.side == side && own.place == bearing.place.word())?;
            Some((bearing, own.radial))
        };
        let rise = |side: Side| {
            let y = side.sign() * axle.seats.of(side).at;
            state.motion(design.frame.node_at(y))[2]
        };
        let on_road = contact.tires.iter().map(|tire| !tire.off_road).collect();
        let body_roll = contact.body_roll;
        Ok(AtRest { seat_rise: Sides::each(rise), body_roll, loose: Sides::each(loose), on_road })
    }
}
