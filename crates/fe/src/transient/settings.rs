//! How a run advances.

use super::scheme::Scheme;
use crate::FeError;

/// Settings of a run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TransientSettings {
    /// Length of a step, s; more than zero.
    pub step: f64,
    /// Number of steps.
    pub steps: usize,
    /// Time of the start, s.
    pub start: f64,
    /// Step formulas.
    pub scheme: Scheme,
    /// A sample is reported at the start and after every so many steps; 0 for none.
    pub sample_every: usize,
    /// A contact that opens or closes is found within this time, s: steps are halved until one that sees it is
    /// no longer than this.
    pub event_tolerance: f64,
    /// How often a step may be halved, for a contact or where Newton's method does not converge; at most 30.
    pub most_halvings: u32,
    /// Newton's method has converged when each motion along a law is within this share of the parts that make
    /// it up.
    pub newton_tolerance: f64,
}

impl TransientSettings {
    /// Steps of a length (s) over a duration (s): average acceleration, a sample after every step, contacts
    /// found within 1/64 of a step, steps halved up to ten times, Newton's method to 1e-10.
    pub fn new(step: f64, duration: f64) -> Self {
        TransientSettings {
            step,
            steps: (duration / step).round() as usize,
            start: 0.0,
            scheme: Scheme::AverageAcceleration,
            sample_every: 1,
            event_tolerance: step / 64.0,
            most_halvings: 10,
            newton_tolerance: 1e-10,
        }
    }

    /// Refuses what no run can be made with.
    pub(super) fn check(&self) -> Result<(), FeError> {
        let positive = |value: f64| value.is_finite() && value > 0.0;
        let more = "a finite value greater than zero";
        let radius = match self.scheme {
            Scheme::AverageAcceleration => 1.0,
            Scheme::GeneralizedAlpha { spectral_radius } => spectral_radius,
        };
        let numbers = [
            ("length of a time step", self.step, positive(self.step), more),
            ("time tolerance of contacts", self.event_tolerance, positive(self.event_tolerance), more),
            ("tolerance of Newton's method", self.newton_tolerance, positive(self.newton_tolerance), more),
            ("start time", self.start, self.start.is_finite(), "a finite value"),
            ("spectral radius", radius, (0.0..=1.0).contains(&radius), "a value from 0 to 1"),
            ("number of halvings", f64::from(self.most_halvings), self.most_halvings <= 30, "0 to 30"),
        ];
        match numbers.into_iter().find(|(_, _, fits, _)| !fits) {
            None => Ok(()),
            Some((what, value, _, accepted)) => Err(FeError::ImpossibleDynamics { what, value, accepted }),
        }
    }
}
