//! A study file that is read, and what is wrong with it.

use axlebow_model::{Document, ModelError, Problems, Span, Table, Written};
use axlebow_units::UnitSystem;

use super::files::Files;
use crate::solve::Has;

/// Reads the tables of a study file against the files that it points to and collects validation_errors.
pub(crate) struct Reader<'d> {
    pub document: &'d Document,
    pub root: &'d Table,
    pub files: &'d Files,
    pub problems: Problems,
    /// How values were read, where that is not plain from the files.
    pub notes: Vec<String>,
}

impl Reader<'_> {
    /// Reports that a key does not go with the rest of the file.
    pub(crate) fn misfit(&mut self, key: &str, message: &str, accepted: &str) {
        self.problems.push(self.root.span_of(key), message, Some(accepted.to_owned()));
    }

    /// The name of a result of the study.
    pub(crate) fn result(&mut self, Written { text, span }: &Written, has: Has) -> Option<String> {
        match has.result_named(text) {
            Ok(name) => Some(name),
            Err(none) => {
                let hints = (Some(none.accepted), none.likely);
                self.problems.push_likely(span.clone(), none.why, hints);
                None
            }
        }
    }

    /// The unit system that messages are in: that of the model.
    pub(crate) fn system(&self) -> UnitSystem {
        let own = self.files.model.as_ref().or(self.files.of_variants.iter().flatten().next());
        own.map_or(self.document.system(), Document::system)
    }

    /// Keeps how a value was read, unless that is known already.
    pub(crate) fn note(&mut self, note: String) {
        if !self.notes.contains(&note) {
            self.notes.push(note);
        }
    }

    /// Bytes of a value as written.
    pub(crate) fn written(table: &Table, key: &str) -> Option<Written> {
        let text = table.optional_text(key)?.to_owned();
        Some(Written { text, span: table.span_of(key) })
    }

    /// Reports at the path if that is at fault, else at the value.
    pub(crate) fn push_refusal(&mut self, (path, value): (&Span, &Span), refusal: &ModelError) {
        let span = if matches!(refusal, ModelError::Refused { .. }) { value } else { path };
        self.problems.push_refusal(span.clone(), refusal);
    }
}
