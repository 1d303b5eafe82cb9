//! Designs of a study solved on all cores, saved as they come, and what they say put together.

mod asked;
mod constant_mass;
mod designs;
mod estimate;
mod gathered;
mod identity;
mod outline;
mod save;
mod seat_tables;
mod summing;
mod uncertainty;

pub(crate) use asked::Asked;
pub use estimate::{DesignCost, threads};
pub use seat_tables::table_folder;
