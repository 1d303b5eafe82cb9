//! The static answer of a bare axle by the force method, for studies that ask many axles for a few numbers.
//!
//! Outboard of its seats an axle is statically determinate but for the thrust that two bearings share, so that the only
//! unknowns are the motions of the two seats: twelve equations instead of six for each place. Flexibilities of
//! stretches in a row add up. It is the same beam theory as that of the finite elements, and gives the same numbers
//! but for rounding (`tests/all/force_method.rs`); the elements do everything that is not asked of it here.

mod chain;
mod hub;
mod line_sections;
mod positive_inverse;
mod readings;
mod row_flexibility;
mod seated_chain;
mod standing_chain;
mod state;
pub(crate) mod static_solver;
mod wrench;
