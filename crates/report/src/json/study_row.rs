//! A design of a study.

use std::collections::BTreeMap;

use axlebow_study::{Measure, Row, StudyOutcome};
use schemars::JsonSchema;
use serde::Serialize;

use crate::words::study::share;

/// A design.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct RowEntry {
    /// Name of the variant.
    pub variant: String,
    /// Values of the varied keys, in their order and units.
    pub values: Vec<f64>,
    /// The result; `null` if there is none.
    pub results: Option<ResultsEntry>,
    /// The result as a share of the baseline's; `null` in a sweep and where there is none.
    pub of_baseline: Option<ResultsEntry>,
    /// Whether it meets every limit; `null` without any.
    pub meets_limits: Option<bool>,
    /// Why there is no result, or why one by an expression has no number; `null` if all have one.
    pub reason: Option<String>,
}

/// Results under the keys of their quantities.
pub type QuantitiesEntry = BTreeMap<String, Option<f64>>;

/// Results of a design, under the keys of their quantities; `null` where there is none.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ResultsEntry {
    /// Of the static load case.
    pub case: QuantitiesEntry,
    /// Of each ride, in their order; those of the worse wheel.
    pub rides: Vec<QuantitiesEntry>,
}

pub(super) fn row_entry(row: &Row, outcome: &StudyOutcome) -> RowEntry {
    let solved = Some(row).filter(|row| row.result.is_ok());
    let pair = solved.zip(outcome.baseline().filter(|row| row.result.is_ok()));
    RowEntry {
        variant: outcome.variants[row.variant].clone(),
        values: row.values.clone(),
        results: solved.map(|row| results(outcome, |measure| row.value(measure))),
        of_baseline: pair.map(|(own, base)| results(outcome, |m| share(own.value(m), base.value(m)))),
        meets_limits: (!outcome.limits.is_empty()).then(|| outcome.meets(row)),
        reason: outcome.reason(row),
    }
}

/// Values of all measures of a study, each under its key.
fn results(outcome: &StudyOutcome, value: impl Fn(&Measure) -> Option<f64>) -> ResultsEntry {
    let (mut case, mut rides) = (QuantitiesEntry::new(), vec![QuantitiesEntry::new(); outcome.rides.len()]);
    for measure in &outcome.measures {
        let of = measure.ride.map_or(&mut case, |ride| &mut rides[ride]);
        of.insert(measure.key(), value(measure));
    }
    ResultsEntry { case, rides }
}
