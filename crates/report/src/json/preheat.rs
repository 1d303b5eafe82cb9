//! What a steel says about preheat, in documents.

use axlebow_axle::Preheat;
use schemars::JsonSchema;
use serde::Serialize;

/// What a steel that is welded says about preheat.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct PreheatEntry {
    /// The parts that are made of it.
    pub parts: String,
    /// Carbon equivalent by the formula of the International Institute of Welding; null where it is not known.
    pub carbon_equivalent_percent: Option<f64>,
    /// `unneeded`, `usual`, `controlled` or `unknown`.
    pub need: &'static str,
    /// What to do.
    pub advice: &'static str,
    /// Where the limits come from; null where the carbon equivalent is not known.
    pub source: Option<&'static str>,
}

impl From<&Preheat> for PreheatEntry {
    fn from(steel: &Preheat) -> Self {
        Self {
            parts: steel.parts.clone(),
            carbon_equivalent_percent: steel.carbon_equivalent,
            need: steel.need(),
            advice: steel.advice(),
            source: steel.check.as_ref().map(|check| check.source),
        }
    }
}
