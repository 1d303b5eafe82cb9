//! Bounded nonlinear least squares by the method of Levenberg and Marquardt.
//!
//! D. W. Marquardt, "An algorithm for least-squares estimation of nonlinear parameters", J. SIAM 11 (1963) 431: the
//! normal equations with a share λ of their own diagonal added. A step that does not lower the sum of squares, or at which
//! there is no answer, raises λ; a parameter at a limit that the gradient presses on is held for that step.

use nalgebra::{DMatrix, DVector};
use rayon::prelude::*;

/// Half of the distance over which a central difference is taken.
const STEP: f64 = 1e-4;
/// Steps before the search gives up.
const MOST_STEPS: usize = 100;
/// A step that moves nothing by more than this is the last.
const SMALLEST_MOVE: f64 = 1e-10;
/// Share of the sum of squares that a step must take off to be followed by another.
const SMALLEST_GAIN: f64 = 1e-10;
/// Least λ: below it, directions that the residuals do not feel would drift.
const LEAST_DAMPING: f64 = 1e-6;
/// λ beyond which no shorter step is worth trying.
const MOST_DAMPING: f64 = 1e12;
/// Longest step of a parameter.
const LONGEST_MOVE: f64 = 1.0;

/// Residuals at a place, or why there are none; beside another place where a difference from its residuals is wanted, so that
/// what changes by steps between them can be held.
pub type Residuals<'f, E> = dyn Fn(&[f64], Option<&[f64]>) -> Result<Vec<f64>, E> + Sync + 'f;

/// The least sum of squares that was found.
#[derive(Debug, Clone)]
pub struct LeastSquares {
    /// Where it is.
    pub place: Vec<f64>,
    /// The residuals there.
    pub residuals: DVector<f64>,
    /// Their derivatives, a column for each parameter.
    pub jacobian: DMatrix<f64>,
    /// Steps that were taken.
    pub steps: usize,
    /// Whether the search ended because nothing was left to gain.
    pub converged: bool,
}

/// The place within `limits` at which the sum of squares of the residuals is least, searched from `start`.
///
/// # Errors
/// Why there are no residuals at the start or beside the place that was reached.
pub fn least_squares<E: Send>(
    residuals: &Residuals<E>,
    start: Vec<f64>,
    limits: &[[f64; 2]],
) -> Result<LeastSquares, E> {
    let first = DVector::from_vec(residuals(&start, None)?);
    let jacobian = derivatives(residuals, &start, limits)?;
    let mut best = LeastSquares { place: start, residuals: first, jacobian, steps: 0, converged: false };
    let mut damping = 1e-3;
    while best.steps < MOST_STEPS && !best.converged {
        best.converged = !improve(&mut best, residuals, (limits, &mut damping));
        best.jacobian = derivatives(residuals, &best.place, limits)?;
    }
    Ok(best)
}

/// Takes a step downhill; false where that was the last one worth taking.
fn improve<E: Send>(
    best: &mut LeastSquares,
    residuals: &Residuals<E>,
    (limits, damping): (&[[f64; 2]], &mut f64),
) -> bool {
    while *damping < MOST_DAMPING {
        let place = stepped(best, limits, *damping);
        let moved = place.iter().zip(&best.place).map(|(new, old)| (new - old).abs()).fold(0.0, f64::max);
        if moved < SMALLEST_MOVE {
            return false;
        }
        let tried = residuals(&place, None).map(DVector::from_vec);
        match tried.ok().filter(|tried| tried.norm_squared() < best.residuals.norm_squared()) {
            Some(lower) => {
                let gain = 1.0 - lower.norm_squared() / best.residuals.norm_squared();
                best.place = place;
                best.residuals = lower;
                best.steps += 1;
                *damping = (*damping * 0.1).max(LEAST_DAMPING);
                return gain > SMALLEST_GAIN;
            }
            None => *damping *= 5.0,
        }
    }
    false
}

/// The place that the damped normal equations lead to, cut to the limits.
fn stepped(best: &LeastSquares, limits: &[[f64; 2]], damping: f64) -> Vec<f64> {
    let mut normal = best.jacobian.tr_mul(&best.jacobian);
    let mut gradient = best.jacobian.tr_mul(&best.residuals);
    for i in 0..limits.len() {
        let [low, high] = limits[i];
        let pressed =
            (best.place[i] <= low && gradient[i] > 0.0) || (best.place[i] >= high && gradient[i] < 0.0);
        if pressed || normal[(i, i)] == 0.0 {
            normal.row_mut(i).fill(0.0);
            normal.column_mut(i).fill(0.0);
            normal[(i, i)] = 1.0;
            gradient[i] = 0.0;
        }
        normal[(i, i)] *= 1.0 + damping;
    }
    let Some(factor) = normal.cholesky() else { return best.place.clone() };
    let step = -factor.solve(&gradient);
    let longest = step.amax();
    let shortened = if longest > LONGEST_MOVE { LONGEST_MOVE / longest } else { 1.0 };
    let moved = best.place.iter().zip(&step).zip(limits);
    moved.map(|((place, step), [low, high])| (place + shortened * step).clamp(*low, *high)).collect()
}

/// Derivatives of the residuals by central differences, one-sided at a limit.
///
/// # Errors
/// Why there are no residuals beside the place.
pub fn derivatives<E: Send>(
    residuals: &Residuals<E>,
    place: &[f64],
    limits: &[[f64; 2]],
) -> Result<DMatrix<f64>, E> {
    let column = |i: usize| -> Result<Vec<f64>, E> {
        let [low, high] = limits[i];
        let ends = [(place[i] - STEP).max(low), (place[i] + STEP).min(high)];
        let [before, after] = ends.map(|end| {
            let mut moved = place.to_vec();
            moved[i] = end;
            residuals(&moved, Some(place))
        });
        let width = ends[1] - ends[0];
        Ok(after?.iter().zip(before?).map(|(after, before)| (after - before) / width).collect())
    };
    let columns: Vec<Vec<f64>> = (0..place.len()).into_par_iter().map(column).collect::<Result<_, E>>()?;
    let rows = columns.first().map_or(0, Vec::len);
    Ok(DMatrix::from_iterator(rows, place.len(), columns.into_iter().flatten()))
}
