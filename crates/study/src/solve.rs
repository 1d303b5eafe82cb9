//! One design of a study: its axle, solved, and its results.

mod asked_for;
mod design;
mod design_cups;
mod design_ride;
mod measure;
pub mod name;
mod natural;
mod quantity;
mod setting;
mod solver;

pub(crate) use asked_for::Has;
pub use asked_for::NoResult;
pub(crate) use design::{Beside, Design, in_words};
pub(crate) use measure::Columns;
pub use measure::Measure;
pub use natural::NaturalMode;
pub use quantity::{Cost, QUANTITIES, Quantity};
pub(crate) use solver::{Solver, Solvers};
