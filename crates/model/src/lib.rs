//! TOML model files to validated axles, with diagnostics and schema; does not solve.
//!
//! One declaration, a [`TableSpec`], says which keys a file has, what each holds and what is used where one
//! is left out. It drives the reading, the validation, the defaults, the hints in messages and the JSON
//! Schema, so these cannot disagree.
//!
//! ```text
//! TableSpec + text --read--> Document          (or Problems: every fault at once, each with its place)
//! TableSpec ---json_schema--> JSON Schema
//! Document --set, set_value--> Document        (a study varies any key by its path, by the same rules)
//! ```
//!
//! A [`Document`] holds exactly what the file says, in SI, plus the list of defaults that were
//! [assumed](Document::assumed). Rules across keys are the builder's: it adds its findings to
//! [`Document::problems`] and they are shown in the same way.
//!
//! Folders, each of which may use those above it:
//!
//! ```text
//! declare   what the keys of a file may hold
//! faults    what is wrong, where, and what is accepted
//! keys      the keys of model, road, duty, tire and beam files
//! content   what a file says: tables, values, paths
//! read      text to content
//! roads     content to a road, to a duty
//! build     content to an axle with its load cases
//! readings  sheets of shop readings
//! start     files to start from
//! complete  every problem of a model file, whatever else is wrong in it
//! cases     sheets of what was seen on worn axles
//! beams     content to a straight beam of one's own
//! ```

mod beams;
mod build;
mod cases;
mod complete;
mod content;
mod declare;
mod faults;
mod keys;
mod read;
mod readings;
mod roads;
mod start;

pub use beams::BeamFile;
pub use build::{Model, TireFile, VariableAxle, changes_line, refusal_in_units};
pub use cases::{CaseSheet, DamperState, FeltFeather, ReadingErrors, SeenEnd, SeenTire, StatedPrior};
pub use complete::read_model;
pub use content::{Assumed, Document, Entry, EntryNote, NumberKey, NumberPlace, Table, Value, Written};
pub use declare::{Bounds, Holds, KeySpec, Presence, TableSpec, Word, json_schema, key, quantity};
pub use faults::{ModelError, Problem, Problems, Span, likely};
pub use keys::{BEAM, CASE, DUTY, MODEL, ROAD, TIRE};
pub use read::{
    LARGEST, LARGEST_SERIES, Unread, given_file, named_file, named_path, read, read_bytes, read_bytes_partly,
    top_word, why_missing,
};
pub use readings::{
    MeasuredRide, MeasuredSeries, ReadQuantity, Reading, ReadingSheet, RemovedRib, RideQuantity, readings,
};
pub use roads::{DutyFile, RoadFile, road_events, road_kinds};
pub use start::{
    GuidedQuestion, GuidedStart, KINDS, TYPICAL, TypicalAxle, case_starter, reading_sheet, starter,
};
