//! The linear system of one length of step.

use super::damper::rows_of;
use super::scheme::{Scheme, StepFormulas};
use super::system::DynamicSystem;
use super::updated_factor::{SolverRoom, UpdatedFactor};
use crate::FeError;
use crate::linalg::{Columns, SymmetricMatrix};
use crate::model::direction::Direction;

/// Factor of a matrix with what the directions of the laws need of its inverse.
pub(super) struct Solver {
    pub factor: UpdatedFactor,
    /// `A⁻¹b` of each direction, row by row.
    answers: Columns,
    /// G = `bᵀA⁻¹b`, which is symmetric.
    pub compliance: Columns,
}

/// K + c_m M + c_v C of one length of step.
pub(super) struct EffectiveSystem {
    pub formulas: StepFormulas,
    pub solver: Solver,
}

impl Solver {
    /// - `added`: directions b with the w of each, for `w bbᵀ` on top of the matrix
    pub fn new(
        matrix: &SymmetricMatrix,
        added: &[(&Direction, f64)],
        system: &DynamicSystem,
    ) -> Result<Self, FeError> {
        let factor = UpdatedFactor::of(matrix, added)?;
        let (mut answers, mut room) = (rows_of(system.directions(), matrix.order()), SolverRoom::default());
        let mut compliance = Columns::zeros(system.rows(), system.rows());
        for row in 0..system.rows() {
            factor.solve(answers.row_mut(row), &mut room);
            system.along_laws(answers.row(row), compliance.row_mut(row));
        }
        Ok(Solver { factor, answers, compliance })
    }

    /// Adds what forces along the directions of the laws do.
    pub fn add_response(&self, forces: &[f64], x: &mut [f64]) {
        self.answers.add_rows(forces, x);
    }
}

impl EffectiveSystem {
    pub fn new(system: &DynamicSystem, scheme: Scheme, step: f64) -> Result<Self, FeError> {
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
