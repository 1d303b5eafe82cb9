//! What a search says; SI inside.

use crate::ask::{Limit, Varied};
use crate::findings::{DesignWarning, Row};
use crate::solve::Measure;

/// Result of [`Study::search`](crate::Study::search).
#[derive(Debug, Clone, PartialEq)]
pub struct SearchOutcome {
    /// What the study is called.
    pub name: String,
    /// What the reader must know.
    pub note: Option<String>,
    /// Name of the load case.
    pub case: String,
    /// Names of the variants.
    pub variants: Vec<String>,
    /// Keys that were searched.
    pub varied: Vec<Varied>,
    /// Every result that designs have.
    pub measures: Vec<Measure>,
    /// What was to be least or most.
    pub goal: Goal,
    /// The best design that meets every limit; none where none was found.
    pub best: Option<Row>,
    /// Where none was found, the one that misses its worst limit by least.
    pub nearest: Option<Row>,
    /// What the limits do at the best design, or how they are missed at the nearest.
    pub limits: Vec<FoundLimit>,
    /// What stands behind the best being best.
    pub proof: Proof,
    /// Designs none of which is better than another in everything that is traded, in the order of the goal.
    pub front: Vec<Row>,
    /// What is traded against the goal.
    pub against: Vec<Measure>,
    /// Designs that were solved.
    pub solved: usize,
    /// Designs among them that cannot be, and the reason of the first.
    pub failed: (usize, Option<String>),
    /// Whether any design has stiffeners, so that its reader may come to weld.
    pub stiffened: bool,
    /// Warnings of the designs that are given here and of their rides, those of most designs first.
    pub warnings: Vec<DesignWarning>,
}

/// What is to be least or most.
#[derive(Debug, Clone, PartialEq)]
pub struct Goal {
    /// The result.
    pub measure: Measure,
    /// Whether it is to be least.
    pub least: bool,
}

/// A limit at the best design.
#[derive(Debug, Clone, PartialEq)]
pub struct FoundLimit {
    /// The limit.
    pub limit: Limit,
    /// The result there; of a ride the worst.
    pub value: f64,
    /// By what share of itself it is missed; negative where there is room.
    pub missed: f64,
    /// Whether it stands in the way.
    pub active: bool,
    /// Change of the goal per unit by which the limit is relaxed, by its multiplier; none without continuous values.
    pub price: Option<f64>,
    /// The goal when the limit is relaxed by a hundredth of itself, solved again.
    pub relaxed: Option<f64>,
    /// The goal without the limit, solved again.
    pub without: Option<f64>,
}

/// What stands behind the best being best.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Proof {
    /// Every combination was solved.
    Every {
        /// How many.
        combinations: usize,
    },
    /// Each combination was searched from several places; those of the best that came to the same goal agreed.
    Starts {
        /// Combinations of listed values, every one of them searched.
        combinations: usize,
        /// Places for each.
        starts: usize,
        /// Of those of the best combination, how many came to its goal.
        agreed: usize,
    },
}
