//! Matrices with stiffness along directions added.

use crate::linalg::SymmetricMatrix;
use crate::model::direction::Direction;

/// A matrix with room for the entries of such a band.
pub(super) fn widened(matrix: SymmetricMatrix, width: Option<usize>) -> SymmetricMatrix {
    let (own, order) = (matrix.half_bandwidth(), matrix.order());
    match (own, width) {
        (Some(own), Some(width)) if width > own => SymmetricMatrix::banded(order, width).plus(1.0, &matrix),
        (Some(_), None) => SymmetricMatrix::sparse(order).plus(1.0, &matrix),
        _ => matrix,
    }
}

/// A matrix with `k b bᵀ` of each direction b added, stored as that needs.
pub(super) fn stamped(matrix: &SymmetricMatrix, along: &[(&Direction, f64)]) -> SymmetricMatrix {
    let spread = along.iter().map(|(direction, _)| direction.spread()).max().unwrap_or(0);
    let mut sum = match matrix.half_bandwidth() {
        Some(width) if spread > width => {
            SymmetricMatrix::for_coupling(matrix.order(), spread).plus(1.0, matrix)
        }
        _ => matrix.clone(),
    };
    for (direction, stiffness) in along {
        for (i, (row, a)) in direction.parts().iter().enumerate() {
            for (column, b) in &direction.parts()[..=i] {
                sum.add(*row, *column, stiffness * a * b);
            }
        }
    }
    sum
}
