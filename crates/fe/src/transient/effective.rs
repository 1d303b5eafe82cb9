//! The linear system of one length of step.

use super::damper::UpdatedFactor;
use super::scheme::{Scheme, StepFormulas};
use super::system::DynamicSystem;
use crate::FeError;
use crate::linalg::SymmetricMatrix;
use crate::model::direction::Direction;

/// Factor of a matrix with what the directions of the laws need of its inverse.
pub(super) struct Solver<'a> {
    pub factor: UpdatedFactor<'a>,
    /// `A⁻¹b` of each direction, one after the other.
    columns: Vec<f64>,
    /// G = `bᵀA⁻¹b`, row by row.
    pub compliance: Vec<f64>,
}

/// K + c_m M + c_v C of one length of step.
pub(super) struct EffectiveSystem<'a> {
    pub formulas: StepFormulas,
    pub solver: Solver<'a>,
}

impl<'a> Solver<'a> {
    /// - `added`: directions b with the w of each, for `w bbᵀ` on top of the matrix
    pub fn new(
        matrix: &SymmetricMatrix,
        added: &[(&'a Direction, f64)],
        system: &DynamicSystem,
    ) -> Result<Self, FeError> {
        let factor = UpdatedFactor::of(matrix, added)?;
        let order = matrix.order();
        let (mut columns, mut room) = (vec![0.0; order * system.rows()], vec![0.0; order]);
        for (column, direction) in columns.chunks_exact_mut(order).zip(system.directions()) {
            direction.add_to(1.0, column);
            factor.solve(column, &mut room);
        }
        let row = |direction: &Direction| {
            columns.chunks_exact(order).map(|column| direction.dot(column)).collect::<Vec<f64>>()
        };
        let compliance = system.directions().flat_map(row).collect();
        Ok(Solver { factor, columns, compliance })
    }

    /// Adds what forces along the directions of the laws do.
    pub fn add_response(&self, forces: &[f64], x: &mut [f64]) {
        for (column, force) in self.columns.chunks_exact(x.len()).zip(forces) {
            if *force != 0.0 {
                x.iter_mut().zip(column).for_each(|(x, y)| *x += force * y);
            }
        }
    }
}

impl<'a> EffectiveSystem<'a> {
    pub fn new(system: &'a DynamicSystem, scheme: Scheme, step: f64) -> Result<Self, FeError> {
        let formulas = scheme.formulas(step);
        let mut matrix = system.stiffness.plus(formulas.mass, &system.mass);
        if let Some(damping) = &system.damping {
            matrix = matrix.plus(formulas.rate, damping);
        }
        let dampers = system.dampers.iter();
        let added: Vec<_> = dampers.map(|one| (&one.direction, formulas.rate * one.damping)).collect();
        Ok(EffectiveSystem { formulas, solver: Solver::new(&matrix, &added, system)? })
    }
}
