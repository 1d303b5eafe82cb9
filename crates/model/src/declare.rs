//! What the keys of a file may hold, declared once.

mod bounds;
mod schema;
mod spec;

pub use bounds::Bounds;
pub use schema::json_schema;
pub use spec::{Holds, KeySpec, Presence, TableSpec, Word, key, quantity};
