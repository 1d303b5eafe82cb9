//! Shells.

pub(crate) mod dented_cylinder;
pub mod obstacle_course;
pub(crate) mod plates_and_rings;
pub(crate) mod sheet;
pub(crate) mod shell_obstacles;
