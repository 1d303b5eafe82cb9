//! What a fit found.

use axlebow_model::Reading;

use super::estimated::Estimate;
use super::unknown::Unknown;

/// Result of [`super::fit`].
#[derive(Debug, Clone)]
pub struct FitOutcome {
    /// The unknowns, in the order asked for.
    pub unknowns: Vec<FittedUnknown>,
    /// The readings, in the order of their file.
    pub readings: Vec<FittedReading>,
    /// Intervals, covariance, scatter and warnings.
    pub estimate: Estimate,
    /// Further readings that would tell most, best first.
    pub further: Vec<FurtherReading>,
}

/// A fitted unknown.
#[derive(Debug, Clone, PartialEq)]
pub struct FittedUnknown {
    /// What was varied.
    pub unknown: Unknown,
    /// Fitted value, SI.
    pub value: f64,
    /// 95 % interval, SI; `None` where the readings do not determine it.
    pub interval: Option<[f64; 2]>,
    /// Standard error by the standard errors of the readings alone, SI.
    pub stated_error: Option<f64>,
}

/// A reading beside the model.
#[derive(Debug, Clone, PartialEq)]
pub struct FittedReading {
    /// The reading.
    pub reading: Reading,
    /// What the model said before it was fitted, SI.
    pub first: f64,
    /// What the fitted model says, SI.
    pub fitted: f64,
}

impl FittedReading {
    /// What was read less what the fitted model says, SI.
    pub fn residual(&self) -> f64 {
        self.reading.value - self.fitted
    }

    /// The same over the reading's standard error.
    pub fn in_standard_errors(&self) -> f64 {
        self.residual() / self.reading.standard_error
    }
}

/// A reading that was not taken.
#[derive(Debug, Clone, PartialEq)]
pub struct FurtherReading {
    /// The reading, its value what the fitted model says and its standard error that of its like.
    pub reading: Reading,
    /// The worst-known direction's standard error with the reading over that without it, each unknown counted in its own; 0
    /// where it was not determined at all before.
    pub leaves: f64,
}
