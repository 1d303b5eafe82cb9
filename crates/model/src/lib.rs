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

mod bounds;
mod build;
mod combine;
mod document;
mod entry;
mod error;
mod hash;
mod keys;
mod material_build;
mod material_keys;
mod named_file;
mod named_path;
mod number_place;
mod numbers;
mod path;
mod problem;
mod profile_file;
mod profile_heading;
mod profile_row;
mod read;
mod reading;
mod readings_file;
mod readings_heading;
mod rewritten;
mod road_file;
mod road_ground;
mod road_keys;
mod road_kind;
mod road_name;
mod schema;
mod seat_build;
mod spec;
mod start;
mod stiffener_build;
mod stiffener_keys;
mod stiffener_shape;
mod strength_build;
mod strength_keys;
mod tire_file;
mod tread_keys;
mod value;
mod variable_axle;
mod wheel_build;
mod wheel_end_build;
mod wheel_end_keys;

pub use bounds::Bounds;
pub use build::Model;
pub use document::{Assumed, Document};
pub use entry::{Entry, Table, Value, Written};
pub use error::ModelError;
pub use keys::MODEL;
pub use named_file::named_file;
pub use number_place::NumberPlace;
pub use numbers::NumberKey;
pub use problem::{Problem, Problems, Span, likely};
pub use read::{LARGEST, read, read_bytes};
pub use reading::{ReadQuantity, Reading};
pub use readings_file::readings;
pub use road_file::RoadFile;
pub use road_keys::ROAD;
pub use road_kind::{road_events, road_kinds};
pub use schema::json_schema;
pub use spec::{Holds, KeySpec, Presence, TableSpec, Word, key, quantity};
pub use start::{KINDS, reading_sheet, starter};
pub use tire_file::TireFile;
pub use tread_keys::TIRE;
pub use variable_axle::VariableAxle;
