//! One file for each command.

pub mod completions;
pub mod flex;
pub mod schema;
pub mod section;
pub mod start;
pub mod study;
pub mod textbook;
