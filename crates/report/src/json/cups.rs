//! The document of a cup count, `axlebow/cups/2`.

use axlebow_axle::tread::{Cups, Explanation, SuspectKind};
use schemars::JsonSchema;
use serde::Serialize;

use super::{pretty, schema_of};

/// Name and version of the document.
const CUPS_SCHEMA: &str = "axlebow/cups/2";

/// A cup count and what may explain it.
#[derive(Serialize, JsonSchema)]
struct CupsDocument {
    /// `axlebow/cups/2`.
    schema: &'static str,
    #[serde(flatten)]
    cups: CupsEntry,
}

/// A cup count and what may explain it.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct CupsEntry {
    /// Cups round the tire.
    pub count: u16,
    /// Speed.
    pub speed_m_s: f64,
    /// Rolling radius.
    pub tire_radius_m: f64,
    /// From cup to cup along the tread.
    pub spacing_m: f64,
    /// Frequency that prints them.
    pub frequency_hz: f64,
    /// The same had one cup fewer been counted; null below one.
    pub frequency_if_one_fewer_hz: Option<f64>,
    /// The same had one cup more been counted.
    pub frequency_if_one_more_hz: Option<f64>,
    /// Turns of the wheel for each second.
    pub wheel_frequency_hz: f64,
    /// What may have printed them, the likeliest first.
    pub explanations: Vec<ExplanationEntry>,
}

/// Something that may have printed cups.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ExplanationEntry {
    /// `mode`, `road` or `wheel-turn`.
    pub kind: &'static str,
    /// Its name.
    pub name: String,
    /// Its frequency at this speed.
    pub frequency_hz: f64,
    /// Its frequency over that of the cups, less one.
    pub off_by: f64,
    /// Cups that it would print in a turn.
    pub cups_per_turn: f64,
    /// Nearness by weight, 0 to 1.
    pub score: f64,
    /// Why it has its weight.
    pub why: String,
}

/// A cup count as JSON text.
pub fn cups_document(outcome: &Cups) -> String {
    pretty(&CupsDocument { schema: CUPS_SCHEMA, cups: CupsEntry::from(outcome) })
}

/// The JSON Schema (2020-12) of the document of a cup count.
pub fn cups_schema() -> String {
    schema_of::<CupsDocument>(CUPS_SCHEMA)
}

impl From<&Cups> for CupsEntry {
    fn from(outcome: &Cups) -> Self {
        let [fewer, more] = outcome.misread;
        CupsEntry {
            count: outcome.count,
            speed_m_s: outcome.speed,
            tire_radius_m: outcome.radius,
            spacing_m: outcome.spacing,
            frequency_hz: outcome.frequency,
            frequency_if_one_fewer_hz: fewer,
            frequency_if_one_more_hz: more,
            wheel_frequency_hz: outcome.wheel_frequency,
            explanations: outcome.explanations.iter().map(ExplanationEntry::from).collect(),
        }
    }
}

impl From<&Explanation> for ExplanationEntry {
    fn from(explanation: &Explanation) -> Self {
        let suspect = &explanation.suspect;
        ExplanationEntry {
            kind: match suspect.kind {
                SuspectKind::Mode => "mode",
                SuspectKind::Road => "road",
                SuspectKind::WheelTurn => "wheel-turn",
            },
            name: suspect.name.clone(),
            frequency_hz: suspect.frequency,
            off_by: explanation.off_by,
            cups_per_turn: explanation.cups,
            score: explanation.score,
            why: suspect.why.clone(),
        }
    }
}
