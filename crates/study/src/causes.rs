//! How much each cause contributes to camber and toe at the tire face.

mod cause;
mod outcome;
mod run;

pub use cause::Cause;
pub use outcome::{CauseShare, CausesOutcome, Contribution, EndplayTilt, Subject, WheelCauses};
pub use run::{causes, causes_over};
