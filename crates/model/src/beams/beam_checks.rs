//! Values that a beam file expects.

use axlebow_beam::{Asked, Check, PeakKind};

use crate::build::Builder;
use crate::content::Table;

/// Keys of the values, of which a check has one.
const VALUES: [&str; 9] =
    ["deflection", "slope", "shear", "moment", "stress", "reaction", "reaction_moment", "frequency", "root"];

impl Builder<'_> {
    /// The checks of the file.
    pub(super) fn checks(&mut self) -> Vec<Check> {
        self.root.tables("check").iter().filter_map(|table| self.beam_check(table)).collect()
    }

    fn beam_check(&mut self, table: &Table) -> Option<Check> {
        let given: Vec<&'static str> = VALUES.into_iter().filter(|key| table.entry(key).is_some()).collect();
        let [key] = given[..] else {
            let message = format!("check {:?} expects {} values", table.text("name"), given.len());
            let accepted = VALUES.map(|key| format!("`{key}`")).join(", ");
            self.problems.push(table.span(), message, Some(format!("one of {accepted}")));
            return None;
        };
        Some(Check {
            name: table.text("name").to_owned(),
            case: table.optional_text("case").map(str::to_owned),
            asked: self.asked(table, key)?,
            expected: table.number(key),
            tolerance: table.number("tolerance"),
            source: table.text("source").to_owned(),
        })
    }

    fn asked(&mut self, table: &Table, key: &'static str) -> Option<Asked> {
        let at = table.optional_number("at");
        let along = |kind| Some(Asked::Along { kind, at });
        match key {
            "deflection" => along(PeakKind::Deflection),
            "slope" => along(PeakKind::Slope),
            "shear" => along(PeakKind::Shear),
            "moment" => along(PeakKind::Moment),
            "stress" => along(PeakKind::Stress),
            "reaction" => Some(Asked::Reaction { at: self.wanted(table, key, "at", at)? }),
            "reaction_moment" => Some(Asked::ReactionMoment { at: self.wanted(table, key, "at", at)? }),
            _ => {
                let mode = table.optional_count("mode").map(|mode| mode as usize);
                let number = self.wanted(table, key, "mode", mode)?;
                Some(if key == "root" { Asked::Root { number } } else { Asked::Frequency { number } })
            }
        }
    }

    /// What a value cannot do without.
    fn wanted<T>(&mut self, table: &Table, value: &str, key: &str, given: Option<T>) -> Option<T> {
        if given.is_none() {
            let message = format!("a check of `{value}` needs its `{key}`");
            self.problems.push(table.span_of(value), message, Some(format!("`{key}` beside it")));
        }
        given
    }
}
