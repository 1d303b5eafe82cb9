//! How far a ride in a reduced basis differs from that in the full one.

use crate::{RideMethod, RideOutcome};

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
            camber_peak_to_peak: beside(RideOutcome::camber_peak_to_peak),
            largest_load: beside(RideOutcome::largest_load),
            peak_stress: beside(RideOutcome::peak_stress),
        }
    }
}

impl BesideFull {
    /// Reduced less full, as a share of the full; zero where both are.
    pub fn difference(&self) -> f64 {
        if self.full == self.reduced { 0.0 } else { (self.reduced - self.full) / self.full }
    }
}
