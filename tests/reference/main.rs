//! Published checks.

mod closed_forms;
mod readme;
mod published;
mod scipy_axle;
