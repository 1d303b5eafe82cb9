//! What a search looks for, read from a study file.

use axlebow_model::{Table, Written};

use super::reader::Reader;
use crate::ask::{SearchOptions, StudyKind};
use crate::solve::Has;

/// Most results that are traded against the goal.
const MOST_AGAINST: usize = 2;

impl Reader<'_> {
    /// What a search is asked; its table has no use in other studies.
    pub fn search(&mut self, kind: StudyKind, has: Has) -> Option<SearchOptions> {
        let table = match (self.root.optional_table("search"), kind) {
            (Some(table), StudyKind::Search) => table,
            (Some(_), _) => {
                self.misfit("search", "it has a use in a search only", "`kind = \"search\"`");
                return None;
            }
            (None, StudyKind::Search) => {
                let accepted = "a `[search]` table with `least` or `most`";
                self.misfit("kind", "it is not said what is searched for", accepted);
                return None;
            }
            (None, _) => return None,
        };
        let goal = self.goal(table);
        let against: Option<Vec<String>> =
            table.texts("against").iter().map(|written| self.result(written, has)).collect();
        self.check_against(table);
        let (goal, least) = goal?;
        let goal = self.result(&goal, has)?;
        let (starts, seed) = (table.count("starts") as usize, u64::from(table.count("seed")));
        Some(SearchOptions { goal, least, against: against?, starts, seed })
    }

    fn goal(&mut self, table: &Table) -> Option<(Written, bool)> {
        match (Self::written(table, "least"), Self::written(table, "most")) {
            (Some(least), None) => Some((least, true)),
            (None, Some(most)) => Some((most, false)),
            _ => {
                let message = "it is not plain what is searched for";
                let accepted = Some("one of `least` and `most`, such as `least = \"axle-mass\"`".to_owned());
                self.problems.push(table.span(), message, accepted);
                None
            }
        }
    }

    fn check_against(&mut self, table: &Table) {
        let count = table.texts("against").len();
        if count > MOST_AGAINST {
            let message = format!("{count} results are traded against the goal");
            self.problems.push(table.span_of("against"), message, Some(format!("{MOST_AGAINST} at most")));
        }
    }
}
