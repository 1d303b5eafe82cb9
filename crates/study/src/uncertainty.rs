//! What a sample of designs says of a result: its distribution, and whose fault its spread is.

mod ask;
mod estimated;
mod gathered;
mod histogram;
mod indices;
mod outcome;
mod percentile;

pub use ask::UncertaintyOptions;
pub use estimated::{Estimated, Sampled};
pub use histogram::Histogram;
pub use indices::{Index, variance_indices};
pub use outcome::{Uncertain, Uncertainty, VariantUncertainty};
pub use percentile::{order_interval, percentile};
