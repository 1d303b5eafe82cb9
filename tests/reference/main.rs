//! Reference checks.

#![allow(clippy::unwrap_used)] // helpers of tests

mod beam_files;
mod closed_forms;
mod readme;
mod recomputed_tire_face;
mod scipy_axle;
mod scipy_modes;
mod scipy_response;
mod scipy_ride;
mod scipy_vehicle;
mod textbook;
