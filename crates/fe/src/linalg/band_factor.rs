//! Factorisation of a symmetric band.
//!
//! A = V·D⁻¹·Vᵀ, where V is lower triangular with the diagonal D: column c of V is what is left of column c
//! of A when the columns before it have been eliminated,
//! ```text
//! V[c+i, c] = A[c+i, c] - Σ_m (V[c, c-m] / d[c-m]) · V[c+i, c-m],   m = 1..width, i = 0..width - m
//! ```
//! This is Cholesky's factorization without square roots and without scaling the columns (G. H. Golub and
//! C. F. Van Loan, Matrix Computations, band LDLᵀ; from memory). Nothing but one division stands between
//! one pivot and the next, and the sums over m of different columns overlap.

use super::band::{Band, stride};
use super::lanes::{LANES, Lanes, block, for_lanes, for_width, multiply_add};
use super::pivot::{PivotFailure, ROUNDING, SUSPICIOUS};

/// Factor of a band matrix.
///
/// `width` empty columns with zero reciprocals stand before the first, so that each column has `width`
/// columns before it.
#[derive(Debug, Default)]
pub(super) struct BandFactor {
    pub(super) order: usize,
    pub(super) width: usize,
    /// Columns of V, stored like those of [`Band`].
    pub(super) columns: Vec<f64>,
    /// 1/d.
    pub(super) reciprocals: Vec<f64>,
    multipliers: Vec<f64>,
    /// Whether negative pivots are wanted, to be counted.
    any_sign: bool,
}

impl BandFactor {
    /// Number of negative pivots of a matrix, which is that of its negative eigenvalues (Sylvester's law of
    /// inertia); none when a pivot is zero or not finite.
    pub(super) fn negative_pivots(matrix: &Band) -> Option<usize> {
        let mut factor = BandFactor { any_sign: true, ..BandFactor::default() };
        factor.refactor(matrix).ok()?;
        Some(factor.reciprocals[matrix.width..].iter().filter(|reciprocal| **reciprocal < 0.0).count())
    }

    /// Factors a matrix into this storage.
    pub(super) fn refactor(&mut self, matrix: &Band) -> Result<(), PivotFailure> {
        self.refactor_on(Lanes::widest(), matrix)
    }

    fn refactor_on(&mut self, lanes: Lanes, matrix: &Band) -> Result<(), PivotFailure> {
        if (self.order, self.width) != (matrix.order, matrix.width) || self.multipliers.is_empty() {
            let columns = matrix.order + matrix.width;
            *self = BandFactor {
                order: matrix.order,
                width: matrix.width,
                columns: vec![0.0; columns * stride(matrix.width)],
                reciprocals: vec![0.0; columns],
                multipliers: vec![0.0; matrix.width + 1],
                any_sign: self.any_sign,
            };
        }
        factor(lanes, self, matrix)
    }

    /// Refuses the suspicious pivot of a column if it is no more than rounding.
    #[cold]
    fn refuse_vanished(&self, matrix: &Band, index: usize, pivot: f64) -> Result<(), PivotFailure> {
        if self.any_sign && pivot.is_finite() && pivot != 0.0 {
            return Ok(());
        }
        let motion = self.following_motion(index);
        if pivot > ROUNDING * matrix.magnitude(&motion) && pivot < f64::INFINITY {
            return Ok(());
        }
        Err(PivotFailure::new(index, pivot, matrix.diagonal(index), motion))
    }

    /// The motion with x[index] = 1 that the freedoms before follow freely: L₁₁ᵀ x₁ = -l.
    fn following_motion(&self, index: usize) -> Vec<f64> {
        let mut x = vec![0.0; self.order];
        x[index] = 1.0;
        for c in (0..index).rev() {
            let column = &self.columns[(self.width + c) * stride(self.width)..];
            let reach = self.width.min(index - c);
            let sum: f64 = (1..=reach).map(|m| column[m] * x[c + m]).sum();
            x[c] = -sum * self.reciprocals[self.width + c];
        }
        x
    }
}

for_lanes! {
    /// Factors on the given lanes.
    fn factor(target: &mut BandFactor, matrix: &Band) -> Result<(), PivotFailure> = factor_by_width
}

