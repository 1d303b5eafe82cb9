//! How far a ride in a reduced basis differs from that in the full one.

use crate::{RideMethod, RideOutcome, Side};

/// Results of one ride in both bases.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BasisComparison {
    /// How the reduced ride was solved.
    pub reduced: RideMethod,
    /// Peak-to-peak camber change of the wheel where it is largest, rad.
    pub camber_peak_to_peak: BesideFull,
    /// Largest load of a wheel, N.
    pub largest_load: BesideFull,
    /// Largest magnitude of fiber stress, Pa.
    pub peak_stress: BesideFull,
}

/// One result in both bases.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BesideFull {
    /// In the full basis.
    pub full: f64,
    /// In the reduced basis.
    pub reduced: f64,
}

impl BasisComparison {
    /// Compares the results of one ride in the full and in a reduced basis.
    pub fn of(full: &RideOutcome, reduced: &RideOutcome) -> Self {
        let beside =
            |result: fn(&RideOutcome) -> f64| BesideFull { full: result(full), reduced: result(reduced) };
        BasisComparison {
            reduced: reduced.method,
            camber_peak_to_peak: beside(|ride| {
                Side::BOTH
                    .map(|side| ride.wheels.of(side).camber_peak_to_peak)
                    .into_iter()
                    .fold(0.0, f64::max)
            }),
            largest_load: beside(|ride| {
                Side::BOTH.map(|side| ride.wheels.of(side).largest_load).into_iter().fold(0.0, f64::max)
            }),
            peak_stress: beside(|ride| {
                ride.history.stress.iter().fold(0.0, |most, stress| most.max(stress.abs()))
            }),
        }
    }
}

impl BesideFull {
    /// Reduced less full, as a share of the full; zero where both are.
    pub fn difference(&self) -> f64 {
        if self.full == self.reduced { 0.0 } else { (self.reduced - self.full) / self.full }
    }
}
