//! What an axle answers to a harmonic and to a random road.

use std::f64::consts::TAU;

use crate::frequency::transfer::TransferFunction;
use crate::riding::stress_reading::StressReading;
use crate::{Input, ModeOutcome, Side, Sides, Warning};

/// Result of [`crate::response()`].
#[derive(Debug, Clone, PartialEq)]
pub struct ResponseOutcome {
    /// What the road does under the two wheels.
    pub input: Input,
    /// Load of each wheel end at rest, N.
    pub load_at_rest: Sides<f64>,
    /// Frequencies of the transfer functions, Hz, rising.
    pub frequencies: Vec<f64>,
    /// Camber change of each wheel, rad per m of road height.
    pub camber: Sides<TransferFunction>,
    /// Load of each wheel end, N per m of road height.
    pub load: Sides<TransferFunction>,
    /// Fiber stress at places of the axle.
    pub stress: Vec<StationResponse>,
    /// The lowest natural modes.
    pub modes: Vec<ModeOutcome>,
    /// The answer to a random road.
    pub random: Option<RandomOutcome>,
    /// Doubts, each with what to do.
    pub warnings: Vec<Warning>,
}

/// Stress at one place, of the fiber that is stressed most at rest.
#[derive(Debug, Clone, PartialEq)]
pub struct StationResponse {
    /// Name.
    pub name: String,
    /// Position, m.
    pub y: f64,
    /// Stress at rest, tension positive, Pa.
    pub at_rest: f64,
    /// Stress, Pa per m of road height.
    pub transfer: TransferFunction,
}

impl StationResponse {
    /// The place of a reading with its transfer function.
    pub(crate) fn of(reading: &StressReading, transfer: TransferFunction) -> Self {
        let StressReading { name, y, at_rest, .. } = reading;
        StationResponse { name: name.clone(), y: *y, at_rest: *at_rest, transfer }
    }
}

/// Answer to a random road at a speed, about the values at rest.
#[derive(Debug, Clone, PartialEq)]
pub struct RandomOutcome {
    /// Name of the road.
    pub name: String,
    /// Speed, m/s.
    pub speed: f64,
    /// Rolling radius of the tires, m.
    pub tire_radius: f64,
    /// Frequencies of the densities, Hz, rising over the band of the road.
    pub frequencies: Vec<f64>,
    /// Camber of each wheel, rad.
    pub camber: Sides<RandomAnswer>,
    /// Load of each wheel end, N.
    pub load: Sides<RandomAnswer>,
    /// Fiber stress at the places of [`ResponseOutcome::stress`], Pa.
    pub stress: Vec<RandomAnswer>,
}

/// A random history, known by its spectrum.
#[derive(Debug, Clone, PartialEq)]
pub struct RandomAnswer {
    /// Root mean square.
    pub rms: f64,
    /// Times a second that it rises through its mean, Hz, were it Gaussian: `√(∫f²G df/∫G df)` (S. O. Rice, Bell
    /// System Technical Journal 24 (1945) 46-156, from memory).
    pub crossing_rate: f64,
    /// Frequency at which its density is highest, Hz; none for a history that does not move.
    pub dominant_frequency: Option<f64>,
    /// One-sided spectral density at each frequency, square of the unit per Hz.
    pub density: Vec<f64>,
}

/// Cups that a frequency prints.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PrintedCups {
    /// Cups in one turn of the tire.
    pub per_turn: f64,
    /// Distance from cup to cup along the tread, m.
    pub spacing: f64,
}

impl RandomOutcome {
    /// Cups that the frequency which dominates a wheel's camber prints; none below one a turn.
    pub fn cups(&self, side: Side) -> Option<PrintedCups> {
        let frequency = self.camber.of(side).dominant_frequency?;
        let per_turn = frequency * TAU * self.tire_radius / self.speed;
        (per_turn >= 1.0).then_some(PrintedCups { per_turn, spacing: self.speed / frequency })
    }

    /// Root mean square of a wheel's load over its load at rest (N).
    pub fn dynamic_load_coefficient(&self, side: Side, at_rest: f64) -> f64 {
        self.load.of(side).rms / at_rest
    }
}

impl RandomAnswer {
    pub(crate) fn of(frequencies: &[f64], density: Vec<f64>) -> Self {
        let moment = |power: i32| {
            let weighed = |i: usize| frequencies[i].powi(power) * density[i];
            let strips = 1..frequencies.len();
            strips
                .map(|i| 0.5 * (frequencies[i] - frequencies[i - 1]) * (weighed(i - 1) + weighed(i)))
                .sum::<f64>()
        };
        let mean_square = moment(0);
        let top = (0..density.len()).max_by(|a, b| density[*a].total_cmp(&density[*b]));
        RandomAnswer {
            rms: mean_square.sqrt(),
            crossing_rate: if mean_square > 0.0 { (moment(2) / mean_square).sqrt() } else { 0.0 },
            dominant_frequency: top.filter(|_| mean_square > 0.0).map(|top| frequencies[top]),
            density,
        }
    }
}
