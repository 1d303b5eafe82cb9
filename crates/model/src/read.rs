//! From text to what a file says.

mod given_file;
mod lone_value;
mod named_file;
mod price;
mod reader;
mod rows;
mod set;
mod stiffened;
mod text;
mod value;

pub use given_file::{given_file, why_missing};
pub use named_file::{named_file, named_path};
pub(crate) use rows::{Row, rows};
pub(crate) use text::text_of;
pub use text::{LARGEST, LARGEST_SERIES, Unread, read, read_bytes, read_bytes_partly, top_word};
