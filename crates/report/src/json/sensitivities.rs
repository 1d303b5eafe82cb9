//! The document of sensitivities, `axlebow/sensitivities/1`.

use axlebow_axle::CaseReadings;
use axlebow_study::{KeySensitivity, SensitivityOutcome};
use schemars::JsonSchema;
use serde::Serialize;

use super::{AssumedEntry, ModelEntry, WarningEntry, assumed, model, pretty, schema_of};
use crate::ModelCard;

/// Name and version of the document.
pub const SENSITIVITIES_SCHEMA: &str = "axlebow/sensitivities/1";

/// The document of sensitivities as JSON text: pretty, ending in a new line, same bytes for the same outcome.
pub fn sensitivities_document(outcomes: &[SensitivityOutcome], card: &ModelCard) -> String {
    pretty(&SensitivitiesDocument {
        schema: SENSITIVITIES_SCHEMA,
        model: model(card),
        cases: outcomes.iter().map(SensitivityCaseEntry::from).collect(),
        assumed: assumed(card),
    })
}

/// The JSON Schema (2020-12) of the document of sensitivities.
pub fn sensitivities_schema() -> String {
    schema_of::<SensitivitiesDocument>(SENSITIVITIES_SCHEMA)
}

/// What each number of a model file does to an axle under load.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SensitivitiesDocument {
    /// `axlebow/sensitivities/1`.
    pub schema: &'static str,
    /// The model that was run.
    pub model: ModelEntry,
    /// Each load case.
    pub cases: Vec<SensitivityCaseEntry>,
    /// Defaults that were used.
    pub assumed: Vec<AssumedEntry>,
}

/// A load case.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SensitivityCaseEntry {
    /// Its name.
    pub case: String,
    /// What the axle reads as it is.
    pub own: ReadingsEntry,
    /// Position of the peak stress.
    pub peak_stress_y_m: f64,
    /// Keys that something depends on, largest effect on camber first.
    pub keys: Vec<SensitivityEntry>,
    /// Keys that nothing depends on.
    pub without_effect: Vec<String>,
    /// Keys without a derivative.
    pub refused: Vec<RefusedEntry>,
    /// Doubts about the load case.
    pub warnings: Vec<WarningEntry>,
}

/// Camber changes, bow, stress and mass; of a slope, each per SI unit of the key.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct ReadingsEntry {
    /// Camber change of the left wheel.
    pub left_camber_change_rad: f64,
    /// Camber change of the right wheel.
    pub right_camber_change_rad: f64,
    /// Height of the axle's center above the line through the hubs.
    pub bow_m: f64,
    /// Stress at the place of the peak.
    pub peak_stress_pa: f64,
    /// Mass of the bare axle.
    pub axle_mass_kg: f64,
}

/// A key of the model file.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SensitivityEntry {
    /// Its path.
    pub path: String,
    /// Its value in `unit`.
    pub value: f64,
    /// SI unit of the value; empty for a plain number.
    pub unit: String,
    /// Whether the value is a default.
    pub assumed: bool,
    /// Change of each reading per `unit`.
    pub slope: ReadingsEntry,
    /// Camber of the wheel that leans most per mass that the key adds; null where the mass stays.
    pub camber_per_mass_rad_kg: Option<f64>,
    /// `adjoint`, or `solutions` where it took finite differences of full solutions.
    pub by: &'static str,
}

/// A key without a derivative.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct RefusedEntry {
    /// Its path.
    pub path: String,
    /// Why.
    pub why: String,
}

impl From<&SensitivityOutcome> for SensitivityCaseEntry {
    fn from(outcome: &SensitivityOutcome) -> Self {
        let refused = outcome.refused.iter().cloned().map(|(path, why)| RefusedEntry { path, why });
        SensitivityCaseEntry {
            case: outcome.case.clone(),
            own: ReadingsEntry::from(&outcome.own),
            peak_stress_y_m: outcome.peak_stress_y,
            keys: outcome.keys.iter().map(|key| entry(key, &outcome.own)).collect(),
            without_effect: outcome.without_effect.clone(),
            refused: refused.collect(),
            warnings: outcome.warnings.iter().map(WarningEntry::from).collect(),
        }
    }
}

impl From<&CaseReadings> for ReadingsEntry {
    fn from(readings: &CaseReadings) -> Self {
        ReadingsEntry {
            left_camber_change_rad: readings.camber_change.left,
            right_camber_change_rad: readings.camber_change.right,
            bow_m: readings.bow,
            peak_stress_pa: readings.peak_stress,
            axle_mass_kg: readings.axle_mass,
        }
    }
}

fn entry(key: &KeySensitivity, own: &CaseReadings) -> SensitivityEntry {
    SensitivityEntry {
        path: key.key.path.clone(),
        value: key.key.value,
        unit: key.key.kind.si().to_owned(),
        assumed: key.key.assumed,
        slope: ReadingsEntry::from(&key.slope),
        camber_per_mass_rad_kg: key.camber_per_mass(own),
        by: key.by.word(),
    }
}
