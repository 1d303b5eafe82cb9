//! Unknowns and their intervals from readings, whatever predicts the readings.

use axlebow_numerics::{Precision, least_squares};
use statrs::distribution::{ChiSquared, ContinuousCDF, StudentsT};

use super::estimated::{Estimate, NO_ACCIDENT};
use super::unknown::{Unknown, values};
use super::warnings::warnings;

/// Share of intervals that hold the true value.
const CONFIDENCE: f64 = 0.95;
/// The 97.5 % quantile of the normal distribution (any table of it).
const NORMAL: f64 = 1.959_963_984_540_054;
/// Nearness to the end of a scale that counts as being there.
const AT_END: f64 = 1e-6;

/// Readings from values of the unknowns, or why there are none; beside other values where a difference from their readings
/// is wanted, which a change of mesh between them would spoil.
pub type Predicted<'f> = dyn Fn(&[f64], Option<&[f64]>) -> Result<Vec<f64>, String> + Sync + 'f;

/// Fits unknowns to readings by least squares weighted by the readings' standard errors.
///
/// Intervals are `u ± t(ν) s √C_ii` on the scale of each unknown, with `C = (JᵀJ)⁻¹`, `s² = χ²/ν` and ν readings less
/// unknowns: the standard errors count against one another, and the readings' own scatter says how large they are. Without
/// a degree of freedom the stated errors are all there is, and the normal quantile is used. Readings that agree better than
/// 97.5 % of such readings would (both wheels to the last digit, say) do not narrow the intervals: `s` is then 1. All of
/// it is about a least sum of squares inside the ranges of the unknowns; where there is none, nothing is said.
///
/// Arguments: `unknowns`; `readings`, value and standard error of each, in one unit for each reading; `predicted`, the same
/// readings from values of the unknowns, SI.
///
/// # Errors
/// Why nothing can be predicted at the initial value or beside it.
///
/// Source: G. A. F. Seber, C. J. Wild, Nonlinear Regression, Wiley 1989, section 2.1 (from memory).
pub fn estimate(
    unknowns: &[Unknown],
    readings: &[(f64, f64)],
    predicted: &Predicted,
) -> Result<Estimate, String> {
    let limits: Vec<[f64; 2]> = unknowns.iter().map(Unknown::limits).collect();
    let start = unknowns.iter().map(|unknown| unknown.scaled(unknown.start)).collect();
    let residuals = |place: &[f64], beside: Option<&[f64]>| -> Result<Vec<f64>, String> {
        let beside = beside.map(|own| values(unknowns, own));
        let pairs = predicted(&values(unknowns, place), beside.as_deref())?.into_iter().zip(readings);
        Ok(pairs.map(|(predicted, (value, error))| (predicted - value) / error).collect())
    };
    let found = least_squares(&residuals, start, &limits)?;
    let chi_squared = found.residuals.norm_squared();
    let freedom = readings.len().saturating_sub(unknowns.len());
    let chance = (freedom > 0).then(|| {
        ChiSquared::new(freedom as f64).map_or(f64::NAN, |chi_squared_of| chi_squared_of.sf(chi_squared))
    });
    let at_end: Vec<usize> = (0..unknowns.len())
        .filter(|&i| limits[i].iter().any(|end| (found.place[i] - end).abs() < AT_END))
        .collect();
    let precision = Precision::of(&found.jacobian);
    let scatter = Scatter::of(chi_squared, freedom, chance);
    let is_least = found.converged && at_end.is_empty();
    let spread = Spread { precision: &precision, unknowns, place: &found.place, scatter, is_least };
    let mut estimate = Estimate {
        values: values(unknowns, &found.place),
        stated_errors: spread.stated_errors(),
        intervals: spread.intervals(),
        covariance: spread.covariance(),
        correlation: square(unknowns.len(), |i, j| is_least.then(|| precision.correlation(i, j)).flatten()),
        chi_squared,
        degrees_of_freedom: freedom,
        chance,
        conditioning: precision.conditioning,
        steps: found.steps,
        converged: found.converged && !at_end.iter().any(|&i| unknowns[i].scale.is_endless()),
        warnings: Vec::new(),
        place: found.place,
        jacobian: found.jacobian,
    };
    estimate.warnings = warnings(unknowns, &estimate, (&precision, &at_end));
    Ok(estimate)
}

fn square(count: usize, entry: impl Fn(usize, usize) -> Option<f64>) -> Vec<Vec<Option<f64>>> {
    (0..count).map(|i| (0..count).map(|j| entry(i, j)).collect()).collect()
}

/// Precision in the units of the unknowns.
struct Spread<'a> {
    precision: &'a Precision,
    unknowns: &'a [Unknown],
    place: &'a [f64],
    scatter: Scatter,
    /// Whether the sum of squares is least there; else nothing is told.
    is_least: bool,
}

/// How readings scatter.
#[derive(Clone, Copy)]
struct Scatter {
    /// `s`, by which scatter exceeds the stated errors.
    ratio: f64,
    /// The quantile that goes with it.
    quantile: f64,
}

impl Scatter {
    fn of(chi_squared: f64, freedom: usize, chance: Option<f64>) -> Self {
        let Some(chance) = chance else { return Scatter { ratio: 1.0, quantile: NORMAL } };
        let freedom = freedom as f64;
        let student = StudentsT::new(0.0, 1.0, freedom);
        let quantile = student.map_or(f64::NAN, |t| t.inverse_cdf(0.5 + 0.5 * CONFIDENCE));
        let ratio = if chance > 1.0 - NO_ACCIDENT { 1.0 } else { (chi_squared / freedom).sqrt() };
        Scatter { ratio, quantile }
    }
}

impl Spread<'_> {
    fn is_told(&self, i: usize) -> bool {
        self.is_least && self.precision.determined[i]
    }

    /// Standard error on the scale, by stated errors.
    fn scaled_error(&self, i: usize) -> Option<f64> {
        self.is_told(i).then(|| self.precision.covariance[(i, i)].sqrt())
    }

    fn stated_errors(&self) -> Vec<Option<f64>> {
        let slope = |i: usize| self.unknowns[i].slope(self.place[i]);
        (0..self.place.len()).map(|i| self.scaled_error(i).map(|error| error * slope(i))).collect()
    }

    fn intervals(&self) -> Vec<Option<[f64; 2]>> {
        let interval = |i: usize| {
            let half = self.scatter.quantile * self.scatter.ratio * self.scaled_error(i)?;
            (half < self.unknowns[i].widest()).then_some(())?;
            Some([-half, half].map(|half| self.unknowns[i].value(self.place[i] + half)))
        };
        (0..self.place.len()).map(interval).collect()
    }

    fn covariance(&self) -> Vec<Vec<Option<f64>>> {
        let slope = |i: usize| self.unknowns[i].slope(self.place[i]);
        square(self.place.len(), |i, j| {
            let entry = self.scatter.ratio.powi(2) * self.precision.covariance[(i, j)] * slope(i) * slope(j);
            (self.is_told(i) && self.is_told(j)).then_some(entry)
        })
    }
}
