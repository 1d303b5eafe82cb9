//! Rides over several random roads of one kind, as means with their intervals.
//!
//! One random road is one draw: another of the same class and length gives other loads. The mean over draws is known
//! within Student's t times the scatter of the draws over the root of their number.

use axlebow_axle::{RideOutcome, RideWheel, Side, Sides};
use axlebow_numerics::{Estimated, Sampled};

/// Probability that an interval holds the mean over all draws.
const CONFIDENCE: f64 = 0.95;

/// Means of rides over several random roads of one kind.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DrawnRides {
    /// How many roads.
    pub count: usize,
    /// Probability that an interval holds the mean over all draws.
    pub confidence: f64,
    /// Each wheel end.
    pub wheels: Sides<DrawnWheel>,
    /// Magnitude of the largest fiber stress along the axle, Pa.
    pub peak_stress: Estimated,
}

/// One wheel end over several random roads.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DrawnWheel {
    /// Largest load over the load at rest.
    pub dynamic_load_factor: Estimated,
    /// Root mean square of the load's deviation from its mean, over the load at rest.
    pub dynamic_load_coefficient: Estimated,
    /// Time off the road, s.
    pub time_off_road: Estimated,
    /// Peak-to-peak camber change, rad.
    pub camber_peak_to_peak: Estimated,
    /// Root mean square of the camber's deviation from its mean, rad.
    pub camber_rms: Estimated,
}

/// What is taken of each ride.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DrawnRide {
    wheels: Sides<RideWheel>,
    peak_stress: f64,
}

impl From<&RideOutcome> for DrawnRide {
    fn from(outcome: &RideOutcome) -> Self {
        let largest = outcome.stations.iter().map(|peak| peak.stress.abs()).fold(0.0, f64::max);
        DrawnRide { wheels: outcome.wheels, peak_stress: largest }
    }
}

impl DrawnRides {
    /// The means of rides; `None` of fewer than two, which say nothing of their scatter.
    pub fn of(rides: &[DrawnRide]) -> Option<Self> {
        if rides.len() < 2 {
            return None;
        }
        let mean = |value: &dyn Fn(&DrawnRide) -> f64| {
            let replicates = vec![rides.iter().map(value).collect()];
            Sampled { replicates, confidence: CONFIDENCE }.mean()
        };
        let wheel = |side: Side| {
            let of = |value: fn(&RideWheel) -> f64| mean(&|ride| value(ride.wheels.of(side)));
            DrawnWheel {
                dynamic_load_factor: of(|wheel| wheel.dynamic_load_factor),
                dynamic_load_coefficient: of(|wheel| wheel.dynamic_load_coefficient),
                time_off_road: of(|wheel| wheel.time_off_road),
                camber_peak_to_peak: of(|wheel| wheel.camber_peak_to_peak),
                camber_rms: of(|wheel| wheel.camber_rms),
            }
        };
        Some(DrawnRides {
            count: rides.len(),
            confidence: CONFIDENCE,
            wheels: Sides::each(wheel),
            peak_stress: mean(&|ride| ride.peak_stress),
        })
    }
}
