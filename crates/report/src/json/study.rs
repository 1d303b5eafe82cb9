//! The document of a study.

use axlebow_strength::WELDING_CAUTIONS;
use axlebow_study::{EqualMass, Limit, QUANTITIES, Quantity, Row, StudyKind, StudyOutcome, Varied};
use schemars::JsonSchema;
use serde::Serialize;

use super::derived;
use super::frame::{Contents, Frame};
use super::study_row::{RowEntry, row_entry};
use super::study_summary::{DesignWarningEntry, SummaryEntry, summary_entry};
use super::uncertainty::UncertaintyEntry;
use crate::ModelCard;
use crate::answer::study_answer;

const STUDY: Frame = Frame { tag: "axlebow/study-result/3", meaning: "Result of a study." };

/// The document of a study.
pub fn study_document(outcome: &StudyOutcome, card: &ModelCard) -> String {
    let warnings: Vec<DesignWarningEntry> =
        outcome.warnings.iter().map(|own| DesignWarningEntry::of(own, &outcome.variants)).collect();
    let cautions = if outcome.stiffened { WELDING_CAUTIONS.to_vec() } else { Vec::new() };
    let results = vec![derived::json(&StudyResults::of(outcome))];
    STUDY.text(Contents {
        card: Some(card),
        answer: study_answer(outcome, card),
        results,
        warnings: &warnings,
        cautions,
    })
}

/// The JSON Schema of the document of a study.
pub fn study_schema() -> String {
    STUDY.schema::<DesignWarningEntry>(&[derived::schema::<StudyResults>()])
}

/// Result of a study.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
struct StudyResults {
    /// Name of the study.
    pub name: String,
    /// What the reader must know.
    pub note: Option<String>,
    /// Of each table of seats in use, the error of a seat's rotation about X, over itself, where each seat is left out of it
    /// in turn: the largest, and that of the median.
    pub seat_table_errors: Vec<[f64; 2]>,
    /// `sweep`, `side-by-side` or `uncertainty`.
    pub kind: &'static str,
    /// Name of the variant that the others are compared with; `null` in a sweep.
    pub baseline: Option<String>,
    /// Load case that was run.
    pub case: String,
    /// Names of the variants.
    pub variants: Vec<String>,
    /// Keys that were varied, the last one fastest.
    pub varied: Vec<VariedEntry>,
    /// The roads that every design was driven over.
    pub rides: Vec<RideNameEntry>,
    /// What the results are; the keys of each result.
    pub quantities: Vec<QuantityEntry>,
    /// The designs, in order; none of a study of so many designs that it has a summary: CSV and Parquet files have them.
    pub rows: Vec<RowEntry>,
    /// All designs in brief; `null` where they are listed one by one.
    pub summary: Option<SummaryEntry>,
    /// What results may be.
    pub limits: Vec<LimitEntry>,
    /// What an uncertainty study says; `null` of another kind.
    pub uncertainty: Option<UncertaintyEntry>,
    /// Designs of equal axle mass.
    pub constant_mass: Vec<EqualMassEntry>,
}

/// A key that was varied.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct VariedEntry {
    /// Path of the key, or name of the choice.
    pub path: String,
    /// Further keys that take the same value.
    pub others: Vec<String>,
    /// What expressions call it.
    pub name: String,
    /// Unit of its values; empty for a plain number.
    pub unit: &'static str,
    /// Names of the choices, whose places from 0 are its values; empty of a key.
    pub choices: Vec<String>,
}

/// What a result may be, in its SI unit.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct LimitEntry {
    /// Name of the result.
    pub of: String,
    /// SI unit; empty for a plain number.
    pub unit: &'static str,
    /// Least that is accepted; `null` for none.
    pub least: Option<f64>,
    /// Most that is accepted; `null` for none.
    pub most: Option<f64>,
    /// Most that its magnitude may be; `null` for none.
    pub within: Option<f64>,
}

impl From<&Limit> for LimitEntry {
    fn from(limit: &Limit) -> Self {
        let Limit { of, kind, least, most, within } = limit.clone();
        LimitEntry { of, unit: kind.si(), least, most, within }
    }
}

