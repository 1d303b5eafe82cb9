//! What a study says: rows, limits that are met, warnings, summaries and what scatters.

mod limit_met;
mod outcome;
mod solved_design;
mod summary;
mod uncertainty;
mod warnings;

pub use outcome::{EqualMass, RideName, Row, StudyOutcome};
pub(crate) use solved_design::SolvedDesign;
pub use summary::{Failure, MOST_LISTED, ReadingRange, StudySummary};
pub use uncertainty::{Uncertain, Uncertainty, VariantUncertainty};
pub use warnings::{CountedWarning, DesignWarning};
pub(crate) use warnings::{WarningCounts, without_numbers};
