//! From what a model file says to an axle with its load cases.

mod axle_build;
mod builder;
mod combine;
mod error_words;
mod material_build;
mod model;
mod seat_build;
mod stiffener_build;
mod stiffener_shape;
mod stiffener_site;
mod strength_build;
mod tire_file;
mod variable_axle;
mod wheel_build;
mod wheel_end_build;

pub(crate) use builder::Builder;
pub use error_words::refusal_in_units;
pub use model::Model;
pub(crate) use stiffener_shape::sized_shape;
pub use tire_file::TireFile;
pub use variable_axle::{VariableAxle, changes_line};
