//! What a result is: its name, its unit and meaning, and how an outcome gives it; does not know
//! solving, drawing or files.
//!
//! An outcome declares its results once, as a table beside its definition ([`Record`]). JSON documents ([`json`]), their
//! schemas ([`schema`]), and the keys under which CSV files and studies give the same numbers ([`Term::key`]) all come
//! from that table, so that a quantity has one name everywhere.
//!
//! ```
//! use axlebow_results::{Field, Own, Part, Record, Text, json, number, part};
//! use axlebow_units::Kind;
//!
//! struct Wheel {
//!     camber_change: f64,
//!     contacts: Vec<Contact>,
//! }
//! struct Contact {
//!     name: &'static str,
//!     vertical_load: f64,
//! }
//!
//! impl Record for Wheel {
//!     const FIELDS: &'static [Field<Self>] = &[
//!         number("camber-change", Kind::Angle, "Change of camber.", &Own(|w: &Self| w.camber_change)),
//!         part("contacts", "Each tire, outer first.", &Part(|w: &Self| &w.contacts)),
//!     ];
//! }
//! impl Record for Contact {
//!     const FIELDS: &'static [Field<Self>] = &[
//!         part("name", "`outer` or `inner`.", &Text(|c: &Self| c.name)),
//!         number("vertical-load", Kind::Force, "Force of the road, upward.", &Own(|c: &Self| c.vertical_load)),
//!     ];
//! }
//!
//! let wheel = Wheel { camber_change: -7.7e-3, contacts: vec![Contact { name: "outer", vertical_load: 44e3 }] };
//! let expected = r#"{"camber_change_rad":-0.0077,"contacts":[{"name":"outer","vertical_load_n":44000.0}]}"#;
//! assert_eq!(json(&wheel).to_string(), expected);
//! ```

mod read;
mod record;
mod shape;
mod term;

pub use read::{Own, Part, Read, Text};
pub use record::{Field, Record, field, in_unit, json, number, part, schema};
pub use shape::Shape;
pub use term::{Term, Unit, key, within_a_sentence};