/// A road that every design was driven over.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct RideNameEntry {
    /// Name of the ride.
    pub name: String,
    /// Name of the road.
    pub road: String,
    /// Speed, m/s; `null` when it is varied.
    pub speed_m_per_s: Option<f64>,
}

/// What a result is.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct QuantityEntry {
    /// Its key in results.
    pub key: String,
    /// Its name in study files.
    pub name: String,
    /// `case`, `ride`, or `derived` for one by an expression, which stands under the results of the case.
    pub of: &'static str,
    /// SI unit; empty for a plain number.
    pub unit: &'static str,
    /// What it means; the expression of a derived one.
    pub meaning: String,
}

/// Designs of equal axle mass, at most one of each line.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct EqualMassEntry {
    /// Mass of the bare axle that was asked for, kg.
    pub axle_mass_kg: f64,
    /// Designs that have it.
    pub points: Vec<RowEntry>,
}

impl StudyResults {
    fn of(outcome: &StudyOutcome) -> Self {
        let row = |row: &Row| row_entry(row, outcome);
        let equal = |equal: &EqualMass| EqualMassEntry {
            axle_mass_kg: equal.mass,
            points: equal.points.iter().map(row).collect(),
        };
        let varied = outcome.varied.iter();
        Self {
            name: outcome.name.clone(),
            note: outcome.note.clone(),
            seat_table_errors: outcome.seat_table_errors.clone(),
            kind: match outcome.kind {
                StudyKind::Sweep => "sweep",
                StudyKind::SideBySide { .. } => "side-by-side",
                StudyKind::Uncertainty => "uncertainty",
                StudyKind::Search => "search",
            },
            baseline: baseline_name(outcome),
            case: outcome.case.clone(),
            variants: outcome.variants.clone(),
            varied: varied.map(VariedEntry::from).collect(),
            rides: rides(outcome),
            quantities: quantities(outcome),
            rows: match outcome.summary {
                Some(_) => Vec::new(),
                None => outcome.rows.iter().map(row).collect(),
            },
            summary: outcome.summary.as_ref().map(|summary| summary_entry(summary, outcome)),
            limits: outcome.limits.iter().map(LimitEntry::from).collect(),
            uncertainty: UncertaintyEntry::of(outcome),
            constant_mass: outcome.constant_mass.iter().map(equal).collect(),
        }
    }
}

/// Every result that a study can have, then those that this one derives.
fn quantities(outcome: &StudyOutcome) -> Vec<QuantityEntry> {
    let derived = outcome.measures.iter().filter(|own| Quantity::named(&own.name).is_err());
    let derived = derived.map(|own| QuantityEntry {
        key: own.key(),
        name: own.name.clone(),
        of: "derived",
        unit: own.kind.si(),
        meaning: own.meaning.clone(),
    });
    QUANTITIES.iter().map(QuantityEntry::from).chain(derived).collect()
}

fn baseline_name(outcome: &StudyOutcome) -> Option<String> {
    let StudyKind::SideBySide { baseline } = outcome.kind else { return None };
    outcome.variants.get(baseline).cloned()
}

fn rides(outcome: &StudyOutcome) -> Vec<RideNameEntry> {
    let entries = outcome.rides.iter().map(|ride| RideNameEntry {
        name: ride.name.clone(),
        road: ride.road.clone(),
        speed_m_per_s: ride.speed,
    });
    entries.collect()
}

impl From<&Varied> for VariedEntry {
    fn from(varied: &Varied) -> Self {
        VariedEntry {
            path: varied.path.clone(),
            others: varied.others.clone(),
            name: varied.name.clone(),
            unit: varied.kind.si(),
            choices: varied.choices.iter().map(|choice| choice.name.clone()).collect(),
        }
    }
}

impl From<&Quantity> for QuantityEntry {
    fn from(quantity: &Quantity) -> Self {
        QuantityEntry {
            key: quantity.key(),
            name: quantity.name.clone(),
            of: if quantity.is_of_ride() { "ride" } else { "case" },
            unit: quantity.kind.si(),
            meaning: quantity.meaning.clone(),
        }
    }
}
