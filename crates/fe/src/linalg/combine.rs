//! Sums of symmetric matrices, products with several vectors, and signs of pivots.

use super::band_factor::BandFactor;
use super::columns::Columns;
use super::lanes::{LANES, block};
use super::matrix::{Storage, SymmetricMatrix};
use super::sparse_factor::SparseFactor;

impl SymmetricMatrix {
    /// `A + factor·B`.
    ///
    /// # Panics
    /// When the other matrix has entries outside this one or its band.
    pub fn plus(&self, factor: f64, other: &SymmetricMatrix) -> SymmetricMatrix {
        let mut sum = self.clone();
        match (&mut sum.storage, &other.storage) {
            (Storage::Band(a), Storage::Band(b)) if (a.order, a.width) == (b.order, b.width) => {
                a.values.iter_mut().zip(&b.values).for_each(|(a, b)| *a += factor * b);
            }
            _ => other.for_each(|row, column, value| sum.add(row, column, factor * value)),
        }
        sum
    }

    /// Visits the entries (row, column, value) of the lower triangle.
    pub(crate) fn for_each(&self, visit: impl FnMut(usize, usize, f64)) {
        match &self.storage {
            Storage::Band(band) => band.for_each(visit),
            Storage::Sparse(sparse) => sparse.for_each(visit),
        }
    }

    /// Products `Y = A·X` of all columns.
    ///
    /// # Panics
    /// When the number of rows is not the order.
    pub fn multiply_columns(&self, x: &Columns) -> Columns {
        assert_eq!(x.order(), self.order(), "rows of the vectors");
        let mut y = Columns::zeros(x.order(), x.count());
        match &self.storage {
            Storage::Band(band) if x.width() == LANES => {
                band.multiply_block(x.values().as_chunks().0, y.values_mut().as_chunks_mut().0);
            }
            Storage::Band(band) => {
                let mut product = vec![[0.0; LANES]; x.order()];
                for start in (0..x.width()).step_by(LANES) {
                    let strip: Vec<_> =
                        x.values().chunks_exact(x.width()).map(|row| block(row, start)).collect();
                    band.multiply_block(&strip, &mut product);
                    let rows = y.values_mut().chunks_exact_mut(x.width());
                    rows.zip(&product).for_each(|(row, sum)| row[start..start + LANES].copy_from_slice(sum));
                }
            }
            Storage::Sparse(sparse) => sparse.for_each(|row, column, value| {
                y.add_row(row, value, x.row(column));
                if row != column {
                    y.add_row(column, value, x.row(row));
                }
            }),
        }
        y
    }

    /// Σ |x_i||A_ij||x_j|, the size of the terms of the energy xᵀAx.
    pub fn magnitude(&self, x: &[f64]) -> f64 {
        match &self.storage {
            Storage::Band(band) => band.magnitude(x),
            Storage::Sparse(sparse) => sparse.magnitude(x),
        }
    }

    /// Number of negative pivots of `A = L·D·Lᵀ`, which is that of negative eigenvalues (Sylvester's law of
    /// inertia); none when a pivot is zero or not finite.
    pub fn negative_pivots(&self) -> Option<usize> {
        match &self.storage {
            Storage::Band(band) => BandFactor::negative_pivots(band),
            Storage::Sparse(sparse) => SparseFactor::negative_pivots(sparse),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Second differences less `shift`, banded or sparse: its eigenvalues are 2 − 2·cos(iπ/(n + 1)) − shift.
    fn differences(mut matrix: SymmetricMatrix, shift: f64) -> SymmetricMatrix {
        for i in 0..matrix.order() {
            matrix.add(i, i, 2.0 - shift);
            if i > 0 {
                matrix.add(i, i - 1, -1.0);
            }
        }
        matrix
    }

    fn both(order: usize, shift: f64) -> [SymmetricMatrix; 2] {
        [SymmetricMatrix::banded(order, 5), SymmetricMatrix::sparse(order)]
            .map(|empty| differences(empty, shift))
    }

    #[test]
    fn negative_pivots_are_as_many_as_negative_eigenvalues() {
        let order = 30;
        let eigenvalue = |i: usize| 2.0 - 2.0 * (i as f64 * std::f64::consts::PI / (order + 1) as f64).cos();
        for below in 0..=order {
            let shift = 0.5 * (eigenvalue(below) + eigenvalue(below + 1));
            for matrix in both(order, shift) {
                assert_eq!(matrix.negative_pivots(), Some(below), "{shift}");
            }
        }
    }

    #[test]
    fn a_pivot_of_zero_gives_no_count() {
        assert!(both(4, 2.0).iter().all(|matrix| matrix.negative_pivots().is_none()));
    }

    #[test]
    fn sums_and_products_of_columns_are_those_of_the_entries() {
        for matrix in both(20, 0.3) {
            let sum = matrix.plus(-2.0, &both(20, 1.0)[0]);
            let mut x = Columns::zeros(20, 11);
            (0..220).for_each(|i| x.set(i / 11, i % 11, ((7 * i) % 13) as f64 - 6.0));
            let product = sum.multiply_columns(&x);
            for column in 0..11 {
                let one: Vec<f64> = x.column(column).collect();
                let mut expected = [vec![0.0; 20], vec![0.0; 20]];
                matrix.multiply(&one, &mut expected[0]);
                both(20, 1.0)[1].multiply(&one, &mut expected[1]);
                for row in 0..20 {
                    let entry = expected[0][row] - 2.0 * expected[1][row];
                    assert!((product.get(row, column) - entry).abs() < 1e-12);
                }
            }
        }
    }
}
