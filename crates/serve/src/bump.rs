//! A ride over a bump, as frames.

use axlebow_axle::{RecordOptions, Ride, RideBasis, ride};
use axlebow_model::RoadFile;
use axlebow_report::plot::Drawing;
use axlebow_report::{InventedInput, ride_frames};
use serde::Deserialize;

use crate::choice::Choice;
use crate::server::Live;
use crate::trouble::Trouble;

/// Moments that are drawn.
const FRAMES: usize = 240;

/// The road input: the built-in bump with another height, at a speed.
const EVENT: &str = "haversine-bump";

/// What a page asks of a ride.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct BumpQuestion {
    /// The axle.
    pub axle: Choice,
    /// Height, with its unit.
    pub height: String,
    /// Speed, with its unit.
    pub speed: String,
    /// `both`, `left` or `right`.
    pub wheels: String,
}

/// The frames of the ride, by modal reduction.
pub(crate) fn bump(live: &Live, asked: &BumpQuestion) -> Result<String, Trouble> {
    let own = asked.axle.model(live)?;
    let mut road = RoadFile::event(EVENT).ok_or(Trouble::Internal)?;
    for (key, text) in [("height", &asked.height), ("speed", &asked.speed), ("wheels", &asked.wheels)] {
        road.set(key, text)?;
    }
    let road = RoadFile::of(&road, std::path::Path::new(""))?;
    let over = Ride {
        basis: RideBasis::Reduced,
        keep: RecordOptions { shapes: FRAMES, ..RecordOptions::default() },
        ..road.ride(own.model.axle.loading.rated_load, road.speed)
    };
    let outcome = ride(&own.model.axle, &over)?;
    let mut card = own.card;
    card.add_input(InventedInput::Road, road.invented);
    Ok(ride_frames(&outcome, &Drawing::of(&own.model.axle), &card)?)
}
