//! Values of tables for the parts of an axle, with what is wrong with them.

use axlebow_axle::{Side, Sides};
use axlebow_units::UnitSystem;

use super::error_words::{InUnits, shown_length};
use crate::content::{Assumed, Document, Table, Written};
use crate::faults::{Problems, Span, likely};
use crate::keys::MODEL;

/// Reads values of tables and collects validation_errors.
pub(crate) struct Builder<'d> {
    pub root: &'d Table,
    /// Unit system of the file, which messages are in.
    pub system: UnitSystem,
    pub problems: Problems,
    /// Defaults that depend on other keys.
    pub assumed: Vec<Assumed>,
}

impl<'d> Builder<'d> {
    pub(crate) fn of(document: &'d Document) -> Self {
        let (root, system) = (document.root(), document.system());
        Builder { root, system, problems: document.problems(), assumed: Vec::new() }
    }

    /// The keys whose values nobody has measured; a problem for one that a model does not have.
    pub(super) fn typical(&mut self) -> Vec<String> {
        let keys = || MODEL.keys.iter().map(|spec| spec.key);
        for Written { text, span } in self.root.texts("typical") {
            let key = text.split(['.', '[']).next().unwrap_or_default();
            if self.root.entry(key).is_none() {
                let hints = (Some("keys of this file, such as `tube`".to_owned()), likely(key, keys()));
                self.problems.push_likely(span.clone(), format!("the model has no `{text}`"), hints);
            }
        }
        self.root.texts("typical").iter().map(|written| written.text.clone()).collect()
    }

    /// The table that this kind of axle needs; a problem when it is missing or the other one is there.
    pub(super) fn one_of(&mut self, wanted: &'static str, other: &'static str) -> Option<&'d Table> {
        let kind = self.root.word("kind");
        if let Some(table) = self.root.optional_table(other) {
            let message = format!("a `{kind}` has no `[{other}]`");
            self.problems.push(table.span(), message, Some(format!("a `[{wanted}]` table")));
        }
        let found = self.root.optional_table(wanted);
        if found.is_none() {
            let message = format!("a `{kind}` needs a `[{wanted}]` table");
            self.problems.push(self.root.span_of("kind"), message, None);
        }
        found
    }

    /// Each side's value from a list of tables that say which side they describe.
    pub(crate) fn per_side<T: Copy>(
        &mut self,
        key: &'static str,
        make: impl Fn(&mut Self, &'d Table) -> Option<T>,
    ) -> Option<Sides<T>> {
        let mut found: Sides<Option<T>> = Sides { left: None, right: None };
        let mut given: Sides<bool> = Sides::default();
        for table in self.root.tables(key) {
            let value = make(self, table);
            for side in Side::BOTH.into_iter().filter(|side| covers(table, *side)) {
                if std::mem::replace(given.of_mut(side), true) {
                    let message = format!("the {} `{key}` is given twice", side.word());
                    self.problems.push(table.span_of("side"), message, None);
                }
                *found.of_mut(side) = value;
            }
        }
        for side in Side::BOTH.into_iter().filter(|side| !given.of(*side)) {
            let message = format!("the {} `{key}` is not given", side.word());
            let accepted = format!("a `[[{key}]]` with side = \"{}\" or \"both\"", side.word());
            let last = self.root.tables(key).last().map_or(0..0, |table| table.span_of("side"));
            self.problems.push(last, message, Some(accepted));
        }
        Some(Sides { left: found.left?, right: found.right? })
    }

    /// A length in the units of the file, to a tenth of a millimeter or a thousandth of an inch.
    pub(crate) fn length(&self, value: f64) -> String {
        shown_length(value, self.system)
    }

    /// The one of two examples that is in the units of the file.
    pub(crate) fn example(&self, si: &'static str, us: &'static str) -> &'static str {
        if self.system == UnitSystem::Us { us } else { si }
    }

    /// The value, or its error as a problem at `span`, in the units of the file.
    pub(crate) fn kept<T, E: InUnits>(&mut self, span: Span, made: Result<T, E>) -> Option<T> {
        made.map_err(|error| self.problems.push(span, error.in_units(self.system), None)).ok()
    }
}

/// Whether a table describes a side.
pub(crate) fn covers(table: &Table, side: Side) -> bool {
    table.optional_word("side").is_some_and(|word| word == "both" || word == side.word())
}
