//! From a worn tire to its causes: what was seen, held against what the axle predicts for each cause.

mod library;
mod likelihood;
#[cfg(test)]
mod likelihood_by_scipy;
mod next_check;
mod observed;
mod outcome;
mod pairs;
mod parameter;
mod run;
mod variant;
mod wear_cause;
mod worn_axle;

pub use library::Library;
pub use likelihood::Discrepancy;
pub use next_check::NextCheck;
pub use observed::Evidence;
pub use outcome::{EvidenceWeight, ExplainOutcome, FITS, LEADS, RankedCause, SeenRib, Size, Verdict};
pub use pairs::{RankedPair, TWO_AT_ONCE};
pub use parameter::Parameter;
pub use run::{CauseOdds, explain, explain_with, probabilities};
pub use variant::{SizeOf, Whereabouts};
pub use wear_cause::WearCause;
pub use worn_axle::{WearPattern, WornAxle};
