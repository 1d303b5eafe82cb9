//! Walls and stresses of a section.

mod aisc_class;
mod en_class;
mod shoulder_fillet;
mod strength;
mod wall;

pub use aisc_class::{AiscClass, aisc_limits, aisc_round_reach, aisc_wall_check};
pub use en_class::{EnClass, en_limits, en_wall_check};
pub use shoulder_fillet::ShoulderFillet;
pub use strength::{AllowableStress, SectionForces, SectionStresses, stress_checks, yield_checks};
pub use wall::{Wall, WallPart, walls};
