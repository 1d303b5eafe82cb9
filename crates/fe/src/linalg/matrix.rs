//! Symmetric positive definite matrix.

use super::band::Band;
use super::band_factor::BandFactor;
use super::factor::{Factor, Kind as FactorKind};
use super::pivot::PivotFailure;
use super::sparse::Sparse;

/// Widest half-bandwidth for which the band kernel is taken: a chain of stations with a few bypassing
/// springs stays below.
const WIDEST_BAND: usize = 48;

/// Whether the band kernel is taken for a half-bandwidth.
pub(crate) fn is_narrow(half_bandwidth: usize) -> bool {
    half_bandwidth <= WIDEST_BAND
}

/// A symmetric positive definite matrix, assembled entry by entry.
///
/// Only one triangle is kept. Rows and columns count from 0.
#[derive(Debug, Clone)]
pub struct SymmetricMatrix {
    pub(super) storage: Storage,
}

#[derive(Debug, Clone)]
pub(super) enum Storage {
    Band(Band),
    Sparse(Sparse),
}

impl SymmetricMatrix {
    /// Zero matrix whose entries lie within `half_bandwidth` of the diagonal.
    pub fn banded(order: usize, half_bandwidth: usize) -> Self {
        SymmetricMatrix { storage: Storage::Band(Band::zeros(order, half_bandwidth)) }
    }

    /// Zero matrix with entries anywhere.
    pub fn sparse(order: usize) -> Self {
        SymmetricMatrix { storage: Storage::Sparse(Sparse::zeros(order)) }
    }

    /// Zero matrix with entries anywhere, whose places are known ahead: for each column the rows from the diagonal
    /// down, sorted.
    pub fn with_places(rows: &[Vec<usize>]) -> Self {
        SymmetricMatrix { storage: Storage::Sparse(Sparse::with_places(rows)) }
    }

    /// Zero matrix stored as suits its half-bandwidth.
    pub fn for_coupling(order: usize, half_bandwidth: usize) -> Self {
        if is_narrow(half_bandwidth) {
            SymmetricMatrix::banded(order, half_bandwidth)
        } else {
            SymmetricMatrix::sparse(order)
        }
    }

    /// Whether it is stored as [`SymmetricMatrix::for_coupling`] would store a matrix of that order and half-bandwidth.
    pub(crate) fn suits(&self, order: usize, half_bandwidth: usize) -> bool {
        let alike = match &self.storage {
            Storage::Band(band) => band.width == half_bandwidth,
            Storage::Sparse(_) => !is_narrow(half_bandwidth),
        };
        alike && self.order() == order
    }

    /// Number of rows.
    pub fn order(&self) -> usize {
        match &self.storage {
            Storage::Band(band) => band.order,
            Storage::Sparse(sparse) => sparse.order(),
        }
    }

    /// Distance from the diagonal that entries may have; `None` when they may be anywhere.
    pub fn half_bandwidth(&self) -> Option<usize> {
        match &self.storage {
            Storage::Band(band) => Some(band.width),
            Storage::Sparse(_) => None,
        }
    }

    /// Sets all entries to zero and keeps the storage.
    pub fn reset(&mut self) {
        match &mut self.storage {
            Storage::Band(band) => band.values.fill(0.0),
            Storage::Sparse(sparse) => sparse.reset(),
        }
    }

    /// Adds to the entry (row, column) and with it to (column, row); give each pair once.
    ///
    /// # Panics
    /// When the entry is outside the matrix or its band.
    pub fn add(&mut self, row: usize, column: usize, value: f64) {
        let (row, column) = (row.max(column), row.min(column));
        match &mut self.storage {
            Storage::Band(band) => band.add(row, column, value),
            Storage::Sparse(sparse) => sparse.add(row, column, value),
        }
    }

    /// Adds to the entries below each other in one column, from the row `first` on, at or below the diagonal.
    ///
    /// # Panics
    /// When an entry is outside the matrix, its band or its lower triangle.
    pub fn add_run(&mut self, first: usize, column: usize, values: &[f64]) {
        match &mut self.storage {
            Storage::Band(band) => band.add_run(first, column, values),
            Storage::Sparse(sparse) => sparse.add_run(first, column, values),
        }
    }

    /// Entry on the diagonal.
    pub fn diagonal(&self, index: usize) -> f64 {
        match &self.storage {
            Storage::Band(band) => band.diagonal(index),
            Storage::Sparse(sparse) => sparse.diagonal(index),
        }
    }

    /// Product y = A·x.
    pub fn multiply(&self, x: &[f64], y: &mut [f64]) {
        y.fill(0.0);
        let add = |row: usize, column: usize, value: f64| {
            y[row] += value * x[column];
            if row != column {
                y[column] += value * x[row];
            }
        };
        match &self.storage {
            Storage::Band(band) => band.for_each(add),
            Storage::Sparse(sparse) => sparse.for_each(add),
        }
    }

    /// Factors the matrix.
    ///
    /// # Errors
    /// [`PivotFailure`] when the matrix is not positive definite beyond rounding, or not finite.
    pub fn factor(&self) -> Result<Factor, PivotFailure> {
        let mut factor = Factor { kind: self.empty_factor() };
        self.factor_into(&mut factor)?;
        Ok(factor)
    }

    /// Factors the matrix into the storage of an earlier factor, of this or another matrix.
    ///
    /// # Errors
    /// As [`SymmetricMatrix::factor`]; the factor is then of no use until it is made anew.
    pub fn factor_into(&self, factor: &mut Factor) -> Result<(), PivotFailure> {
        match (&self.storage, &mut factor.kind) {
            (Storage::Band(band), FactorKind::Band(factor)) => factor.refactor(band),
            (Storage::Sparse(sparse), FactorKind::Sparse(factor)) => factor.refactor(sparse),
            (_, kind) => {
                *kind = self.empty_factor();
                self.factor_into(factor)
            }
        }
    }

    fn empty_factor(&self) -> FactorKind {
        match self.storage {
            Storage::Band(_) => FactorKind::Band(BandFactor::default()),
            Storage::Sparse(_) => FactorKind::Sparse(Box::default()),
        }
    }
}
