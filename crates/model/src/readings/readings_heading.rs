//! The heading of a readings file: which column is what.

use crate::faults::{Problems, likely, quoted};
use crate::read::Row;

/// Words of the columns; the last one is free text that may be left out.
const COLUMNS: [&str; 7] = ["quantity", "of", "load", "ground", "value", "standard error", "note"];
/// Columns that must be there.
const NEEDED: usize = 6;

/// Places of the columns, in the order of [`COLUMNS`], and the count of cells in a row.
#[derive(Debug, Clone, Copy)]
pub(crate) struct ReadingsHeading {
    /// Count of cells.
    pub width: usize,
    /// Places of the columns that must be there.
    pub places: [usize; NEEDED],
}

impl ReadingsHeading {
    /// Reads the heading; `None` if there is something wrong with it, which is added to the problems.
    pub fn of(row: &Row<'_>, problems: &mut Problems) -> Option<Self> {
        let mut places = [None; COLUMNS.len()];
        for cell in 0..row.width() {
            take(row, cell, (&mut places, problems));
        }
        for column in 0..NEEDED {
            if places[column].is_none() {
                let message = format!("there is no column `{}`", COLUMNS[column]);
                problems.push(row.span(), message, Some(accepted()));
            }
        }
        let found = |column: usize| places[column].unwrap_or(0);
        let places = std::array::from_fn(found);
        problems.is_empty().then_some(Self { width: row.width(), places })
    }
}

fn take(
    row: &Row<'_>,
    cell: usize,
    (places, problems): (&mut [Option<usize>; COLUMNS.len()], &mut Problems),
) {
    let word = row.cell(cell);
    match COLUMNS.iter().position(|column| word.eq_ignore_ascii_case(column)) {
        Some(column) if places[column].is_some() => {
            let message = format!("there are two columns `{}`", COLUMNS[column]);
            problems.push(row.span_of(cell), message, Some(accepted()));
        }
        Some(column) => places[column] = Some(cell),
        None => {
            let hints = (Some(accepted()), likely(word, COLUMNS.into_iter()));
            let message = format!("readings have no column {}", quoted(word));
            problems.push_likely(row.span_of(cell), message, hints);
        }
    }
}

fn accepted() -> String {
    let columns: Vec<String> = COLUMNS[..NEEDED].iter().map(|column| format!("`{column}`")).collect();
    format!("{} in any order, and `note` if wanted", columns.join(", "))
}
