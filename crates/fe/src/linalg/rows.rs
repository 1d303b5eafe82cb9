//! Products of one matrix with many single vectors.

use super::columns::Columns;
use super::lanes::{LANES, Lanes, for_lanes};
use super::matrix::{SymmetricMatrix, is_narrow};
use super::products::dot;

/// A symmetric matrix laid out for quick products with single vectors.
///
/// Each row of a band stands with all its entries side by side, on both sides of the diagonal, so that a
/// product reads two unbroken runs of numbers; of a full matrix all rows are added up, each times its number of the vector.
#[derive(Debug, Clone)]
pub struct Rows {
    kind: Kind,
}

#[derive(Debug, Clone)]
enum Kind {
    Diagonal(Vec<f64>),
    Full(Columns),
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
        let order = matrix.order();
        // A band may be wider than what stands in it, and what may stand anywhere may stand near the diagonal.
        let mut width = 0;
        matrix.for_each(|row, column, value| width = width.max(if value == 0.0 { 0 } else { row - column }));
        if width == 0 {
            return Rows { kind: Kind::Diagonal((0..order).map(|i| matrix.diagonal(i)).collect()) };
        }
        if width + 1 == order {
            return Rows { kind: Kind::Full(full(matrix)) };
        }
        if matrix.half_bandwidth().is_none() && !is_narrow(width) {
            return Rows { kind: Kind::Other(matrix.clone()) };
        }
        let length = (2 * width + 1).next_multiple_of(LANES).min(order);
        let mut rows = BandRows { order, width, length, values: vec![0.0; order * length] };
        matrix.for_each(|row, column, value| {
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
            Kind::Full(columns) => {
                y.fill(0.0);
                columns.add_rows(x, y);
            }
            Kind::Band(rows) => {
                assert_eq!((x.len(), y.len()), (rows.order, rows.order), "lengths of the vectors");
                multiply(Lanes::widest(), rows, x, y);
            }
            Kind::Other(matrix) => matrix.multiply(x, y),
        }
    }
}

/// Both triangles.
fn full(matrix: &SymmetricMatrix) -> Columns {
    let mut full = Columns::zeros(matrix.order(), matrix.order());
    matrix.for_each(|row, column, value| {
        full.set(row, column, value);
        full.set(column, row, value);
    });
    full
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
