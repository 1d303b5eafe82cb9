//! What a page asks about: what it began with, the values of its controls, and what more.

use std::sync::Arc;

use axlebow_model::Model;
use axlebow_report::ModelCard;
use serde::Deserialize;

use crate::disk::Source;
use crate::server::Live;
use crate::trouble::Trouble;
use crate::values::{Changed, Values};

/// What a page asks about.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Choice {
    /// What it began with.
    pub revision: String,
    /// The controls that were moved.
    #[serde(default)]
    pub values: Values,
    /// The load case.
    pub case: String,
}

/// A choice with its model.
pub(crate) struct Chosen {
    pub source: Arc<Source>,
    pub changed: Changed,
    pub model: Model,
    pub card: ModelCard,
}

impl Choice {
    /// The model of the choice.
    pub fn model(&self, live: &Live) -> Result<Chosen, Trouble> {
        let source = live.shelf.held(&self.revision)?;
        let system = live.options.system;
        let changed = Changed::of(&source, &self.values, system)?;
        let (model, card) = changed.built(system)?;
        if model.cases.iter().all(|case| case.name != self.case) {
            return Err(Trouble::Malformed(format!("the model has no load case `{}`", self.case)));
        }
        Ok(Chosen { source, changed, model, card })
    }
}
