//! A factored matrix laid out for quick solutions with single vectors.
//!
//! With A = V·D⁻¹·Vᵀ and the reciprocals 1/d already in the entries, forwards and then backwards:
//! ```text
//! z[c] = b[c]/d[c] - Σ_m (V[c, c-m]/d[c])·z[c-m]
//! x[c] = z[c]      - Σ_m (V[c+m, c]/d[c])·x[c+m],   m = width..1
//! ```
//! Both sums read one row of entries each, so that lanes run along it; only the last few, which wait for the numbers just found,
//! are taken one by one.

use super::band::stride;
use super::band_factor::BandFactor;
use super::factor::{Factor, Kind as FactorKind};
use super::lanes::{Lanes, for_lanes, multiply_add};
use super::matrix::{SymmetricMatrix, is_narrow};
use super::narrow_order::NarrowOrder;
use super::pivot::PivotFailure;

/// Entries beside the diagonal that are taken one by one.
const NEAR: usize = 4;

/// Lanes that run along the other entries of a row.
const FAR: usize = 4;

/// A factored symmetric positive definite matrix, ready to solve many single vectors; its rows are numbered anew where that
/// makes it a narrow band.
#[derive(Debug)]
pub struct RowFactor {
    kind: Kind,
}

#[derive(Debug)]
enum Kind {
    /// 1/d.
    Diagonal(Vec<f64>),
    Band(NarrowOrder, BandRows),
    Other(Factor),
}

#[derive(Debug)]
pub(super) struct BandRows {
    order: usize,
    /// Entries of a row, NEAR and a whole number of FAR.
    length: usize,
    /// 1/d.
    reciprocals: Vec<f64>,
    /// V[c, c-m]/d[c] from the farthest to the nearest, row by row.
    before: Vec<f64>,
    /// V[c+m, c]/d[c] from the nearest to the farthest, row by row.
    behind: Vec<f64>,
}

impl RowFactor {
    /// Factors a matrix.
    ///
    /// # Errors
    /// As [`SymmetricMatrix::factor`].
    pub fn of(matrix: &SymmetricMatrix) -> Result<Self, PivotFailure> {
        let numbers = NarrowOrder::of(&[matrix]);
        let narrow = band_of(matrix, &numbers).and_then(|band| band.factor().ok());
        if let Some(Factor { kind: FactorKind::Band(factor) }) = narrow {
            if factor.width == 0 {
                return Ok(RowFactor { kind: Kind::Diagonal(factor.reciprocals) });
            }
            return Ok(RowFactor { kind: Kind::Band(numbers, BandRows::of(&factor)) });
        }
        // A matrix that fails says so in its own numbers.
        Ok(RowFactor { kind: Kind::Other(matrix.factor()?) })
    }

    /// Solves A·x = b in place: b goes in, x comes out; `room` is used up.
    ///
    /// # Panics
    /// When the length is not the order.
    pub fn solve(&self, x: &mut [f64], room: &mut Vec<f64>) {
        match &self.kind {
            Kind::Diagonal(reciprocals) => {
                assert_eq!(x.len(), reciprocals.len(), "length of the right-hand side");
                x.iter_mut().zip(reciprocals).for_each(|(x, reciprocal)| *x *= reciprocal);
            }
            Kind::Band(numbers, rows) => {
                assert_eq!(x.len(), rows.order, "length of the right-hand side");
                // Zeros before and behind let the rows at the ends be as long as all others.
                room.clear();
                room.resize(2 * rows.length + x.len(), 0.0);
                let place = |row: usize| rows.length + numbers.number(row);
                x.iter().enumerate().for_each(|(row, b)| room[place(row)] = *b);
                solve(Lanes::widest(), rows, room);
                x.iter_mut().enumerate().for_each(|(row, x)| *x = room[place(row)]);
            }
            Kind::Other(factor) => factor.solve(x),
        }
    }
}

/// The matrix with new numbers, where that is a narrow band.
fn band_of(matrix: &SymmetricMatrix, numbers: &NarrowOrder) -> Option<SymmetricMatrix> {
    let mut width = 0;
    matrix.for_each(|row, column, value| {
        let apart = numbers.number(row).abs_diff(numbers.number(column));
        width = width.max(if value == 0.0 { 0 } else { apart });
    });
    if !is_narrow(width) {
        return None;
    }
    let mut band = SymmetricMatrix::banded(matrix.order(), width);
    matrix.for_each(|row, column, value| {
        if value != 0.0 {
            band.add(numbers.number(row), numbers.number(column), value);
        }
    });
    Some(band)
}

