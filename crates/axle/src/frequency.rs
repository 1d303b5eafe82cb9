//! Answers of the axle to a road, one frequency at a time.

pub(crate) mod frequency_grid;
pub(crate) mod hub_compliance;
pub(crate) mod input;
pub(crate) mod response;
pub(crate) mod response_outcome;
pub(crate) mod response_warnings;
pub(crate) mod small_motion;
pub(crate) mod transfer;
