//! Case sheets: what was seen on a worn axle.

mod case_file;
mod case_sheet;

pub use case_sheet::{CaseSheet, DamperState, FeltFeather, ReadingErrors, SeenEnd, SeenTire, StatedPrior};
