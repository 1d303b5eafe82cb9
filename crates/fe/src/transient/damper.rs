//! Linear dampers along single directions, which may reach over the whole structure.
//!
//! They add `Σ c b bᵀ` to the damping. Where b names few freedoms that is an entry or two, but the momenta of a
//! natural mode name all of them; the factor of a step therefore stays that of the matrix without them and is
//! corrected (Woodbury):
//!
//! ```text
//! (A + B W Bᵀ)⁻¹ = A⁻¹ − A⁻¹B (W⁻¹ + BᵀA⁻¹B)⁻¹ BᵀA⁻¹
//! ```

use nalgebra::DMatrix;

use crate::FeError;
use crate::linalg::{Factor, Rows, SymmetricMatrix};
use crate::model::direction::Direction;

/// A linear damper along one direction b: the force `−c bᵀu̇` acts along b.
#[derive(Debug, Clone, PartialEq)]
pub struct LinearDamper {
    /// b.
    pub direction: Direction,
    /// c, N s/m for a direction of displacements; zero or more.
    pub damping: f64,
}

/// Factor of a matrix with `w b bᵀ` of a few directions b added.
pub(super) struct UpdatedFactor<'a> {
    factor: Factor,
    /// A⁻¹ where A is full: its rows multiply faster than a factor, whose rows wait for each other, solves.
    whole: Option<Rows>,
    along: Vec<&'a Direction>,
    /// `A⁻¹b` of each direction.
    columns: Vec<Vec<f64>>,
    /// (W⁻¹ + BᵀA⁻¹B)⁻¹.
    inverse: DMatrix<f64>,
}

/// Least order of a full matrix whose inverse is worth being made.
const LEAST_INVERTED: usize = 8;

impl<'a> UpdatedFactor<'a> {
    /// Those of zero weight are left out.
    pub fn of(matrix: &SymmetricMatrix, along: &[(&'a Direction, f64)]) -> Result<Self, FeError> {
        let factor = matrix.factor().map_err(|failure| FeError::Loose { equation: failure.index })?;
        let added: Vec<_> = along.iter().filter(|(_, weight)| *weight > 0.0).collect();
        let column = |direction: &Direction| {
            let mut column = vec![0.0; matrix.order()];
            direction.add_to(1.0, &mut column);
            factor.solve(&mut column);
            column
        };
        let columns: Vec<_> = added.iter().map(|(direction, _)| column(direction)).collect();
        let small = DMatrix::from_fn(added.len(), added.len(), |i, j| {
            let own = if i == j { 1.0 / added[i].1 } else { 0.0 };
            own + added[i].0.dot(&columns[j])
        });
        let inverse = small.cholesky().ok_or(FeError::Loose { equation: 0 })?.inverse();
        let full = matrix.half_bandwidth().is_some_and(|width| width + 1 == matrix.order());
        let inverted = full && added.is_empty() && matrix.order() >= LEAST_INVERTED;
        Ok(UpdatedFactor {
            whole: inverted.then(|| Rows::of(&inverse_of(&factor))),
            factor,
            along: added.iter().map(|(direction, _)| *direction).collect(),
            columns,
            inverse,
        })
    }

    /// Solves in place; `room` is as long as x.
    pub fn solve(&self, x: &mut [f64], room: &mut [f64]) {
        if let Some(inverse) = &self.whole {
            room.copy_from_slice(x);
            inverse.multiply(room, x);
            return;
        }
        self.factor.solve(x);
        let moved: Vec<f64> = self.along.iter().map(|direction| direction.dot(x)).collect();
        for (i, column) in self.columns.iter().enumerate() {
            let force: f64 = moved.iter().enumerate().map(|(j, moved)| self.inverse[(i, j)] * moved).sum();
            x.iter_mut().zip(column).for_each(|(x, y)| *x -= force * y);
        }
    }
}

/// A⁻¹, full.
fn inverse_of(factor: &Factor) -> SymmetricMatrix {
    let order = factor.order();
    let mut inverse = SymmetricMatrix::banded(order, order.saturating_sub(1));
    for column in 0..order {
        let mut x = vec![0.0; order];
        x[column] = 1.0;
        factor.solve(&mut x);
        (column..order).for_each(|row| inverse.add(row, column, x[row]));
    }
    inverse
}
