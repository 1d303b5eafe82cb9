//! Factored matrix.

use super::band_factor::BandFactor;
use super::columns::Columns;
use super::sparse_factor::SparseFactor;

/// A factored symmetric positive definite matrix, ready to solve.
#[derive(Debug)]
pub struct Factor {
    pub(super) kind: Kind,
}

#[derive(Debug)]
pub(super) enum Kind {
    Band(BandFactor),
    Sparse(Box<SparseFactor>),
}

impl Factor {
    /// Number of unknowns.
    pub fn order(&self) -> usize {
        match &self.kind {
            Kind::Band(factor) => factor.order,
            Kind::Sparse(factor) => factor.order(),
        }
    }

    /// Solves A·x = b in place: b goes in, x comes out.
    ///
    /// # Panics
    /// When the length is not the order.
    pub fn solve(&self, x: &mut [f64]) {
        assert_eq!(x.len(), self.order(), "length of the right-hand side");
        match &self.kind {
            Kind::Band(factor) => factor.solve(x),
            Kind::Sparse(factor) => factor.solve(x, 1),
        }
    }

    /// Solves for all columns in place.
    ///
    /// # Panics
    /// When the number of rows is not the order.
    pub fn solve_columns(&self, columns: &mut Columns) {
        assert_eq!(columns.order(), self.order(), "rows of the right-hand sides");
        match &self.kind {
            Kind::Band(factor) => factor.solve_columns(columns),
            Kind::Sparse(factor) => {
                let width = columns.width();
                factor.solve(columns.values_mut(), width);
            }
        }
    }
}
