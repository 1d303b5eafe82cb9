//! From what was recorded of a ride to what it says.

use axlebow_fe::Transient;
use axlebow_road::{Event, international_roughness_index};

use crate::outcome::{CamberSplit, Warning};
use crate::riding::dominant::dominant_frequency;
use crate::riding::ride_outcome::{RideHistory, RideOutcome, RideWheel, deviation};
use crate::riding::ride_recorder::Recorded;
use crate::riding::tracks::track;
use crate::{Ride, RideMethod, Side, Sides};

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

impl RideOutcome {
    /// What a ride says.
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