impl BandRows {
    fn of(factor: &BandFactor) -> Self {
        let (order, width) = (factor.order, factor.width);
        let length = NEAR + width.saturating_sub(NEAR).next_multiple_of(FAR);
        let [mut before, mut behind] = [(); 2].map(|()| vec![0.0; order * length]);
        let reciprocals = factor.reciprocals[width..].to_vec();
        for c in 0..order {
            for m in 1..=width.min(order - 1 - c) {
                let entry = factor.columns[(c + width) * stride(width) + m];
                behind[c * length + m - 1] = entry * reciprocals[c];
                before[(c + m) * length + length - m] = entry * reciprocals[c + m];
            }
        }
        BandRows { order, length, reciprocals, before, behind }
    }
}

for_lanes! {
    /// Solves for one right-hand side between as many zeros on both sides as a row is long.
    fn solve(rows: &BandRows, x: &mut [f64]) -> () = solve_between
}

#[inline(always)]
fn solve_between<const FUSED: bool>(rows: &BandRows, x: &mut [f64]) {
    let length = rows.length;
    // The last few solved, from the farthest to the nearest, wait in registers.
    let mut last = [0.0; NEAR];
    for c in 0..rows.order {
        let (far, near) = rows.before[c * length..][..length].split_at(length - NEAR);
        let mut z = x[c + length] * rows.reciprocals[c] - sum_of::<FUSED>(far, &x[c..][..length - NEAR]);
        for i in 0..NEAR {
            z = multiply_add::<FUSED>(-near[i], last[i], z);
        }
        x[c + length] = z;
        last = [last[1], last[2], last[3], z];
    }
    last = [0.0; NEAR];
    for c in (0..rows.order).rev() {
        let (near, far) = rows.behind[c * length..][..length].split_at(NEAR);
        let known = &x[c + length + 1 + NEAR..][..length - NEAR];
        let mut solved = x[c + length] - sum_of::<FUSED>(far, known);
        for i in 0..NEAR {
            solved = multiply_add::<FUSED>(-near[NEAR - 1 - i], last[i], solved);
        }
        x[c + length] = solved;
        last = [last[1], last[2], last[3], solved];
    }
}

/// Σ aᵢbᵢ of a whole number of FAR.
#[inline(always)]
fn sum_of<const FUSED: bool>(a: &[f64], b: &[f64]) -> f64 {
    let mut sums = [0.0; FAR];
    for (a, b) in a.as_chunks::<FAR>().0.iter().zip(b.as_chunks::<FAR>().0) {
        for i in 0..FAR {
            sums[i] = multiply_add::<FUSED>(a[i], b[i], sums[i]);
        }
    }
    (sums[0] + sums[2]) + (sums[1] + sums[3])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_solve_as_the_factor_does() {
        for (order, width) in [(1, 0), (7, 0), (3, 2), (9, 1), (12, 4), (40, 5), (30, 11), (60, 23), (80, 70)]
        {
            let mut band = SymmetricMatrix::banded(order, width);
            let mut sparse = SymmetricMatrix::sparse(order);
            // The first row reaches the last, so that only other numbers make a narrow band.
            let mut ring = SymmetricMatrix::sparse(order);
            for column in 0..order {
                for row in column..(column + width + 1).min(order) {
                    let apart = ((3 * row + 5 * column) % 7) as f64 / 7.0 - 0.5;
                    let value = if row == column { 2.0 + width as f64 } else { apart };
                    for matrix in [&mut band, &mut sparse, &mut ring] {
                        matrix.add(row, column, value);
                    }
                }
            }
            ring.add(order - 1, 0, 0.3);
            let b: Vec<f64> = (0..order).map(|i| (i as f64).cos()).collect();
            for matrix in [band, sparse, ring] {
                let (mut found, mut expected) = (b.clone(), b.clone());
                RowFactor::of(&matrix).unwrap().solve(&mut found, &mut Vec::new());
                matrix.factor().unwrap().solve(&mut expected);
                let error = found.iter().zip(&expected).fold(0.0_f64, |most, (a, b)| most.max((a - b).abs()));
                assert!(error < 1e-14, "{order} {width}: {error}");
            }
        }
    }

    #[test]
    fn a_matrix_that_fails_names_its_own_row() {
        let mut matrix = SymmetricMatrix::sparse(60);
        (0..60).for_each(|i| matrix.add(i, i, if i == 41 { 0.0 } else { 1.0 }));
        matrix.add(59, 0, 0.1);
        assert_eq!(RowFactor::of(&matrix).unwrap_err().index, matrix.factor().unwrap_err().index);
    }
}
