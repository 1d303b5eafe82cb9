//! All designs of a large study in brief.

use axlebow_results::Shape;
use axlebow_study::{DesignWarning, Failure, Point, ReadingRange, StudyOutcome, StudySummary};
use schemars::JsonSchema;
use serde::Serialize;
use serde_json::Value;

use super::derived;
use super::study_row::{RowEntry, row_entry};

/// All designs of a large study in brief.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SummaryEntry {
    /// Designs in all.
    pub designs: usize,
    /// Designs without a result by their reasons, the most frequent first.
    pub failures: Vec<FailureEntry>,
    /// How many designs meet every limit.
    pub meeting: usize,
    /// How many designs meet each limit, in the order of the study's `limits`.
    pub meeting_each: Vec<usize>,
    /// Each result that is shown.
    pub ranges: Vec<RangeEntry>,
    /// Key of the result that the best designs are chosen by.
    pub best_by: Option<String>,
    /// `most` or `least`, of either sign: which designs are best.
    pub best_is: &'static str,
    /// The best designs, best first.
    pub best: Vec<RowEntry>,
}

/// Designs without a result for one reason, but for the numbers in it.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct FailureEntry {
    /// How many.
    pub designs: usize,
    /// The reason of the first; empty for all beyond those that are told apart.
    pub reason: String,
    /// The first.
    pub first: PointEntry,
}

/// A warning of designs or of their rides, the same for all of them but for the numbers in it.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct DesignWarningEntry {
    /// How many designs have it.
    pub designs: usize,
    /// What is doubtful, as the first of them has it.
    pub text: String,
    /// What to do.
    pub advice: String,
    /// The first of them.
    pub first: PointEntry,
}

/// A result over all designs that have it.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct RangeEntry {
    /// Key of the result.
    pub key: String,
    /// Name of its ride; `null` for the static load case.
    pub ride: Option<String>,
    /// How many designs have it.
    pub designs: usize,
    /// The value of least magnitude.
    pub least: f64,
    /// The first design that has it.
    pub least_at: PointEntry,
    /// Arithmetic mean.
    pub mean: f64,
    /// The value of largest magnitude.
    pub most: f64,
    /// The first design that has it.
    pub most_at: PointEntry,
}

/// Which design.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct PointEntry {
    /// Name of the variant.
    pub variant: String,
    /// Values of the varied keys, in their order and units.
    pub values: Vec<f64>,
}

impl Shape for DesignWarningEntry {
    fn json(&self) -> Value {
        derived::json(self)
    }

    fn schema() -> Value {
        derived::schema::<Self>()
    }
}

impl DesignWarningEntry {
    pub(super) fn of(own: &DesignWarning, variants: &[String]) -> Self {
        DesignWarningEntry {
            designs: own.designs,
            text: own.warning.text.clone(),
            advice: own.warning.advice.clone(),
            first: point(&own.first, variants),
        }
    }
}

pub(super) fn summary_entry(summary: &StudySummary, outcome: &StudyOutcome) -> SummaryEntry {
    let failure = |own: &Failure| FailureEntry {
        designs: own.designs,
        reason: own.reason.clone(),
        first: point(&own.first, &outcome.variants),
    };
    SummaryEntry {
        designs: summary.designs,
        failures: summary.failures.iter().map(failure).collect(),
        meeting: summary.meeting,
        meeting_each: summary.limits.iter().map(|(_, met)| *met).collect(),
        ranges: summary.ranges.iter().map(|range| range_entry(range, outcome)).collect(),
        best_by: summary.best_by.as_ref().map(|lead| lead.key()),
        best_is: if summary.best_is_most { "most" } else { "least" },
        best: summary.best.iter().map(|row| row_entry(row, outcome)).collect(),
    }
}

fn range_entry(range: &ReadingRange, outcome: &StudyOutcome) -> RangeEntry {
    let ride = range.measure.ride.and_then(|ride| outcome.rides.get(ride));
    RangeEntry {
        key: range.measure.key(),
        ride: ride.map(|ride| ride.name.clone()),
        designs: range.designs,
        least: range.least.0,
        least_at: point(&range.least.1, &outcome.variants),
        mean: range.mean,
        most: range.most.0,
        most_at: point(&range.most.1, &outcome.variants),
    }
}

fn point(point: &Point, variants: &[String]) -> PointEntry {
    PointEntry { variant: variants[point.variant].clone(), values: point.values.clone() }
}
