//! Keys of words, or of true and false, that take several values in a study.

use axlebow_model::{Holds, Table, Written};
use axlebow_units::Kind;

use super::read_vary::Into;
use super::reader::Reader;
use crate::ask::{Choice, Varied};

impl Reader<'_> {
    /// Whether the first of some keys is known to hold words, or true and false.
    pub(crate) fn holds_words(&self, paths: &[Written], files: Into<'_>) -> bool {
        let Some(key) = paths.first().map(|path| files.key(path)) else { return false };
        let holds = key.documents.first().and_then(|document| document.holds(key.own).ok());
        matches!(holds, Some(Holds::Choice(_) | Holds::Flag))
    }

    /// Such keys, as a choice among the values that the table lists.
    pub(crate) fn varied_words(
        &mut self,
        (table, paths): (&Table, &[Written]),
        files: Into<'_>,
        seen: &mut Vec<String>,
    ) -> Option<Varied> {
        for path in paths {
            self.check_free(path, files, seen)?;
        }
        self.check_keys(table, &["values"], "a key of words")?;
        let choices: Option<Vec<Choice>> =
            table.texts("values").iter().map(|value| self.choice_of(value, paths, files)).collect();
        let choices = choices?;
        let places = (0..choices.len()).map(|place| place as f64).collect();
        Some(Varied { choices, ..Varied::of_key(&paths[0].text, Kind::Ratio, places) })
    }

    /// One value of the keys, tried on every file that has them.
    fn choice_of(&mut self, value: &Written, paths: &[Written], files: Into<'_>) -> Option<Choice> {
        for path in paths {
            let key = files.key(path);
            for document in &key.documents {
                let mut changed = (*document).clone();
                if let Err(refusal) = changed.set(key.own, &value.text) {
                    self.push_refusal((&path.span, &value.span), &refusal);
                    return None;
                }
                self.note_changes(document, &changed, &value.text);
            }
        }
        let changes = paths.iter().map(|path| (path.text.clone(), value.text.clone()));
        Some(Choice { name: value.text.clone(), changes: changes.collect() })
    }
}
