//! The one doorway to linear algebra: symmetric positive definite systems.
//!
//! [`SymmetricMatrix`] is assembled entry by entry and factored into a [`Factor`], which solves for one
//! right-hand side or for several side by side ([`Columns`]). Chains of stations have a narrow band and use
//! our own band kernel; other couplings go to a sparse factorization. A matrix that nothing holds is
//! refused with a [`PivotFailure`] that says what moves freely.
//!
//! ```
//! use axlebow_fe::linalg::SymmetricMatrix;
//! let mut matrix = SymmetricMatrix::banded(2, 1);
//! matrix.add(0, 0, 4.0);
//! matrix.add(1, 0, 2.0);
//! matrix.add(1, 1, 3.0);
//! let mut x = [2.0, 5.0];
//! matrix.factor()?.solve(&mut x);
//! assert!((x[0] + 0.5).abs() < 1e-15 && (x[1] - 2.0).abs() < 1e-15);
//! # Ok::<(), axlebow_fe::linalg::PivotFailure>(())
//! ```

mod band;
mod band_factor;
mod band_multiply;
mod band_solve;
mod columns;
mod combine;
mod complex_band;
mod complex_columns;
mod eigen;
mod factor;
mod lanes;
mod matrix;
mod narrow_order;
mod pivot;
mod products;
mod row_factor;
mod rows;
mod sparse;
mod sparse_factor;
mod weighted_sum;

pub use columns::Columns;
pub use complex_band::ComplexBand;
pub use complex_columns::ComplexColumns;
pub use eigen::{Crossing, CrossingPairs, EigenFailure, EigenMethod, EigenPairs, Pencil};
pub use factor::Factor;
pub use matrix::SymmetricMatrix;
pub(crate) use matrix::is_narrow;
pub use narrow_order::NarrowOrder;
pub use pivot::PivotFailure;
pub use row_factor::RowFactor;
pub use rows::Rows;
