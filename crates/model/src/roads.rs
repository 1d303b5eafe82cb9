//! From a road file to a road, from a duty file to what an axle goes through in a year.

mod duty_file;
mod profile_file;
mod profile_heading;
mod road_file;
mod road_ground;
mod road_kind;
mod road_name;

pub use duty_file::DutyFile;
pub use road_file::RoadFile;
pub use road_kind::{road_events, road_kinds};
