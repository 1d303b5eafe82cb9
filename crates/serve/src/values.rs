//! The values of a page's controls, put into its model by the rules of `--set`.

use std::collections::BTreeMap;

use axlebow_model::{Document, Model};
use axlebow_report::ModelCard;
use axlebow_units::UnitSystem;
use serde::Deserialize;

use crate::controls::{Control, controls};
use crate::disk::Source;
use crate::trouble::Trouble;

/// What a control was moved to.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(untagged)]
pub(crate) enum Setting {
    Flag(bool),
    Number(f64),
    Word(String),
}

/// What a control makes of its value.
#[derive(Debug, Clone, PartialEq, Hash)]
pub(crate) enum Edit {
    /// A key and its value, as in `--set`.
    Set(String, String),
    /// A stiffener, as a model file writes it.
    Add(String),
}

/// The controls that were moved, by their keys.
pub(crate) type Values = BTreeMap<String, Setting>;

/// A model with the values of its page.
#[derive(Debug)]
pub(crate) struct Changed {
    pub document: Document,
    pub edits: Vec<Edit>,
}

impl Changed {
    /// The model of a page, each control that was moved set.
    pub fn of(source: &Source, values: &Values, system: Option<UnitSystem>) -> Result<Changed, Trouble> {
        let system = system.unwrap_or(source.document.system());
        let mut changed = Changed { document: source.document.clone(), edits: Vec::new() };
        source.applied.iter().try_for_each(|edit| changed.make(edit.clone()))?;
        let own = controls(&changed.document, system);
        if let Some(key) = values.keys().find(|key| own.iter().all(|control| control.key != **key)) {
            return Err(Trouble::Malformed(format!("there is no control `{key}`")));
        }
        for control in &own {
            if let Some(setting) = values.get(control.key) {
                changed.apply(control, setting, values)?;
            }
        }
        Ok(changed)
    }

    fn apply(&mut self, control: &Control, setting: &Setting, all: &Values) -> Result<(), Trouble> {
        control.edits(setting, all)?.into_iter().try_for_each(|edit| self.make(edit))
    }

    /// Makes one change more.
    pub fn make(&mut self, edit: Edit) -> Result<(), Trouble> {
        match &edit {
            Edit::Set(path, text) => self.document.set(path, text)?,
            Edit::Add(text) => self.document = self.document.with_stiffener(text)?,
        }
        self.edits.push(edit);
        Ok(())
    }

    /// What was changed, as options of the command line say it: `tube.wall=9 mm`; none of a stiffener that was added.
    pub fn settings(&self) -> impl Iterator<Item = String> {
        self.edits.iter().filter_map(|edit| match edit {
            Edit::Set(path, text) => Some(format!("{path}={text}")),
            Edit::Add(_) => None,
        })
    }

    /// The axle, and what results say about it: the same as on the command line with the same changes.
    pub fn built(&self, system: Option<UnitSystem>) -> Result<(Model, ModelCard), Trouble> {
        let model = Model::of(&self.document)?;
        let mut card = ModelCard::of(&model, system);
        card.settings.splice(..0, self.settings().map(|change| format!("set {change}")));
        if self.edits.iter().any(|edit| matches!(edit, Edit::Add(_))) {
            card.settings.push("a stiffener added on the live page".to_owned());
        }
        Ok((model, card))
    }
}
