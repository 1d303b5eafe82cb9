//! What is wrong with a file or with a path, with its place and what is accepted.

mod error;
mod problem;

pub use error::ModelError;
pub(crate) use problem::quoted;
pub use problem::{Problem, Problems, Span, likely};
