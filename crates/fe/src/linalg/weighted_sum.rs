//! Weighted sums of rows of columns: one linear reading of many vectors.

use super::columns::Columns;
use super::lanes::{LANES, Lanes, for_lanes, multiply_add};

/// Blocks that are summed side by side, so that one sum need not wait for the other.
const SIDE_BY_SIDE: usize = 4;

impl Columns {
    /// `Σ factor·row` over given rows, one number for each column.
    ///
    /// # Panics
    /// When a row is not there, or the sums are fewer than the columns.
    pub fn weighted_sum(&self, rows: &[(usize, f64)], sums: &mut [f64]) {
        weighted_sum(Lanes::widest(), self, rows, &mut sums[..self.count()]);
    }
}

for_lanes! {
    /// Weighted sum of rows.
    fn weighted_sum(columns: &Columns, rows: &[(usize, f64)], sums: &mut [f64]) -> () = sum_of_rows
}

#[inline(always)]
fn sum_of_rows<const FUSED: bool>(columns: &Columns, rows: &[(usize, f64)], sums: &mut [f64]) {
    let strips = sums.chunks_mut(SIDE_BY_SIDE * LANES).enumerate();
    for (strip, sums) in strips {
        let start = strip * SIDE_BY_SIDE * LANES;
        if sums.len() == SIDE_BY_SIDE * LANES {
            let found = strip_of_rows::<FUSED, { SIDE_BY_SIDE * LANES }>(columns, rows, start);
            sums.copy_from_slice(&found);
        } else {
            for (block, sums) in sums.chunks_mut(LANES).enumerate() {
                let found = strip_of_rows::<FUSED, LANES>(columns, rows, start + block * LANES);
                sums.copy_from_slice(&found[..sums.len()]);
            }
        }
    }
}

#[inline(always)]
fn strip_of_rows<const FUSED: bool, const N: usize>(
    columns: &Columns,
    rows: &[(usize, f64)],
    start: usize,
) -> [f64; N] {
    let mut sums = [0.0; N];
    for (row, factor) in rows {
        let values = &columns.values()[row * columns.width() + start..][..N];
        for i in 0..N {
            sums[i] = multiply_add::<FUSED>(*factor, values[i], sums[i]);
        }
    }
    sums
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sums_of_rows_are_those_of_each_column() {
        for count in [1, 8, 13, 32, 45, 64] {
            let mut columns = Columns::zeros(5, count);
            for column in 0..count {
                (0..5).for_each(|row| columns.set(row, column, ((3 * row + 7 * column) % 11) as f64 - 4.5));
            }
            let rows = [(4, 2.0), (0, -0.5), (2, 3.25)];
            let mut sums = vec![f64::NAN; count];
            columns.weighted_sum(&rows, &mut sums);
            for (column, sum) in sums.iter().enumerate() {
                let expected: f64 = rows.iter().map(|(row, factor)| factor * columns.get(*row, column)).sum();
                assert_eq!(*sum, expected, "{count} {column}");
            }
        }
    }
}
