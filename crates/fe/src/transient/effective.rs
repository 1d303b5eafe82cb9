//! The linear system of one length of step.

use super::scheme::{Scheme, StepFormulas};
use super::system::DynamicSystem;
use crate::FeError;
use crate::linalg::{Factor, SymmetricMatrix};

/// Factor of a matrix with what the directions of the laws need of its inverse.
pub(super) struct Solver {
    pub factor: Factor,
    /// `A⁻¹b` of each direction, one after the other.
    columns: Vec<f64>,
    /// G = `bᵀA⁻¹b`, row by row.
    pub compliance: Vec<f64>,
}

/// K + c_m M + c_v C of one length of step.
pub(super) struct EffectiveSystem {
    pub formulas: StepFormulas,
    pub solver: Solver,
}

impl Solver {
    pub fn new(matrix: &SymmetricMatrix, system: &DynamicSystem) -> Result<Self, FeError> {
        let factor = matrix.factor().map_err(|failure| FeError::Loose { equation: failure.index })?;
        let order = matrix.order();
        let mut columns = vec![0.0; order * system.rows()];
        for (column, direction) in columns.chunks_exact_mut(order).zip(system.directions()) {
            direction.add_to(1.0, column);
            factor.solve(column);
        }
        let row = |direction: &super::Direction| {
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

impl EffectiveSystem {
    pub fn new(system: &DynamicSystem, scheme: Scheme, step: f64) -> Result<Self, FeError> {
        let formulas = scheme.formulas(step);
        let mut matrix = system.stiffness.plus(formulas.mass, &system.mass);
        if let Some(damping) = &system.damping {
            matrix = matrix.plus(formulas.rate, damping);
        }
        Ok(EffectiveSystem { formulas, solver: Solver::new(&matrix, system)? })
    }
}
