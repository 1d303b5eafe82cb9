//! Published checks.

mod closed_forms;
mod published;
mod scipy_axle;
