//! The axle in time over a road.

pub(crate) mod basis_comparison;
pub(crate) mod dominant;
pub(crate) mod equations;
pub(crate) mod moments;
pub(crate) mod moving;
pub(crate) mod peak_ground;
pub(crate) mod record_options;
pub(crate) mod ride;
pub(crate) mod ride_basis;
pub(crate) mod ride_laws;
pub(crate) mod ride_outcome;
pub(crate) mod ride_readings;
pub(crate) mod ride_recorder;
pub(crate) mod ride_results;
pub(crate) mod ride_shape;
pub(crate) mod ride_split;
pub(crate) mod ride_warnings;
pub(crate) mod riding_axle;
pub(crate) mod ringing;
pub(crate) mod run_in;
pub(crate) mod spectrum;
pub(crate) mod spectrum_peaks;
pub(crate) mod step_refinement;
pub(crate) mod stress_reading;
pub(crate) mod tracks;
mod transforms;
