//! A remedy put into the page's axle.

use serde::Deserialize;

use crate::choice::Choice;
use crate::routes::begun;
use crate::server::Live;
use crate::trouble::Trouble;
use crate::values::{Changed, Edit};

/// A change of a remedy, as its document has it.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ChangeAsked {
    /// Key of the model; none for a stiffener that is put on.
    path: Option<String>,
    /// What is to stand there, or the stiffener's table.
    text: String,
}

/// What a page asks to be put into its axle.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ApplyQuestion {
    /// The axle.
    pub axle: Choice,
    /// What a remedy changes.
    pub changes: Vec<ChangeAsked>,
}

/// The axle with the remedy, for the page to go on from, its controls where the remedy has put them.
pub(crate) fn apply(live: &Live, asked: &ApplyQuestion) -> Result<String, Trouble> {
    let own = asked.axle.model(live)?;
    let mut changed = own.changed;
    for change in &asked.changes {
        let text = change.text.clone();
        changed.make(match &change.path {
            Some(path) => Edit::Set(path.clone(), text),
            None => Edit::Add(text),
        })?;
    }
    let Changed { document, edits } = changed;
    axlebow_model::Model::of(&document)?;
    let source = live.shelf.with_edits(&own.source, edits);
    begun(live, &source)
}
