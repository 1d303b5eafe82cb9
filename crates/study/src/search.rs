//! The least or most of a result within limits, over continuous and listed values.
//!
//! Listed values and choices are all tried, one combination after the other. Within each, continuous values are found by
//! sequential quadratic programming from several places, so that what is best there is best near each place it was looked
//! for, and in the whole range only as far as the places agree.

mod hunt;
mod limits;
mod outcome;
mod run;
mod space;
mod target;
mod trade;

pub use outcome::{FoundLimit, Goal, Proof, SearchOutcome};
