//! The ride of a design: the road with the design's changes, and what is kept of what comes of it.

use axlebow_axle::outcome::Warning;
use axlebow_axle::{Axle, Ride, RideOutcome, RideWheel, Sides};
use axlebow_model::RoadFile;

use super::design::in_words;
use super::setting::Setting;
use crate::ask::StudyRide;

/// What a study keeps of a design's ride.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct DesignRide {
    /// Speed, m/s.
    pub speed: f64,
    /// Each wheel end.
    pub wheels: Sides<RideWheel>,
    /// Fiber stress of largest magnitude along the axle, tension positive, Pa.
    pub peak_stress: f64,
    /// Doubts about the ride.
    pub warnings: Vec<Warning>,
}

impl StudyRide {
    /// The ride of a design.
    ///
    /// # Errors
    /// Why there is no such road, in words.
    pub(crate) fn of(&self, axle: &Axle, settings: &[Setting<'_>]) -> Result<Ride, String> {
        let load = self.axle_load(axle);
        let mut changes = settings.iter().filter(|setting| setting.is_of_road()).peekable();
        if changes.peek().is_none() {
            return Ok(self.driven(&self.road, load));
        }
        let mut document = self.document.clone();
        for change in changes {
            change.make(&mut document).map_err(|refusal| refusal.to_string())?;
        }
        let road = RoadFile::of(&document, &self.folder).map_err(|problems| in_words(&problems))?;
        Ok(self.driven(&road, load))
    }

    fn driven(&self, road: &RoadFile, load: f64) -> Ride {
        Ride { basis: self.basis, ..road.ride(load, self.speed.unwrap_or(road.speed)) }
    }
}

impl DesignRide {
    /// What is kept of a ride that was driven to its end.
    ///
    /// # Errors
    /// Why it was not, in words.
    pub(crate) fn of(outcome: RideOutcome) -> Result<Self, String> {
        if let Some(why) = outcome.partial {
            return Err(why);
        }
        let larger = |a: f64, b: f64| if b.abs() > a.abs() { b } else { a };
        let peak_stress = outcome.stations.iter().map(|peak| peak.stress).fold(0.0, larger);
        Ok(DesignRide {
            speed: outcome.speed,
            wheels: outcome.wheels,
            peak_stress,
            warnings: outcome.warnings,
        })
    }

    /// The wheel whose camber moves most.
    pub fn wheel_with_larger_camber_range(&self) -> &RideWheel {
        let Sides { left, right } = &self.wheels;
        if right.camber_peak_to_peak > left.camber_peak_to_peak { right } else { left }
    }
}
