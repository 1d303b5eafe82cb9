//! From a road file to a road.

mod profile_file;
mod profile_heading;
mod road_file;
mod road_ground;
mod road_kind;
mod road_name;

pub use road_file::RoadFile;
pub use road_kind::{road_events, road_kinds};
