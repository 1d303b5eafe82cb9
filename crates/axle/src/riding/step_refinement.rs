//! What the time step of a ride leaves of the error of its results.

use crate::{AxleError, Ride, RideOutcome, RidingAxle};

/// Order of the step formulas, where none is observed.
const THEORY: f64 = 2.0;
/// Observed orders that are believed.
const BELIEVED: std::ops::RangeInclusive<f64> = 0.5..=4.0;

/// Results of one ride by its time step, by half and by a quarter of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StepRefinement {
    /// The longest of the steps, s.
    pub step: f64,
    /// Peak-to-peak camber change of the wheel where it is largest, rad.
    pub camber_peak_to_peak: Refined,
    /// Largest load of a wheel, N.
    pub largest_load: Refined,
    /// Largest magnitude of fiber stress, Pa.
    pub peak_stress: Refined,
}

/// A result by a step, by half and by a quarter of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Refined(pub [f64; 3]);

impl Refined {
    /// Order in the step at which the result settles; none where halving it changes nothing or not less the second time.
    pub fn order(&self) -> Option<f64> {
        let [whole, half, quarter] = self.0;
        let order = ((whole - half) / (half - quarter)).log2();
        BELIEVED.contains(&order).then_some(order)
    }

    /// Where it goes with the step (L. F. Richardson 1911), by its order, or by the second, which is that of the step formulas.
    pub fn extrapolated(&self) -> f64 {
        let [_, half, quarter] = self.0;
        quarter + (quarter - half) / (self.order().unwrap_or(THEORY).exp2() - 1.0)
    }

    /// What the longest step is off, as a share of what it goes to; zero where both are zero.
    pub fn error(&self) -> f64 {
        let settled = self.extrapolated();
        if self.0[0] == settled { 0.0 } else { (self.0[0] - settled) / settled }
    }
}

impl RidingAxle<'_> {
    /// Drives a ride again by half and by a quarter of its step.
    ///
    /// - `outcome`: what [`RidingAxle::ride`] gave
    ///
    /// # Errors
    /// As [`RidingAxle::ride`].
    pub fn refined(&self, ride: &Ride, outcome: &RideOutcome) -> Result<StepRefinement, AxleError> {
        let by = |share: f64| self.ride(&Ride { step: share * ride.step, ..ride.clone() });
        let (half, quarter) = (by(0.5)?, by(0.25)?);
        let of = |result: fn(&RideOutcome) -> f64| Refined([outcome, &half, &quarter].map(result));
        Ok(StepRefinement {
            step: ride.step,
            camber_peak_to_peak: of(RideOutcome::camber_peak_to_peak),
            largest_load: of(RideOutcome::largest_load),
            peak_stress: of(RideOutcome::peak_stress),
        })
    }
}

impl RideOutcome {
    /// Peak-to-peak camber change of the wheel where it is largest, rad.
    pub fn camber_peak_to_peak(&self) -> f64 {
        self.wheels.left.camber_peak_to_peak.max(self.wheels.right.camber_peak_to_peak)
    }

    /// Largest load of a wheel, N.
    pub fn largest_load(&self) -> f64 {
        self.wheels.left.largest_load.max(self.wheels.right.largest_load)
    }

    /// Largest magnitude of fiber stress, Pa.
    pub fn peak_stress(&self) -> f64 {
        self.history.stress.iter().fold(0.0, |most, stress| most.max(stress.abs()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// `a + b h^p` by hand.
    #[test]
    fn order_and_limit_of_a_power_are_found() {
        for power in [1.0, 2.0, 3.0] {
            let value = |step: f64| 5.0 + 0.3 * step.powf(power);
            let refined = Refined([1.0, 0.5, 0.25].map(value));
            assert!((refined.order().unwrap() - power).abs() < 1e-12, "{refined:?}");
            assert!((refined.extrapolated() - 5.0).abs() < 1e-12, "{refined:?}");
            assert!((refined.error() - 0.06).abs() < 1e-12, "{refined:?}");
        }
    }

    #[test]
    fn what_does_not_settle_has_no_order() {
        assert_eq!(Refined([1.0, 1.1, 1.0]).order(), None);
        assert_eq!(Refined([2.0, 2.0, 2.0]).order(), None);
        assert_eq!(Refined([2.0, 2.0, 2.0]).error(), 0.0);
        assert_eq!(Refined([0.0; 3]).error(), 0.0);
        // Without an order of its own the second is taken: 1 + (1 - 1.1)/3.
        assert!((Refined([1.0, 1.1, 1.0]).extrapolated() - (1.0 - 0.1 / 3.0)).abs() < 1e-12);
    }
}
