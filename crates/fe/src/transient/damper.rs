//! Linear dampers along single directions, which may reach over the whole structure.
//!
//! They add `Σ c b bᵀ` to the damping. Where b names few freedoms that is an entry or two, but the momenta of a
//! natural mode name all of them, so that they stay apart from the matrix.

use crate::linalg::Columns;
use crate::model::direction::Direction;

/// A linear damper along one direction b: the force `−c bᵀu̇` acts along b.
#[derive(Debug, Clone, PartialEq)]
pub struct LinearDamper {
    /// b.
    pub direction: Direction,
    /// c, N s/m for a direction of displacements; zero or more.
    pub damping: f64,
}

/// The dampers of a system laid out for quick products with single vectors.
pub(super) struct DamperRows {
    /// b of each, row by row.
    along: Columns,
    /// c of each.
    damping: Vec<f64>,
    /// Motion or force of each.
    each: Vec<f64>,
}

impl DamperRows {
    /// Those of no damping are left out.
    pub fn of(dampers: &[LinearDamper], order: usize) -> Self {
        let damping: Vec<f64> = dampers.iter().map(|one| one.damping).filter(|c| *c > 0.0).collect();
        let along = rows_of(dampers.iter().filter(|one| one.damping > 0.0).map(|one| &one.direction), order);
        DamperRows { along, each: vec![0.0; damping.len()], damping }
    }

    pub fn is_empty(&self) -> bool {
        self.damping.is_empty()
    }

    /// Adds their forces `C x` at a velocity to a vector.
    pub fn add_forces(&mut self, x: &[f64], sum: &mut [f64]) {
        self.along.multiply(x, &mut self.each);
        self.each.iter_mut().zip(&self.damping).for_each(|(each, c)| *each *= c);
        self.along.add_rows(&self.each, sum);
    }

    /// `xᵀC x`.
    pub fn power(&mut self, x: &[f64]) -> f64 {
        self.along.multiply(x, &mut self.each);
        self.each.iter().zip(&self.damping).map(|(each, c)| c * each * each).sum()
    }
}

/// Directions over so many freedoms, row by row.
pub(super) fn rows_of<'d>(directions: impl Iterator<Item = &'d Direction>, order: usize) -> Columns {
    let directions: Vec<_> = directions.collect();
    let mut rows = Columns::zeros(directions.len(), order);
    directions.iter().enumerate().for_each(|(row, direction)| direction.add_to(1.0, rows.row_mut(row)));
    rows
}
