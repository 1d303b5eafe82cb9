//! What a sample of designs says of a result: its distribution, and whose fault its spread is.

mod estimated;
mod indices;
mod percentile;

pub use estimated::{Estimated, Sampled};
pub use indices::{Index, variance_indices};
pub use percentile::{order_interval, percentile};
