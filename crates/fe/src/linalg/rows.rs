//! Products of one matrix with many single vectors.

use super::lanes::{LANES, Lanes, for_lanes, multiply_add};
use super::matrix::{Storage, SymmetricMatrix};

/// A symmetric matrix laid out for quick products with single vectors.
///
/// Each row of a band stands with all its entries side by side, on both sides of the diagonal, so that a
/// product reads two unbroken runs of numbers.
#[derive(Debug, Clone)]
pub struct Rows {
    kind: Kind,
}

#[derive(Debug, Clone)]
enum Kind {
    Diagonal(Vec<f64>),
    Band(BandRows),
    Other(SymmetricMatrix),
}

#[derive(Debug, Clone)]
pub(super) struct BandRows {
    order: usize,
    /// Farthest entry from the diagonal.
    width: usize,
    /// Entries of a row: a whole number of blocks of lanes, where the matrix has so many.
    length: usize,
    values: Vec<f64>,
}

impl Rows {
    /// The rows of a matrix.
    pub fn of(matrix: &SymmetricMatrix) -> Self {
        let Storage::Band(band) = &matrix.storage else {
            return Rows { kind: Kind::Other(matrix.clone()) };
        };
        let order = band.order;
        // A band may be wider than what stands in it.
        let mut width = 0;
        band.for_each(|row, column, value| width = width.max(if value == 0.0 { 0 } else { row - column }));
        if width == 0 {
            return Rows { kind: Kind::Diagonal((0..order).map(|i| band.diagonal(i)).collect()) };
        }
        let length = (2 * width + 1).next_multiple_of(LANES).min(order);
        let mut rows = BandRows { order, width, length, values: vec![0.0; order * length] };
        band.for_each(|row, column, value| {
            if row - column > width {
                return;
            }
            for (row, column) in [(row, column), (column, row)] {
                let place = row * length + column - rows.first(row);
                rows.values[place] = value;
            }
        });
        Rows { kind: Kind::Band(rows) }
    }

    /// Product y = A·x.
    ///
    /// # Panics
    /// When the length of a vector is not the order.
    pub fn multiply(&self, x: &[f64], y: &mut [f64]) {
        match &self.kind {
            Kind::Diagonal(values) => {
                assert_eq!((x.len(), y.len()), (values.len(), values.len()), "lengths of the vectors");
                y.iter_mut().zip(values.iter().zip(x)).for_each(|(y, (value, x))| *y = value * x);
            }
            Kind::Band(rows) => {
                assert_eq!((x.len(), y.len()), (rows.order, rows.order), "lengths of the vectors");
                multiply(Lanes::widest(), rows, x, y);
            }
            Kind::Other(matrix) => matrix.multiply(x, y),
        }
    }
}

impl BandRows {
    /// Column at which the run of a row begins.
    #[inline(always)]
    fn first(&self, row: usize) -> usize {
        row.saturating_sub(self.width).min(self.order - self.length)
    }
}

for_lanes! {
    /// Product with one vector.
    fn multiply(rows: &BandRows, x: &[f64], y: &mut [f64]) -> () = multiply_rows
}

#[inline(always)]
fn multiply_rows<const FUSED: bool>(rows: &BandRows, x: &[f64], y: &mut [f64]) {
    for (row, (sum, values)) in y.iter_mut().zip(rows.values.chunks_exact(rows.length)).enumerate() {
        *sum = dot::<FUSED>(values, &x[rows.first(row)..][..rows.length]);
    }
}

/// Σ aᵢbᵢ in as many partial sums as there are lanes.
#[inline(always)]
fn dot<const FUSED: bool>(a: &[f64], b: &[f64]) -> f64 {
    let (a, b) = (a.as_chunks::<LANES>(), b.as_chunks::<LANES>());
    let mut sums = [0.0; LANES];
    for (a, b) in a.0.iter().zip(b.0) {
        for i in 0..LANES {
            sums[i] = multiply_add::<FUSED>(a[i], b[i], sums[i]);
        }
    }
    for (i, (a, b)) in a.1.iter().zip(b.1).enumerate() {
        sums[i] = multiply_add::<FUSED>(*a, *b, sums[i]);
    }
    let [a, b, c, d, e, f, g, h] = sums;
    ((a + e) + (c + g)) + ((b + f) + (d + h))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_multiply_as_the_matrix_does() {
        for (order, width) in [(1, 0), (4, 3), (9, 2), (40, 11), (12, 7), (50, 23)] {
            let mut band = SymmetricMatrix::banded(order, width);
            let mut sparse = SymmetricMatrix::sparse(order);
            for column in 0..order {
                for row in column..(column + width + 1).min(order) {
                    let value = ((3 * row + 5 * column) % 7) as f64 - 2.5;
                    band.add(row, column, value);
                    sparse.add(row, column, value);
                }
            }
            let x: Vec<f64> = (0..order).map(|i| (i as f64).sin()).collect();
            let (mut expected, mut found) = (vec![0.0; order], vec![1.0; order]);
            band.multiply(&x, &mut expected);
            let wider = SymmetricMatrix::banded(order, order - 1).plus(1.0, &band);
            for matrix in [&band, &sparse, &wider] {
                Rows::of(matrix).multiply(&x, &mut found);
                let error = found.iter().zip(&expected).fold(0.0_f64, |most, (a, b)| most.max((a - b).abs()));
                assert!(error < 1e-13 * order as f64, "{order} {width}: {error}");
            }
        }
    }
}
