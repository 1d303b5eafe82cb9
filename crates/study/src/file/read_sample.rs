//! How the values of varied keys come together, read from a study file.

use axlebow_model::{Assumed, Table};
use axlebow_numerics::{MOST_DIMENSIONS, Spread};

use super::reader::Reader;
use crate::ask::{MOST_OF_ALL, Plan, Purpose, REPLICATES, StudyKind, Together, UncertaintyOptions, Varied};

/// Designs of an uncertainty that says nothing of its sample.
const USUAL_DESIGNS: usize = 1024;
/// Fewest designs that an uncertainty is told from.
const FEWEST: usize = 64;

/// How values come together, before it is known how many there are.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Method {
    Grid,
    List,
    /// Ranges in which a search looks.
    Searched,
    Sampled(Spread),
}

impl Reader<'_> {
    /// How the file says that values come together.
    pub fn method(&mut self, kind: StudyKind) -> Method {
        if kind == StudyKind::Search {
            if let Some(table) = self.root.optional_table("sample") {
                let accepted = Some("`starts` of `[search]`".to_owned());
                self.problems.push(table.span(), "nothing is sampled in a search", accepted);
            }
            return Method::Searched;
        }
        let Some(table) = self.root.optional_table("sample") else {
            let sampled = kind == StudyKind::Uncertainty;
            return if sampled { Method::Sampled(Spread::Sobol) } else { Method::Grid };
        };
        let method = match table.word("method") {
            "grid" => Method::Grid,
            "list" => Method::List,
            "latin-hypercube" => Method::Sampled(Spread::LatinHypercube),
            "sobol" => Method::Sampled(Spread::Sobol),
            _ => Method::Sampled(Spread::Random),
        };
        if matches!(kind, StudyKind::SideBySide { .. }) {
            self.problems.push(table.span(), "nothing is sampled side by side", Some("a sweep".into()));
        }
        if kind == StudyKind::Uncertainty && !matches!(method, Method::Sampled(_)) {
            let accepted = Some("`sobol`, `latin-hypercube`, `random`".to_owned());
            self.problems.push(table.span_of("method"), "an uncertainty is told from a sample", accepted);
            return Method::Sampled(Spread::Sobol);
        }
        match (method, table.optional_count("designs")) {
            (Method::Sampled(_), None) => {
                let message = "it is not said how many designs are sampled";
                self.problems.push(table.span(), message, Some("`designs`, such as 1024".to_owned()));
            }
            (Method::Grid | Method::List, Some(_)) => {
                let message = "a grid or list has as many designs as its values make";
                let accepted = Some("`latin-hypercube`, `sobol` or `random` with `designs`".to_owned());
                self.problems.push(table.span_of("designs"), message, accepted);
            }
            _ => (),
        }
        method
    }

    /// How the values come together, now that these are known.
    pub fn together(&mut self, (kind, method): (StudyKind, Method), varied: &[Varied]) -> Together {
        match method {
            Method::Grid | Method::Searched => Together::Grid,
            Method::List => {
                self.check_lengths(varied);
                Together::List
            }
            Method::Sampled(spread) => Together::Sampled(self.plan((kind, spread), varied.len())),
        }
    }

    /// Of a list every key has as many values.
    fn check_lengths(&mut self, varied: &[Varied]) {
        let tables = self.root.tables("vary");
        let Some(first) = varied.first().filter(|_| varied.len() == tables.len()) else { return };
        for (own, table) in varied.iter().zip(tables) {
            let (count, wanted) = (own.values.len(), first.values.len());
            if count != wanted {
                let message =
                    format!("{:?} has {count} values in a list, and {:?} has {wanted}", own.path, first.path);
                self.problems.push(table.span(), message, Some("as many values of each key".to_owned()));
            }
        }
    }

    fn plan(&mut self, (kind, spread): (StudyKind, Spread), dimensions: usize) -> Plan {
        let table = self.root.optional_table("sample");
        let rows = table.and_then(|table| table.optional_count("designs"));
        let rows = rows.map_or(USUAL_DESIGNS, |rows| rows as usize);
        let seed = table.map_or(1, |table| u64::from(table.count("seed")));
        let with_indices = self.root.table("uncertainty").flag("indices");
        let purpose = match kind {
            StudyKind::Uncertainty => Purpose::Uncertainty { with_indices },
            _ => Purpose::Sweep,
        };
        let count = Plan::replicates(spread, purpose);
        let axes = if with_indices { 2 * dimensions } else { dimensions };
        if spread == Spread::Sobol && axes > MOST_DIMENSIONS {
            let message = format!("Sobol's sequence has no {axes} dimensions");
            let accepted = format!("{MOST_DIMENSIONS} varied keys at most, half of that with `indices`");
            self.misfit("sample", &message, &format!("{accepted}; or `latin-hypercube` or `random`"));
        } else if purpose != Purpose::Sweep && (rows < FEWEST || !rows.is_multiple_of(count)) {
            let of = if count > 1 { format!(", a multiple of {REPLICATES}") } else { String::new() };
            let span = table.map_or(0..0, |table| table.span_of("designs"));
            let message = format!("an uncertainty is not told from {rows} designs");
            self.problems.push(span, message, Some(format!("{FEWEST} or more{of}")));
        } else {
            return Plan::new(spread, (rows, dimensions), seed, purpose);
        }
        Plan::new(Spread::Random, (1, 1), 1, Purpose::Sweep)
    }

    /// What an uncertainty study is asked; its table has no use in others.
    pub fn uncertainty(&mut self, kind: StudyKind) -> UncertaintyOptions {
        let is_written = self.root.entry("uncertainty").is_some_and(|entry| !entry.assumed);
        if is_written && kind != StudyKind::Uncertainty {
            self.misfit("uncertainty", "it has a use in an uncertainty only", "`kind = \"uncertainty\"`");
        }
        let table = self.root.table("uncertainty");
        let shares = table.numbers("percentiles").iter().map(|percent| percent / 100.0).collect();
        UncertaintyOptions { shares, confidence: table.number("confidence") }
    }

    /// Defaults that were used for the sample and for what is said of it.
    pub fn assumed(&self, kind: StudyKind) -> Vec<Assumed> {
        let own = |assumed: &&Assumed| {
            let of = |table: &str| assumed.path.starts_with(table);
            of("sample.") || (kind == StudyKind::Uncertainty && of("uncertainty."))
        };
        let mut all: Vec<Assumed> = self.document.assumed().iter().filter(own).cloned().collect();
        if kind == StudyKind::Uncertainty && self.root.optional_table("sample").is_none() {
            let one = |key: &str, text: &str, meaning| Assumed {
                path: format!("sample.{key}"),
                text: text.to_owned(),
                meaning,
            };
            all.push(one("method", "sobol", "How values come together."));
            all.push(one("designs", &USUAL_DESIGNS.to_string(), "How many designs of each variant."));
            all.push(one("seed", "1", "Which of all samples."));
        }
        all
    }

    pub(crate) fn check_count(&mut self, count: usize) {
        if count > MOST_OF_ALL {
            let span = self.root.tables("vary").last().map_or(0..0, Table::span);
            let message = format!("the study has {count} designs");
            self.problems.push(span, message, Some(format!("{MOST_OF_ALL} at most")));
        }
    }
}
