//! Fits unknowns of a model to shop readings by weighted least squares.

mod error;
mod estimate;
mod estimated;
mod further;
mod outcome;
mod predicted;
mod run;
mod unknown;
mod warnings;

pub use error::FitError;
pub use estimate::{Predicted, estimate};
pub use estimated::Estimate;
pub use outcome::{FitOutcome, FittedReading, FittedUnknown, FurtherReading};
pub use run::fit;
pub use unknown::{Scale, Unknown, usual_unknowns};