#[inline(always)]
fn factor_by_width<const FUSED: bool>(target: &mut BandFactor, matrix: &Band) -> Result<(), PivotFailure> {
    for_width!(matrix.width, |width| factor_columns::<FUSED>(width, target, matrix))
}

#[inline(always)]
fn factor_columns<const FUSED: bool>(
    width: usize,
    target: &mut BandFactor,
    matrix: &Band,
) -> Result<(), PivotFailure> {
    let stride = stride(width);
    for c in 0..matrix.order {
        let (before, rest) = target.columns.split_at_mut((c + width) * stride);
        let window = &before[c * stride..];
        let reciprocals = &target.reciprocals[c..c + width];
        let multipliers = &mut target.multipliers[..=width];
        for m in 1..width + 1 {
            multipliers[m] = window[(width - m) * stride + m] * reciprocals[width - m];
        }
        let source = &matrix.values[c * stride..][..stride];
        let column = &mut rest[..stride];
        for top in (0..width / LANES + 1).map(|b| b * LANES) {
            let mut sum = block(source, top);
            for m in (1..width - top + 1).rev() {
                let earlier = block(window, (width - m) * stride + m + top);
                for i in 0..LANES {
                    sum[i] = multiply_add::<FUSED>(-multipliers[m], earlier[i], sum[i]);
                }
            }
            column[top..top + LANES].copy_from_slice(&sum);
        }
        let pivot = column[0];
        let sound = pivot > SUSPICIOUS * source[0] && pivot < f64::INFINITY;
        if !sound {
            target.refuse_vanished(matrix, c, pivot)?;
        }
        target.reciprocals[c + width] = 1.0 / pivot;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The formula at the head of this file, as it stands: (V, 1/d).
    fn factor_by_formula(matrix: &Band) -> (Vec<Vec<f64>>, Vec<f64>) {
        let (n, width) = (matrix.order, matrix.width);
        let (mut v, mut reciprocals) = (vec![vec![0.0; n]; n], vec![0.0; n]);
        matrix.for_each(|row, column, value| v[row][column] = value);
        for c in 0..n {
            for row in c..n.min(c + width + 1) {
                for k in 0..c {
                    v[row][c] -= v[c][k] * reciprocals[k] * v[row][k];
                }
            }
            reciprocals[c] = 1.0 / v[c][c];
        }
        (v, reciprocals)
    }

    /// Diagonally dominant band without a pattern in its entries.
    fn example(order: usize, width: usize) -> Band {
        let mut matrix = Band::zeros(order, width);
        for column in 0..order {
            matrix.add(column, column, 1.5 * width as f64 + 1.0);
            for row in column + 1..(column + width + 1).min(order) {
                matrix.add(row, column, ((3 * row + 7 * column) % 11) as f64 / 11.0 - 0.5);
            }
        }
        matrix
    }

    #[test]
    fn every_kind_of_lanes_agrees_with_the_formula() {
        for width in [0, 1, 2, 5, 7, 8, 11, 15, 17, 23, 30] {
            for order in [0, 1, 2, width, width + 1, 3 * width + 5] {
                let matrix = example(order, width);
                let (v, reciprocals) = factor_by_formula(&matrix);
                for lanes in Lanes::available() {
                    let mut factor = BandFactor::default();
                    factor.refactor_on(lanes, &matrix).unwrap();
                    for c in 0..order {
                        let column = &factor.columns[(width + c) * stride(width)..];
                        let wrong =
                            (0..=width.min(order - 1 - c)).any(|i| (column[i] - v[c + i][c]).abs() > 1e-12);
                        assert!(!wrong, "{lanes:?}, order {order}, width {width}, column {c}");
                        assert!((factor.reciprocals[width + c] - reciprocals[c]).abs() < 1e-12);
                    }
                }
            }
        }
    }

    #[test]
    fn storage_is_used_again_without_a_trace_of_the_earlier_matrix() {
        let mut factor = BandFactor::default();
        let mut fresh = BandFactor::default();
        for (order, width) in [(40, 11), (40, 11), (20, 11), (40, 5), (0, 0), (40, 11)] {
            factor.refactor(&example(order, width)).unwrap();
        }
        fresh.refactor(&example(40, 11)).unwrap();
        assert_eq!(factor.columns, fresh.columns);
    }
}
