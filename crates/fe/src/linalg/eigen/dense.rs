//! All eigenpairs of the full matrices.
//!
//! With the Cholesky factor K + σM = L·Lᵀ, the symmetric matrix L⁻¹·M·L⁻ᵀ has the eigenvalues θ, and its
//! eigenvectors z give x = L⁻ᵀz.

use faer::linalg::triangular_solve::{solve_lower_triangular_in_place, solve_upper_triangular_in_place};
use faer::{Mat, Par, Side};

use super::Candidates;
use super::shift::ShiftedPencil;
use crate::linalg::columns::Columns;
use crate::linalg::matrix::SymmetricMatrix;

/// θ below this part of the largest belong to freedoms without mass.
const MASSLESS: f64 = 1e-14;

/// All eigenpairs of freedoms with mass; none when the solution does not converge.
pub(super) fn all(shifted: &ShiftedPencil) -> Option<Candidates> {
    let (k, m) = (shifted.pencil.stiffness, shifted.pencil.mass);
    let factor = full(&k.plus(shifted.shift, m)).llt(Side::Lower).ok()?;
    let lower = factor.L();
    let mut reduced = full(m);
    solve_lower_triangular_in_place(lower, reduced.as_mut(), Par::Seq);
    let mut reduced = reduced.transpose().to_owned();
    solve_lower_triangular_in_place(lower, reduced.as_mut(), Par::Seq);
    let eigen = reduced.self_adjoint_eigen(Side::Lower).ok()?;
    let ascending: Vec<f64> = eigen.S().column_vector().iter().copied().collect();
    let largest = ascending.last().copied().unwrap_or(0.0);
    let inverses: Vec<f64> =
        ascending.iter().rev().copied().take_while(|x| *x > MASSLESS * largest).collect();
    let mut vectors = eigen.U().to_owned();
    solve_upper_triangular_in_place(lower.transpose(), vectors.as_mut(), Par::Seq);
    let order = m.order();
    let mut columns = Columns::zeros(order, inverses.len());
    for row in 0..order {
        for column in 0..inverses.len() {
            columns.set(row, column, vectors[(row, order - 1 - column)]);
        }
    }
    Some(Candidates { inverses, vectors: columns })
}

impl SymmetricMatrix {
    /// All eigenvectors at length 1, by rising eigenvalue; none when the solution does not converge. Time grows
    /// with the cube of the order.
    pub fn eigenvectors(&self) -> Option<Columns> {
        let eigen = full(self).self_adjoint_eigen(Side::Lower).ok()?;
        let order = self.order();
        let mut columns = Columns::zeros(order, order);
        for row in 0..order {
            for column in 0..order {
                columns.set(row, column, eigen.U()[(row, column)]);
            }
        }
        Some(columns)
    }
}

fn full(matrix: &SymmetricMatrix) -> Mat<f64> {
    let mut full = Mat::zeros(matrix.order(), matrix.order());
    matrix.for_each(|row, column, value| {
        full[(row, column)] = value;
        full[(column, row)] = value;
    });
    full
}
