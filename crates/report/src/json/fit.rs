//! The document of a fit, `axlebow/fit/1`.

use axlebow_model::Reading;
use axlebow_study::{FitOutcome, FittedReading, FittedUnknown, FurtherReading, Scale};
use schemars::JsonSchema;
use serde::Serialize;

use super::{AssumedEntry, ModelEntry, WarningEntry, assumed, model, pretty, schema_of};
use crate::{ModelCard, fit_words};

/// Name and version of the document.
pub const FIT_SCHEMA: &str = "axlebow/fit/1";

/// The document of a fit as JSON text: pretty, ending in a new line, same bytes for the same outcome.
pub fn fit_document(outcome: &FitOutcome, card: &ModelCard) -> String {
    let estimate = &outcome.estimate;
    let freedom = estimate.degrees_of_freedom;
    pretty(&FitDocument {
        schema: FIT_SCHEMA,
        model: model(card),
        unknowns: outcome.unknowns.iter().map(FittedUnknownEntry::from).collect(),
        covariance: estimate.covariance.clone(),
        correlation: estimate.correlation.clone(),
        readings: outcome.readings.iter().map(FittedReadingEntry::from).collect(),
        chi_squared: estimate.chi_squared,
        degrees_of_freedom: freedom,
        chi_squared_per_degree: (freedom > 0).then(|| estimate.chi_squared / freedom as f64),
        chance_of_more: estimate.chance,
        conditioning: estimate.conditioning,
        steps: estimate.steps,
        converged: estimate.converged,
        further: outcome.further.iter().map(FurtherReadingEntry::from).collect(),
        assumed: assumed(card),
        warnings: estimate.warnings.iter().map(WarningEntry::from).collect(),
    })
}

/// The JSON Schema (2020-12) of the document of a fit.
pub fn fit_schema() -> String {
    schema_of::<FitDocument>(FIT_SCHEMA)
}

/// A model fitted to readings.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct FitDocument {
    /// `axlebow/fit/1`.
    pub schema: &'static str,
    /// The model that was fitted, as it was before.
    pub model: ModelEntry,
    /// The unknowns.
    pub unknowns: Vec<FittedUnknownEntry>,
    /// Covariance by the scatter of the readings; the entry of two unknowns has the product of their units; null where the
    /// readings do not determine both.
    pub covariance: Vec<Vec<Option<f64>>>,
    /// Correlation; null where the readings do not determine both.
    pub correlation: Vec<Vec<Option<f64>>>,
    /// The readings beside the model.
    pub readings: Vec<FittedReadingEntry>,
    /// Sum of squares of residuals, each over its standard error.
    pub chi_squared: f64,
    /// Readings less unknowns.
    pub degrees_of_freedom: usize,
    /// Chi squared for each degree of freedom; null without one.
    pub chi_squared_per_degree: Option<f64>,
    /// Probability that readings with such errors scatter more; null without a degree of freedom.
    pub chance_of_more: Option<f64>,
    /// Least over greatest singular value of the Jacobian of weighted residuals, its columns made of length 1.
    pub conditioning: f64,
    /// Steps of the search.
    pub steps: usize,
    /// Whether the search ended because nothing was left to gain.
    pub converged: bool,
    /// Further readings that would lower the worst standard error most (E-optimal), best first.
    pub further: Vec<FurtherReadingEntry>,
    /// Defaults that were used.
    pub assumed: Vec<AssumedEntry>,
    /// Doubts about the fit.
    pub warnings: Vec<WarningEntry>,
}

/// A fitted unknown.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct FittedUnknownEntry {
    /// Path of the key in the model file.
    pub path: String,
    /// SI unit of its values; empty for a plain number.
    pub unit: &'static str,
    /// The scale on which it was varied: `logarithm`, `share` of the way between its bounds, or `plain`.
    pub scale: &'static str,
    /// Value in the model file.
    pub first: f64,
    /// Fitted value.
    pub value: f64,
    /// 95 % interval; null where the readings do not determine it.
    pub interval: Option<[f64; 2]>,
    /// Standard error that the stated errors of the readings alone would make.
    pub stated_error: Option<f64>,
}

/// A reading beside the model.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct FittedReadingEntry {
    /// Line of the readings file, from 1.
    pub line: usize,
    /// What was read: `camber`, `toe`, `bow` or `natural-frequency`.
    pub quantity: &'static str,
    /// Of what: a side, `middle`, or the name of a mode.
    pub of: String,
    /// Load case, or a stated load.
    pub load: String,
    /// `standing` or `rolling`.
    pub ground: &'static str,
    /// SI unit of the values.
    pub unit: &'static str,
    /// What was read.
    pub read: f64,
    /// Its standard error.
    pub standard_error: f64,
    /// What the model said before.
    pub first: f64,
    /// What the fitted model says.
    pub fitted: f64,
    /// What was read less what the fitted model says.
    pub residual: f64,
    /// The same over the standard error.
    pub residual_in_errors: f64,
}

/// A reading that was not taken.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct FurtherReadingEntry {
    /// What to read.
    pub quantity: &'static str,
    /// Of what.
    pub of: String,
    /// Load case.
    pub load: String,
    /// `standing` or `rolling`.
    pub ground: &'static str,
    /// SI unit of the standard error.
    pub unit: &'static str,
    /// The standard error that is counted on.
    pub standard_error: f64,
    /// What it leaves of the worst standard error; 0 where that was not determined at all.
    pub leaves: f64,
}

impl From<&FittedUnknown> for FittedUnknownEntry {
    fn from(own: &FittedUnknown) -> Self {
        FittedUnknownEntry {
            path: own.unknown.path.clone(),
            unit: own.unknown.kind.si(),
            scale: match own.unknown.scale {
                Scale::Logarithm => "logarithm",
                Scale::Share { .. } => "share",
                Scale::Plain { .. } => "plain",
            },
            first: own.unknown.start,
            value: own.value,
            interval: own.interval,
            stated_error: own.stated_error,
        }
    }
}

impl From<&FittedReading> for FittedReadingEntry {
    fn from(own: &FittedReading) -> Self {
        let Reading { quantity, load, ground, value, standard_error, line } = &own.reading;
        FittedReadingEntry {
            line: *line,
            quantity: quantity.word(),
            of: quantity.of().to_owned(),
            load: load.name.clone(),
            ground: fit_words::ground(*ground),
            unit: quantity.kind().si(),
            read: *value,
            standard_error: *standard_error,
            first: own.first,
            fitted: own.fitted,
            residual: own.residual(),
            residual_in_errors: own.in_standard_errors(),
        }
    }
}

impl From<&FurtherReading> for FurtherReadingEntry {
    fn from(own: &FurtherReading) -> Self {
        let Reading { quantity, load, ground, standard_error, .. } = &own.reading;
        FurtherReadingEntry {
            quantity: quantity.word(),
            of: quantity.of().to_owned(),
            load: load.name.clone(),
            ground: fit_words::ground(*ground),
            unit: quantity.kind().si(),
            standard_error: *standard_error,
            leaves: own.leaves,
        }
    }
}
