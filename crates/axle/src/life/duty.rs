//! What an axle goes through in a year.

use crate::{Actions, LoadCase, RandomRide, Ride};

/// What an axle goes through in a year.
#[derive(Debug, Clone, PartialEq)]
pub struct Duty {
    /// What it is called.
    pub name: String,
    /// Distance driven in a year, m.
    pub distance: f64,
    /// Random roads; their shares sum to one.
    pub roads: Vec<DutyRoad>,
    /// Bumps and holes, each met from rest.
    pub bumps: Vec<DutyBump>,
    /// Braking and cornering.
    pub events: Vec<DutyEvent>,
    /// Times a year that the axle is loaded from unladen to rated and unloaded again.
    pub loadings: f64,
}

/// A share of the distance on a random road.
#[derive(Debug, Clone, PartialEq)]
pub struct DutyRoad {
    /// What it is called.
    pub name: String,
    /// Share of the distance.
    pub share: f64,
    /// The sample of it that is driven; it stands for the whole.
    pub ride: Ride,
    /// The same road by its spectrum.
    pub spectrum: RandomRide,
}

/// A bump that is met so often.
#[derive(Debug, Clone, PartialEq)]
pub struct DutyBump {
    /// What it is called.
    pub name: String,
    /// How often in a meter.
    pub per_distance: f64,
    /// The ride over one of them.
    pub ride: Ride,
}

/// A braking or a turn that comes so often.
#[derive(Debug, Clone, PartialEq)]
pub struct DutyEvent {
    /// What it is called.
    pub name: String,
    /// What the road does, under its axle load.
    pub actions: Actions,
    /// How often in a meter.
    pub per_distance: f64,
    /// Distance that one lasts, m.
    pub length: f64,
}

impl DutyEvent {
    /// Its load case.
    pub(crate) fn case(&self) -> LoadCase {
        LoadCase {
            name: self.name.clone(),
            description: self.name.clone(),
            dynamic_factor: 1.0,
            actions: self.actions,
        }
    }
}

/// An axle load (N) on the road, running straight.
pub(crate) fn straight(axle_load: f64) -> LoadCase {
    let name = format!("{:.1} kN, running straight", axle_load / 1e3);
    let actions = Actions { axle_load, gravity: 1.0, ..Actions::default() };
    LoadCase { description: name.clone(), name, dynamic_factor: 1.0, actions }
}
