//! What a report says about the model itself.

use axlebow_units::UnitSystem;

/// What a report says about the model itself.
#[derive(Debug, Clone, PartialEq)]
pub struct ModelCard {
    /// Name of the model; any text.
    pub name: String,
    /// Hash of the model file.
    pub hash: String,
    /// Defaults that stand for what the file does not say.
    pub assumed: Vec<Assumed>,
    /// Units of tables and plots.
    pub system: UnitSystem,
    /// True when the model is a made-up demonstration.
    pub invented: bool,
}

/// A default that was used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Assumed {
    /// Path of the key, such as `seat.bush.rate`.
    pub path: String,
    /// Value as a model file would say it, such as `2.5 kN/mm`.
    pub value: String,
    /// What the key means.
    pub meaning: String,
}
