//! What a sample of designs says of a result: its distribution, and whose fault its spread is.

mod ask;
mod gathered;
mod outcome;

pub use ask::UncertaintyOptions;
pub use outcome::{Uncertain, Uncertainty, VariantUncertainty};
