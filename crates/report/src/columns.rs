//! Numbers of outcomes as named columns, which every table file writes alike.

mod ride;
mod study;

#[cfg(feature = "parquet")]
pub(crate) use ride::RideColumn;
pub(crate) use ride::{ride_columns, word};
#[cfg(feature = "parquet")]
pub(crate) use study::StudyColumn;
pub(crate) use study::{study_columns, varied_heading};
