//! Runs one case or a sweep of them; does not draw.
//!
//! ```text
//! study file + model file --Study::from_bytes--> Study      (or Problems, before any work)
//! Study --point(i)--> Point                                 (a design: variant and varied values)
//! Study --run--> StudyOutcome                               (a row for each design, in order)
//! ```
//!
//! A design is the model with the variant's changes and the varied values set by their paths, read by the
//! rules of a model file. A design that cannot be built or solved is a row with its reason.

mod constant_mass;
mod design;
mod keys;
mod model_file;
mod outcome;
mod read;
mod run;
mod study;
mod vary;

pub use design::Design;
pub use keys::STUDY;
pub use outcome::{EqualMass, Row, StudyOutcome};
pub use study::{MOST_DESIGNS, Point, Study, Variant};
pub use vary::Varied;
