//! What a file says: its tables and values, and the paths that lead to them.

mod document;
mod entry;
mod hash;
mod named_path;
mod notes;
mod number_place;
mod numbers;
mod path;
mod rewritten;
mod unused_offset;

pub use document::{Assumed, Document};
pub(crate) use document::{key_spec, no_number, owner, several};
pub use entry::{Entry, EntryNote, Table, Value, Written};
pub(crate) use named_path::by_place;
pub use number_place::NumberPlace;
pub use numbers::NumberKey;
pub(crate) use path::{Step, steps};
