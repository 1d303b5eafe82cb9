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
    pub(super) fn for_each(&self, visit: impl FnMut(usize, usize, f64)) {
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
                    let strip: Vec<_> = x.values().chunks_exact(x.width()).map(|row| block(row, start)).collect();
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
