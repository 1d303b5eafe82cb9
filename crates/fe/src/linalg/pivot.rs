//! When a pivot counts as vanished.
//!
//! The pivot d of freedom i is the energy xᵀAx of the motion x with x_i = 1 that the freedoms eliminated
//! before follow freely. Measured against the original diagonal alone, a mechanism and a sound long chain
//! cannot be told apart: in a cantilever of a thousand beams sound pivots are 1e-9 of their diagonal, while
//! rounding leaves as much in a mechanism that turns far parts. So the diagonal only says which pivots to
//! look at ([`SUSPICIOUS`]); the verdict compares the energy with what rounding alone makes of it,
//! [`ROUNDING`]·Σ|x_i||A_ij||x_j|. A stiffness beside a bearing of 1e9 N/m counts as none below 2e-5 N/m.

/// Pivots above this part of their original diagonal are sound without a further look.
pub(super) const SUSPICIOUS: f64 = 1e-8;

/// Rounding in an energy, as a part of the sum of the magnitudes of its terms.
///
/// In chains of 1 to 2000 beams mechanisms leave at most 1e-16, and the tip of a sound cantilever 7e-13 with
/// 1000 beams and 4e-14 with 2000; twenty-two units in the last place stand well clear of both.
pub(super) const ROUNDING: f64 = 5e-15;

/// A pivot that vanished: this freedom, and what moves with it, is held by nothing.
///
/// Also returned when an entry is not a finite number; `pivot` is then not finite and `null_vector` names
/// the freedom alone.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("freedom {index} is not held: its pivot is {pivot:e} where its own stiffness is {scale:e}")]
pub struct PivotFailure {
    /// The freedom whose pivot vanished.
    pub index: usize,
    /// What was left of the diagonal.
    pub pivot: f64,
    /// The diagonal before elimination.
    pub scale: f64,
    /// The motion that nothing resists, its largest component 1.
    pub null_vector: Vec<f64>,
}

impl PivotFailure {
    /// A failure with a motion of any size.
    pub(super) fn new(index: usize, pivot: f64, scale: f64, mut motion: Vec<f64>) -> Self {
        let largest = motion.iter().fold(0.0_f64, |a, x| if x.abs() > a.abs() { *x } else { a });
        if largest != 0.0 && motion.iter().all(|x| x.is_finite()) {
            motion.iter_mut().for_each(|x| *x /= largest);
        } else {
            motion.fill(0.0);
            motion[index] = 1.0;
        }
        PivotFailure { index, pivot, scale, null_vector: motion }
    }
}
