//! What a ride says: loads, camber, stress and the frequency that prints cups.

use crate::outcome::{CamberSplit, Warning};
use crate::riding::ride_shape::RideShape;
use crate::{ModeOutcome, RideMethod, Sides};

/// Result of [`crate::ride()`].
#[derive(Debug, Clone, PartialEq)]
pub struct RideOutcome {
    /// Name of the ride.
    pub name: String,
    /// Speed, m/s.
    pub speed: f64,
    /// Loaded radius of the tires, m.
    pub tire_radius: f64,
    /// Each wheel end.
    pub wheels: Sides<RideWheel>,
    /// Peak fiber stress of each place on the axle, from left to right.
    pub stations: Vec<StationPeak>,
    /// Histories.
    pub history: RideHistory,
    /// Time driven over the end of a road that repeats before the first sample, s; zero on other roads.
    pub run_in: f64,
    /// How it was solved.
    pub method: RideMethod,
    /// Steps and parts of steps, and Newton iterations.
    pub parts: usize,
    /// Newton iterations.
    pub iterations: usize,
    /// Times that a tire left the road or came back.
    pub contact_changes: usize,
    /// What each seat's bump stop went through; none where there is no stop.
    pub stops: Sides<Option<StopHits>>,
    /// Greatest lack of energy balance over the greatest energy.
    pub energy_drift: f64,
    /// Why the histories end early; `None` when they do not.
    pub partial: Option<String>,
    /// Things that the reader must know, each with what to do.
    pub warnings: Vec<Warning>,
}

/// One wheel end over a ride.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RideWheel {
    /// Load at the start, at rest, N.
    pub load_at_rest: f64,
    /// Largest load, N.
    pub largest_load: f64,
    /// Smallest load, N.
    pub smallest_load: f64,
    /// Largest load over the load at rest.
    pub dynamic_load_factor: f64,
    /// Root mean square of the load's deviation from its mean, over the load at rest.
    pub dynamic_load_coefficient: f64,
    /// Time off the road, s.
    pub time_off_road: f64,
    /// Camber change at rest, rad.
    pub camber_at_rest: f64,
    /// Camber change of largest magnitude, rad.
    pub camber_peak: f64,
    /// That change by source; a bearing counts with what it takes up of its clearance, rad.
    pub camber_peak_split: CamberSplit,
    /// Peak-to-peak camber change, rad.
    pub camber_peak_to_peak: f64,
    /// Root mean square of the camber's deviation from its mean, rad.
    pub camber_rms: f64,
    /// Frequency that dominates the camber, Hz; none when it hardly moves.
    pub dominant_frequency: Option<f64>,
    /// Cups that this frequency prints in one turn of the tire at this speed; none below one a turn.
    pub cups_per_turn: Option<f64>,
    /// Distance from cup to cup along the tread, m.
    pub cup_spacing: Option<f64>,
    /// International roughness index of the track, m/m; none for a road that is no profile, is too short or has
    /// its samples too far apart.
    pub roughness_index: Option<f64>,
}

/// What a bump stop went through.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct StopHits {
    /// How often it was hit; a stop that is pressed at rest counts from its first parting.
    pub count: usize,
    /// Largest force at the end of a step, N.
    pub largest_force: f64,
}

/// Peak fiber stress at a place.
#[derive(Debug, Clone, PartialEq)]
pub struct StationPeak {
    /// Name.
    pub name: String,
    /// Position, m.
    pub y: f64,
    /// Fiber stress of largest magnitude, signed, Pa.
    pub stress: f64,
    /// When, s.
    pub time: f64,
}

impl StationPeak {
    pub(crate) fn none(name: &str, y: f64) -> Self {
        StationPeak { name: name.to_owned(), y, stress: 0.0, time: 0.0 }
    }

    pub(crate) fn see(&mut self, stress: f64, time: f64) {
        if stress.abs() > self.stress.abs() {
            (self.stress, self.time) = (stress, time);
        }
    }
}

/// Histories of a ride, one value for each time.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RideHistory {
    /// Time, s.
    pub time: Vec<f64>,
    /// Distance of the axle along the road, m.
    pub distance: Vec<f64>,
    /// Road height as the tires feel it, m.
    pub road: Sides<Vec<f64>>,
    /// Load of the road on each wheel end, N.
    pub load: Sides<Vec<f64>>,
    /// Camber change of each wheel against the unloaded axle, rad.
    pub camber: Sides<Vec<f64>>,
    /// Toe change of each wheel against the unloaded axle, rad.
    pub toe: Sides<Vec<f64>>,
    /// Roll of the line through the hubs, rad.
    pub roll: Vec<f64>,
    /// Fiber stress of largest magnitude along the axle, signed, Pa.
    pub stress: Vec<f64>,
    /// Fiber stress of larger magnitude of both sides of each place, signed, Pa, in the order of the outcome's
    /// stations; empty unless asked for.
    pub stresses: Vec<Vec<f64>>,
    /// Shapes of the axle at a few moments; empty unless asked for.
    pub shapes: Vec<RideShape>,
}

impl RideHistory {
    /// Histories that are always kept.
    pub(crate) const ALWAYS: usize = 12;

    /// Histories with room for so many samples, with those of so many stations.
    pub(crate) fn with_room(samples: usize, stations: usize) -> Self {
        let list = || Vec::with_capacity(samples);
        let pair = || Sides::each(|_| list());
        RideHistory {
            time: list(),
            distance: list(),
            road: pair(),
            load: pair(),
            camber: pair(),
            toe: pair(),
            roll: list(),
            stress: list(),
            stresses: (0..stations).map(|_| list()).collect(),
            shapes: Vec::new(),
        }
    }
}

/// Difference of the two wheels' camber, as a share of its deviation from its mean, below which both move alike.
const ALIKE: f64 = 1e-6;

impl RideOutcome {
    /// Those of an axle's modes that the ride may have moved: where both wheels' camber moves alike, only modes in
    /// which it does.
    pub fn movable(&self, modes: &[ModeOutcome]) -> Vec<ModeOutcome> {
        let Sides { left, right } = &self.history.camber;
        let apart: Vec<f64> = left.iter().zip(right).map(|(a, b)| a - b).collect();
        let alike = deviation(&apart) <= ALIKE * deviation(left);
        let even = |mode: &&ModeOutcome| mode.camber.left * mode.camber.right > 0.0;
        modes.iter().filter(|mode| !alike || even(mode)).cloned().collect()
    }
}

/// Root mean square of the deviation from the mean.
pub(crate) fn deviation(values: &[f64]) -> f64 {
    let count = values.len().max(1) as f64;
    let mean = values.iter().sum::<f64>() / count;
    (values.iter().map(|value| (value - mean).powi(2)).sum::<f64>() / count).sqrt()
}
