//! The shift that makes K + σM positive definite, and Sturm's count.

use super::Pencil;
use crate::linalg::columns::Columns;
use crate::linalg::factor::Factor;
use crate::linalg::pivot::PivotFailure;

/// Ratio of one trial shift to the next.
const STEP: f64 = 1.0 / 16.0;

/// Most trial shifts: the last is 1e-10 of the largest λ, below which K + σM is K but for rounding.
const TRIALS: usize = 9;

/// A mass below this part of the largest is rounding of none, as a wall's about its normal.
const MASSLESS: f64 = 1e-14;

/// Rigid motions of one body.
const RIGID: usize = 6;

/// A pencil with the factor of K + σM.
pub(super) struct ShiftedPencil<'a> {
    pub pencil: Pencil<'a>,
    /// σ ≥ 0.
    pub shift: f64,
    factor: Factor,
}

impl<'a> ShiftedPencil<'a> {
    /// No shift where K is positive definite, else one of the size of the lowest `count` λ.
    pub fn of(pencil: Pencil<'a>, count: usize) -> Result<Self, PivotFailure> {
        if let Ok(factor) = pencil.stiffness.factor() {
            return Ok(ShiftedPencil { pencil, shift: 0.0, factor });
        }
        let shift = pencil.trial_shift(count);
        let factor = pencil.stiffness.plus(shift, pencil.mass).factor()?;
        Ok(ShiftedPencil { pencil, shift, factor })
    }

    /// λ of a θ.
    pub fn value(&self, inverse: f64) -> f64 {
        1.0 / inverse - self.shift
    }

    /// (K + σM)⁻¹·B in place.
    pub fn solve(&self, columns: &mut Columns) {
        self.factor.solve_columns(columns);
    }

    /// Number of λ below a limit, by the signs of the pivots of K − λM (J. J. Sylvester 1852; K.-J. Bathe,
    /// Finite Element Procedures, 2nd ed. 2014, sec. 11.4.3, from memory).
    pub fn count_below(&self, limit: f64) -> Option<usize> {
        self.pencil.count_below(limit)
    }
}

impl Pencil<'_> {
    /// The largest of σ₀, σ₀/16, … with no more λ below it than are wanted, σ₀ the largest Kᵢᵢ/Mᵢᵢ of a freedom
    /// that has mass.
    fn trial_shift(&self, count: usize) -> f64 {
        let most = (0..self.mass.order()).map(|i| self.mass.diagonal(i)).fold(0.0, f64::max);
        let massive = |i: &usize| self.mass.diagonal(*i) > MASSLESS * most;
        let ratio = |i: usize| self.stiffness.diagonal(i) / self.mass.diagonal(i);
        let ratios = (0..self.mass.order()).filter(massive).map(ratio);
        let largest = ratios.filter(|r| r.is_finite()).fold(0.0, f64::max);
        if largest == 0.0 {
            return 1.0;
        }
        let few = |shift: &f64| self.count_below(*shift).is_some_and(|below| below <= count.max(RIGID));
        let mut trials = (0..TRIALS as i32).map(|trial| largest * STEP.powi(trial));
        trials.find(few).unwrap_or(largest * STEP.powi(TRIALS as i32))
    }

    /// Number of λ below a limit by Sturm's count; none where the matrices have no band.
    pub fn count_below(&self, limit: f64) -> Option<usize> {
        self.stiffness.plus(-limit, self.mass).negative_pivots()
    }
}
