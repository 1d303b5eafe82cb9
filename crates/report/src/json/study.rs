//! The document of a study, `axlebow/study/1`.

use axlebow_axle::CamberSplit;
use axlebow_study::{Design, EqualMass, Row, StudyOutcome};
use schemars::JsonSchema;
use serde::Serialize;

use super::{AssumedEntry, ModelEntry, SplitEntry, assumed, model, pretty};
use crate::ModelCard;

/// Name and version of the document.
pub const STUDY_SCHEMA: &str = "axlebow/study/1";

/// The document of a study as JSON text: pretty, ending in a new line, same bytes for the same outcome.
pub fn study_document(outcome: &StudyOutcome, card: &ModelCard) -> String {
    pretty(&StudyDocument::new(outcome, card))
}

/// The JSON Schema (2020-12) of the document of a study.
pub fn study_schema() -> String {
    pretty(&schemars::schema_for!(StudyDocument))
}

/// Result of a study.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct StudyDocument {
    /// `axlebow/study/1`.
    pub schema: &'static str,
    /// Name of the study.
    pub name: String,
    /// What the reader must know.
    pub note: Option<String>,
    /// The model without changes.
    pub model: ModelEntry,
    /// True when the model is a made-up demonstration.
    pub invented: bool,
    /// Load case that was run.
    pub case: String,
    /// Names of the variants.
    pub variants: Vec<String>,
    /// Keys that were varied, the last one fastest.
    pub varied: Vec<VariedEntry>,
    /// The designs, in order.
    pub rows: Vec<RowEntry>,
    /// Designs of equal axle mass.
    pub constant_mass: Vec<EqualMassEntry>,
    /// Defaults that were used.
    pub assumed: Vec<AssumedEntry>,
}

/// A key that was varied.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct VariedEntry {
    /// Path of the key.
    pub path: String,
    /// Unit of its values; empty for a plain number.
    pub unit: &'static str,
}

/// A design.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct RowEntry {
    /// Name of the variant.
    pub variant: String,
    /// Values of the varied keys, in their order and units.
    pub values: Vec<f64>,
    /// The result; `null` if there is none.
    pub design: Option<DesignEntry>,
    /// Why there is no result; `null` if there is one.
    pub reason: Option<String>,
}

/// Result of a design.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct DesignEntry {
    /// Mass of the bare axle, kg.
    pub axle_mass_kg: f64,
    /// Left of the vehicle.
    pub left: LeanEntry,
    /// Right of the vehicle.
    pub right: LeanEntry,
    /// Fibre stress of largest magnitude, tension positive, Pa.
    pub peak_stress_pa: f64,
    /// Height of the axle's centre above the line through the hubs, m.
    pub bow_m: f64,
}

/// How far a wheel leans.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct LeanEntry {
    /// Change of camber, positive with the tire's top outward, rad.
    pub camber_change_rad: f64,
    /// Camber change by source.
    pub split: SplitEntry,
}

/// Designs of equal axle mass, at most one of each line.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct EqualMassEntry {
    /// Mass of the bare axle that was asked for, kg.
    pub mass_kg: f64,
    /// Designs that have it.
    pub points: Vec<RowEntry>,
}

impl StudyDocument {
    /// The document of an outcome.
    pub fn new(outcome: &StudyOutcome, card: &ModelCard) -> Self {
        let row = |row: &Row| row_entry(row, outcome);
        let equal = |equal: &EqualMass| EqualMassEntry {
            mass_kg: equal.mass,
            points: equal.points.iter().map(row).collect(),
        };
        let varied = outcome.varied.iter();
        Self {
            schema: STUDY_SCHEMA,
            name: outcome.name.clone(),
            note: outcome.note.clone(),
            model: model(card),
            invented: card.invented,
            case: outcome.case.clone(),
            variants: outcome.variants.clone(),
            varied: varied.map(|v| VariedEntry { path: v.path.clone(), unit: v.kind.si() }).collect(),
            rows: outcome.rows.iter().map(row).collect(),
            constant_mass: outcome.constant_mass.iter().map(equal).collect(),
            assumed: assumed(card),
        }
    }
}

fn row_entry(row: &Row, outcome: &StudyOutcome) -> RowEntry {
    RowEntry {
        variant: outcome.variants[row.variant].clone(),
        values: row.values.clone(),
        design: row.result.as_ref().ok().map(DesignEntry::from),
        reason: row.result.as_ref().err().cloned(),
    }
}

impl From<&Design> for DesignEntry {
    fn from(design: &Design) -> Self {
        let lean = |camber_change_rad, split: &CamberSplit| LeanEntry {
            camber_change_rad,
            split: SplitEntry::from(split),
        };
        Self {
            axle_mass_kg: design.axle_mass,
            left: lean(design.camber_change.left, &design.split.left),
            right: lean(design.camber_change.right, &design.split.right),
            peak_stress_pa: design.peak_stress,
            bow_m: design.bow,
        }
    }
}
