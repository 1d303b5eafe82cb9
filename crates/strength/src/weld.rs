//! Fillet welds: size, strength, stitches and what the steel asks for.

mod aisc;
mod base_metal;
mod en;
mod fillet;
mod load;
mod long_joint;
mod shear_flow;
mod size;
mod stitches;

pub use aisc::{AiscBasis, AiscWeld};
pub use base_metal::BaseMetal;
pub use en::{EnWeld, correlation_factor};
pub use fillet::Fillet;
pub use load::WeldLoad;
pub use long_joint::{aisc_effective_length, en_long_lap_factor};
pub use shear_flow::shear_flow;
pub use size::{WeldRun, greatest_edge_leg, least_aisc_leg};
pub use stitches::{StitchedPart, Stitches};
