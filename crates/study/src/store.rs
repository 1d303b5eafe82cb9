//! Results of a study on disk: saved as they come, gone on with after a stop, and joined from many machines.
//!
//! Designs are saved in chunks of consecutive ones ([`Chunk`]), appended to a [`ResultsFile`] in whatever order they are
//! solved; each chunk carries a check of its own, so that a chunk that was cut off is known and made anew. The file's
//! head ([`Head`]) says which study it is of. [`Results`] reads one file, or the files of all [`Part`]s, in order.

mod chunk;
mod error;
mod head;
mod part;
mod results;
mod results_file;
mod whole_file;

pub use chunk::Chunk;
pub use error::StoreError;
pub use head::Head;
pub use part::Part;
pub use results::Results;
pub use results_file::{Earlier, ResultsFile};
pub use whole_file::{WholeFile, unfinished_path};
