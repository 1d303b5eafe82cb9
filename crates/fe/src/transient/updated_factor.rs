//! Factor of a matrix with a few directions added.
//!
//! Dampers that reach over the whole structure would fill the matrix of a step; its factor therefore stays that of the matrix
//! without them and is corrected (Woodbury):
//!
//! ```text
//! (A + B W Bᵀ)⁻¹ = A⁻¹ − A⁻¹B (W⁻¹ + BᵀA⁻¹B)⁻¹ BᵀA⁻¹
//! ```

use nalgebra::DMatrix;

use super::damper::rows_of;
use crate::FeError;
use crate::linalg::{Columns, RowFactor, Rows, SymmetricMatrix};
use crate::model::direction::Direction;

/// Factor of a matrix with `w b bᵀ` of a few directions b added.
pub(super) struct UpdatedFactor {
    factor: RowFactor,
    /// A⁻¹ where A is full: its rows multiply faster than a factor, whose rows wait for each other, solves.
    whole: Option<Rows>,
    /// b of each direction, row by row.
    along: Columns,
    /// `A⁻¹b` of each direction, row by row.
    answers: Columns,
    /// −(W⁻¹ + BᵀA⁻¹B)⁻¹, which is symmetric.
    correction: Columns,
}

/// Vectors that solutions work in.
#[derive(Default)]
pub(super) struct SolverRoom {
    vector: Vec<f64>,
    moved: Vec<f64>,
    forces: Vec<f64>,
}

/// Least order of a full matrix whose inverse is worth being made.
const LEAST_INVERTED: usize = 8;

impl UpdatedFactor {
    /// Those of zero weight are left out.
    pub fn of(matrix: &SymmetricMatrix, along: &[(&Direction, f64)]) -> Result<Self, FeError> {
        let order = matrix.order();
        let factor = RowFactor::of(matrix).map_err(|failure| FeError::Loose { equation: failure.index })?;
        let added: Vec<_> = along.iter().filter(|(_, weight)| *weight > 0.0).collect();
        let along = rows_of(added.iter().map(|(direction, _)| *direction), order);
        let (mut answers, mut room) = (along.clone(), Vec::new());
        (0..added.len()).for_each(|row| factor.solve(answers.row_mut(row), &mut room));
        let small = DMatrix::from_fn(added.len(), added.len(), |i, j| {
            let own = if i == j { 1.0 / added[i].1 } else { 0.0 };
            own + added[i].0.dot(answers.row(j))
        });
        let inverse = small.cholesky().ok_or(FeError::Loose { equation: 0 })?.inverse();
        let mut correction = Columns::zeros(added.len(), added.len());
        for row in 0..added.len() {
            (0..added.len()).for_each(|column| correction.set(row, column, -inverse[(row, column)]));
        }
        let full = matrix.half_bandwidth().is_some_and(|width| width + 1 == order);
        let inverted = full && added.is_empty() && order >= LEAST_INVERTED;
        let whole = inverted.then(|| Rows::of(&inverse_of(&factor, order)));
        Ok(UpdatedFactor { factor, whole, along, answers, correction })
    }

    /// Solves in place.
    pub fn solve(&self, x: &mut [f64], room: &mut SolverRoom) {
        if let Some(inverse) = &self.whole {
            room.vector.clear();
            room.vector.extend_from_slice(x);
            inverse.multiply(&room.vector, x);
            return;
        }
        self.factor.solve(x, &mut room.vector);
        let count = self.along.order();
        room.moved.resize(count, 0.0);
        self.along.multiply(x, &mut room.moved);
        room.forces.clear();
        room.forces.resize(count, 0.0);
        self.correction.add_rows(&room.moved, &mut room.forces);
        self.answers.add_rows(&room.forces, x);
    }
}

/// A⁻¹, full.
fn inverse_of(factor: &RowFactor, order: usize) -> SymmetricMatrix {
    let mut inverse = SymmetricMatrix::banded(order, order.saturating_sub(1));
    let mut room = Vec::new();
    for column in 0..order {
        let mut x = vec![0.0; order];
        x[column] = 1.0;
        factor.solve(&mut x, &mut room);
        (column..order).for_each(|row| inverse.add(row, column, x[row]));
    }
    inverse
}
