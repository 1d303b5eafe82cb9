//! What a ride says: loads, camber, stress and the frequency that prints cups.

use axlebow_fe::Transient;
use axlebow_road::{Event, international_roughness_index};

use crate::outcome::{CamberSplit, Warning};
use crate::riding::dominant::dominant_frequency;
use crate::riding::moments::RideShape;
use crate::riding::ride::track;
use crate::riding::ride_recorder::Recorded;
use crate::{ModeOutcome, Ride, RideMethod, Side, Sides};

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

/// How a ride went, beside its histories.
pub(crate) struct Driven<'a> {
    pub run: &'a Transient,
    /// Time driven before the first sample, s.
    pub run_in: f64,
    /// Loaded radius of the tires, m.
    pub radius: f64,
    pub method: RideMethod,
    pub partial: Option<String>,
    pub warnings: Vec<Warning>,
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

    pub(crate) fn of(ride: &Ride, recorded: Recorded, driven: Driven) -> Self {
        let Recorded { history, at_rest, peaks: stations, peak_camber, stops, tire_changes } = recorded;
        let Driven { run, run_in, radius, method, partial, warnings } = driven;
        let at_rest = at_rest.unwrap_or_default();
        RideOutcome {
            name: ride.name.clone(),
            speed: ride.speed,
            tire_radius: radius,
            wheels: Sides::each(|side| RideWheel {
                camber_peak_split: *peak_camber.of(side),
                ..RideWheel::of((&history, *at_rest.of(side)), side, ride, radius)
            }),
            stations,
            history,
            run_in,
            method,
            parts: run.counts.parts,
            iterations: run.counts.iterations,
            contact_changes: tire_changes,
            stops,
            energy_drift: run.balance.drift(),
            partial,
            warnings,
        }
    }
}

impl RideWheel {
    fn of(
        (history, [load_at_rest, camber_at_rest]): (&RideHistory, [f64; 2]),
        side: Side,
        ride: &Ride,
        radius: f64,
    ) -> Self {
        let (load, camber) = (history.load.of(side), history.camber.of(side));
        let largest = |values: &[f64]| values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let smallest = |values: &[f64]| values.iter().copied().fold(f64::INFINITY, f64::min);
        let peak = |a: f64, b: &f64| if b.abs() > a.abs() { *b } else { a };
        let frequency = dominant_frequency(camber, ride.step);
        let turn = std::f64::consts::TAU * radius;
        // What is slower than the wheel turns prints no cups.
        let printing = frequency.filter(|frequency| frequency * turn >= ride.speed);
        RideWheel {
            load_at_rest,
            largest_load: largest(load),
            smallest_load: smallest(load),
            dynamic_load_factor: largest(load) / load_at_rest,
            dynamic_load_coefficient: deviation(load) / load_at_rest,
            time_off_road: ride.step * load.iter().filter(|force| **force <= 0.0).count() as f64,
            camber_at_rest,
            camber_peak: camber.iter().fold(0.0, peak),
            camber_peak_split: CamberSplit::default(),
            camber_peak_to_peak: largest(camber) - smallest(camber),
            camber_rms: deviation(camber),
            dominant_frequency: frequency,
            cups_per_turn: printing.map(|frequency| frequency * turn / ride.speed),
            cup_spacing: printing.map(|frequency| ride.speed / frequency),
            roughness_index: roughness_index(ride, side),
        }
    }
}

/// The roughness index of a side's track, if that is a profile which has one.
fn roughness_index(ride: &Ride, side: Side) -> Option<f64> {
    match track(&ride.road, side).event() {
        Event::Profile(profile) => international_roughness_index(profile).ok(),
        _ => None,
    }
}

/// Root mean square of the deviation from the mean.
fn deviation(values: &[f64]) -> f64 {
    let count = values.len().max(1) as f64;
    let mean = values.iter().sum::<f64>() / count;
    (values.iter().map(|value| (value - mean).powi(2)).sum::<f64>() / count).sqrt()
}
