//! The axle load at which the first check binds, over the wheels' offset.

mod limit_load;
mod outcome;
mod run;

pub use outcome::{Limiter, PartLoad, RatingOutcome, RatingPoint};
pub use run::{Lasting, RatingOptions, rating};
