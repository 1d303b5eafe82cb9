//! The heading of a sheet of removed tires: which column is what.

use crate::faults::{Problems, likely, quoted};
use crate::read::Row;

/// Columns that must be there beside the ribs.
const COLUMNS: [&str; 5] = ["wheel", "tire", "load", "distance", "standard error"];
/// Free text that may be left out.
const NOTE: &str = "note";
/// Fewest ribs: one by itself says nothing of where a tire wears.
const FEWEST_RIBS: usize = 2;
/// Most ribs of a tread.
const MOST_RIBS: usize = 12;

/// Places of the columns, and the count of cells in a row.
#[derive(Debug, Clone)]
pub(crate) struct RemovalsHeading {
    pub width: usize,
    pub wheel: usize,
    pub tire: usize,
    pub load: usize,
    pub distance: usize,
    pub standard_error: usize,
    /// The inner shoulder first.
    pub ribs: Vec<usize>,
}

impl RemovalsHeading {
    /// Reads the heading; `None` if there is something wrong with it, which is added to the problems.
    pub fn of(row: &Row<'_>, problems: &mut Problems) -> Option<Self> {
        let place = |word: &str| (0..row.width()).find(|cell| row.cell(*cell).eq_ignore_ascii_case(word));
        for cell in 0..row.width() {
            check(row, cell, problems);
        }
        let places = COLUMNS.map(place);
        for (column, _) in COLUMNS.iter().zip(places).filter(|(_, place)| place.is_none()) {
            problems.push(row.span(), format!("there is no column `{column}`"), Some(accepted()));
        }
        let ribs: Vec<usize> = (1..=MOST_RIBS).map_while(|rib| place(&format!("rib {rib}"))).collect();
        let given = (0..row.width()).filter(|cell| rib_number(row.cell(*cell)).is_some()).count();
        let missing = match ribs.len() {
            0 => Some("there is no column `rib 1`".to_owned()),
            count if given > count => {
                Some(format!("there is no column `rib {}` before those after it", count + 1))
            }
            count if count < FEWEST_RIBS => {
                Some("one rib by itself does not say where a tire wears".to_owned())
            }
            _ => None,
        };
        // A column that is there twice is a fault of its own.
        if let Some(message) = missing.filter(|_| problems.is_empty()) {
            problems.push(row.span(), message, Some(accepted()));
        }
        let [wheel, tire, load, distance, standard_error] = places.map(|place| place.unwrap_or(0));
        let heading = Self { width: row.width(), wheel, tire, load, distance, standard_error, ribs };
        problems.is_empty().then_some(heading)
    }
}

/// Refuses a column that is not known, or there twice.
fn check(row: &Row<'_>, cell: usize, problems: &mut Problems) {
    let word = row.cell(cell);
    let is_known = COLUMNS.iter().chain(&[NOTE]).any(|column| word.eq_ignore_ascii_case(column));
    if !is_known && rib_number(word).is_none() {
        let hints = (Some(accepted()), likely(word, COLUMNS.into_iter()));
        problems.push_likely(row.span_of(cell), format!("removals have no column {}", quoted(word)), hints);
    } else if (0..cell).any(|other| row.cell(other).eq_ignore_ascii_case(word)) {
        let message = format!("there are two columns {}", quoted(word));
        problems.push(row.span_of(cell), message, Some(accepted()));
    }
}

/// The number of a rib's column.
fn rib_number(word: &str) -> Option<usize> {
    let number = word.to_ascii_lowercase().strip_prefix("rib ")?.parse().ok()?;
    (1..=MOST_RIBS).contains(&number).then_some(number)
}

fn accepted() -> String {
    let columns: Vec<String> = COLUMNS.iter().map(|column| format!("`{column}`")).collect();
    let columns = columns.join(", ");
    format!(
        "{columns}, `rib 1` at the inner shoulder and on to at most {MOST_RIBS}, in any order, and `note` if wanted"
    )
}
