//! One file for each command.

pub mod causes;
pub mod completions;
pub mod cups;
pub mod fit;
pub mod flex;
pub mod gather;
pub mod modes;
pub mod progress;
pub mod remedies;
pub mod report;
pub mod response;
pub mod ride;
pub mod schema;
pub mod search;
pub mod section;
pub mod sensitivities;
pub mod start;
pub mod strength;
pub mod study;
pub mod study_input;
pub mod study_output;
pub mod study_saving;
pub mod study_size;
pub mod textbook;
pub mod tire;
pub mod tire_table;
