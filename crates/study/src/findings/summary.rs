//! What a study of very many designs says in brief.

use super::outcome::Row;
use crate::ask::{Limit, Point};
use crate::solve::Measure;

/// Most designs that an outcome lists; of more it has a summary, and a selection for pictures.
pub const MOST_LISTED: usize = 5000;

/// What a study of very many designs says in brief.
#[derive(Debug, Clone, PartialEq)]
pub struct StudySummary {
    /// Designs in all.
    pub designs: usize,
    /// Designs without a result, by their reasons, the most frequent first.
    pub failures: Vec<Failure>,
    /// Each limit of the study with how many designs meet it.
    pub limits: Vec<(Limit, usize)>,
    /// How many designs meet every limit.
    pub meeting: usize,
    /// Each result that is shown, over the designs that have it.
    pub ranges: Vec<ReadingRange>,
    /// The best designs that meet every limit, best first.
    pub best: Vec<Row>,
    /// What they are best by, if anything is shown.
    pub best_by: Option<Measure>,
    /// Whether the best have most of it, as in a rank; else they have least, of either sign.
    pub best_is_most: bool,
}

/// Designs that have no result for one reason, but for the numbers in it.
#[derive(Debug, Clone, PartialEq)]
pub struct Failure {
    /// The reason of the first of them; empty for all reasons beyond those that are told apart.
    pub reason: String,
    /// The first of them.
    pub first: Point,
    /// How many there are.
    pub designs: usize,
}

/// A result over the designs that have it.
#[derive(Debug, Clone, PartialEq)]
pub struct ReadingRange {
    /// The result.
    pub measure: Measure,
    /// How many designs have it.
    pub designs: usize,
    /// Its arithmetic mean, SI.
    pub mean: f64,
    /// The value of least magnitude and the first design that has it.
    pub least: (f64, Point),
    /// The value of largest magnitude and the first design that has it.
    pub most: (f64, Point),
}
