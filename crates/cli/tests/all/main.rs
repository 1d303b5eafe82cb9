//! The command line: exit code, messages, files.

mod bad_input;
mod commands;
mod documents;
mod drawings;
mod fits;
mod forgiving_input;
mod growth;
mod hostile_text;
mod job_arrays;
mod lives;
mod outputs;
mod pages;
mod paybacks;
mod program;
mod provenance;
mod readme;
mod removals;
mod roads;
mod samples;
mod saved_studies;
mod searches;
mod seat_walls;
mod sensitivities;
mod stiffeners;
mod tires;
mod welds;
