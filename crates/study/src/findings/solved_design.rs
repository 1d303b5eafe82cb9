//! A design that was solved.

use axlebow_axle::outcome::Warning;

use super::outcome::Row;

/// A design with its warnings.
#[derive(Debug, Clone)]
pub(crate) struct SolvedDesign {
    pub row: Row,
    pub warnings: Vec<Warning>,
}
