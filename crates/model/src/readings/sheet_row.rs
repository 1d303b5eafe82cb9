//! A row of a sheet, cell by cell.

use axlebow_axle::{Actions, LoadCase};
use axlebow_units::{Kind, accepted_loads, parse, parse_load, show};

use crate::build::Model;
use crate::faults::{Problems, likely, quoted};
use crate::read::Row;

/// A row being read: what cannot be read is reported at its cell.
pub(super) struct SheetRow<'r> {
    pub row: &'r Row<'r>,
    pub model: &'r Model,
    pub text: &'r str,
    pub problems: &'r mut Problems,
    pub notes: &'r mut Vec<String>,
}

/// What is accepted in place of a cell, and what was likely meant.
type Hints = (Option<String>, Option<String>);

impl SheetRow<'_> {
    /// Line of the file, from 1.
    pub fn line(&self) -> usize {
        self.text[..self.row.span().start].matches('\n').count() + 1
    }

    /// Refuses a row that has not as many cells as the heading.
    pub fn has_width(&mut self, width: usize) -> bool {
        if self.row.width() != width {
            let message = format!("the row has {} cells", self.row.width());
            let accepted = format!("{width} cells, as in the heading");
            self.problems.push(self.row.span(), message, Some(accepted));
        }
        self.row.width() == width
    }

    pub fn refuse<T>(&mut self, cell: usize, message: String, hints: Hints) -> Option<T> {
        self.problems.push_likely(self.row.span_of(cell), message, hints);
        None
    }

    /// Place of a cell's word among those accepted.
    pub fn word(&mut self, place: usize, words: &[&str]) -> Option<usize> {
        let cell = self.row.cell(place).to_owned();
        let found = words.iter().position(|word| cell.eq_ignore_ascii_case(word));
        if found.is_none() {
            let accepted = words.iter().map(|word| format!("`{word}`")).collect::<Vec<_>>().join(", ");
            let message = if cell.is_empty() {
                format!("a cell is empty where one of {} is wanted", words.join(", "))
            } else {
                format!("{} is not known here", quoted(&cell))
            };
            return self.refuse(place, message, (Some(accepted), likely(&cell, words.iter().copied())));
        }
        found
    }

    /// A load case of the model by its name, or a load of the whole axle, both wheels alike.
    pub fn load(&mut self, place: usize) -> Option<LoadCase> {
        let cell = self.row.cell(place).to_owned();
        let named = cell.is_empty() || cell.starts_with(char::is_alphabetic);
        if named { self.named_load(place, &cell) } else { self.stated_load(place, &cell) }
    }

    fn named_load(&mut self, place: usize, cell: &str) -> Option<LoadCase> {
        let found = self.model.cases.iter().find(|case| case.name == cell);
        if found.is_none() {
            let names: Vec<&str> = self.model.cases.iter().map(|case| case.name.as_str()).collect();
            let accepted = format!("{}, or a load such as `60 kN`", names.join(", "));
            let likely = likely(cell, names.into_iter());
            let message = format!("the model has no load case {}", quoted(cell));
            return self.refuse(place, message, (Some(accepted), likely));
        }
        found.cloned()
    }

    fn stated_load(&mut self, place: usize, cell: &str) -> Option<LoadCase> {
        let load = match parse_load(cell) {
            Ok(load) => load,
            Err(error) => {
                return self.refuse(place, error.message(), (Some(accepted_loads()), error.likely()));
            }
        };
        let line = self.line();
        self.notes.extend(load.reading(cell).map(|read| format!("load of line {line}: {read}")));
        let load = load.force.value;
        if !(load > 0.0) {
            let accepted = "more than zero: what the road carries".to_owned();
            let message = format!("the load {} is impossible", quoted(cell));
            return self.refuse(place, message, (Some(accepted), None));
        }
        Some(LoadCase {
            name: show(load, Kind::Force, self.model.system),
            description: "a stated load on the road, both wheels alike".to_owned(),
            dynamic_factor: 1.0,
            actions: Actions { axle_load: load, gravity: 1.0, ..Actions::default() },
        })
    }

    /// A standard error, above zero.
    pub fn standard_error(&mut self, place: usize, kind: Kind) -> Option<f64> {
        let error = self.parsed(place, kind)?;
        if error > 0.0 {
            return Some(error);
        }
        let accepted =
            "more than zero: by how much the same reading, taken again, usually differs".to_owned();
        let message = format!("the standard error {} is impossible", quoted(self.row.cell(place)));
        self.refuse(place, message, (Some(accepted), None))
    }

    /// A quantity of a kind, SI.
    pub fn parsed(&mut self, place: usize, kind: Kind) -> Option<f64> {
        let cell = self.row.cell(place).to_owned();
        match parse(&cell, kind) {
            Ok(parsed) => Some(parsed.value),
            Err(error) => self.refuse(place, error.message(), (Some(error.accepted()), error.likely())),
        }
    }
}
