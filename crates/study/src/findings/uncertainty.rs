//! What an uncertainty study says.

use axlebow_numerics::{Estimated, Histogram, Index};

use crate::solve::Measure;

/// What an uncertainty study says, variant by variant.
#[derive(Debug, Clone, PartialEq)]
pub struct Uncertainty {
    /// Coverage of the intervals.
    pub confidence: f64,
    /// Shares of designs below the percentiles that are told.
    pub shares: Vec<f64>,
    /// Independent samples that the intervals of means and percentiles are told from; 1 where every design is independent.
    pub replicates: usize,
    /// Rows of each of these.
    pub rows_of_replicate: usize,
    /// Designs of each row: 1, or of a row with indices two points of the sample, first and last, and those between.
    pub designs_of_row: usize,
    /// Whether Sobol's sequence is cut where it is not balanced.
    pub is_unbalanced: bool,
    /// Each variant.
    pub variants: Vec<VariantUncertainty>,
}

/// What an uncertainty study says of a variant.
#[derive(Debug, Clone, PartialEq)]
pub struct VariantUncertainty {
    /// Designs of the sample itself.
    pub designs: usize,
    /// Of these, how many have no result.
    pub failed: usize,
    /// What is said of each result that is shown, derived or limited, in the order of the study's measures.
    pub results: Vec<Uncertain>,
    /// Share of designs that meets each limit of the study.
    pub limits: Vec<Estimated>,
    /// Share of designs that meets them all, if there are any.
    pub all_limits: Option<Estimated>,
}

/// What is said of a result.
#[derive(Debug, Clone, PartialEq)]
pub struct Uncertain {
    /// The result.
    pub measure: Measure,
    /// Designs of the sample that have it.
    pub count: usize,
    /// Its mean.
    pub mean: Estimated,
    /// Its standard deviation.
    pub deviation: Estimated,
    /// Its percentiles.
    pub percentiles: Vec<Estimated>,
    /// Its values, counted in steps.
    pub histogram: Histogram,
    /// Its variance among the varied keys, in their order; none where that was not asked or it does not vary.
    pub indices: Vec<Index>,
}
