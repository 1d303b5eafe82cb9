//! By how much camber, bow, peak stress and mass change with each number of a model file.

mod outcome;
mod run;
mod slope;

pub use outcome::{KeySensitivity, SensitivityOutcome, SlopeBy};
pub use run::sensitivities;
