//! The heading of a profile file: which column is what, and in which unit.

use axlebow_units::{Kind, Parsed, parse};

use crate::faults::{Problems, likely, quoted};
use crate::read::Row;

/// What a column gives.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Column {
    Distance,
    Height,
    Left,
    Right,
}

/// The columns of a file: place and unit (m) of distances and of one or two heights.
#[derive(Debug, Clone)]
pub(crate) struct Heading {
    /// Count of columns.
    pub width: usize,
    /// The distances.
    pub distance: (usize, Parsed),
    /// The heights: of one track, or of the left and the right one.
    pub heights: Vec<(usize, Parsed)>,
}

/// What is accepted as a heading.
const ACCEPTED: &str =
    "`distance [m]` and either `height [mm]`, or `left [mm]` and `right [mm]`; any unit of length";

impl Column {
    const ALL: [Self; 4] = [Self::Distance, Self::Height, Self::Left, Self::Right];

    /// The word of a heading.
    pub fn word(self) -> &'static str {
        match self {
            Self::Distance => "distance",
            Self::Height => "height",
            Self::Left => "left",
            Self::Right => "right",
        }
    }
}

impl Heading {
    /// Reads the heading; `None` if there is something wrong with it, which is added to the problems.
    pub fn of(row: &Row<'_>, problems: &mut Problems) -> Option<Self> {
        if let Some(reason) = no_heading(row) {
            problems.push(row.span(), reason, Some(ACCEPTED.to_owned()));
            return None;
        }
        let cells = 0..row.width();
        let columns: Vec<_> = cells.map(|place| column(row, place, problems)).collect();
        let columns: Vec<_> = columns.into_iter().collect::<Option<_>>()?;
        let missing = misfit(&columns);
        if let Some(reason) = missing {
            problems.push(row.span(), reason, Some(ACCEPTED.to_owned()));
            return None;
        }
        let place = |wanted| columns.iter().position(|(column, _)| *column == wanted);
        let found = |wanted| place(wanted).map(|place| (place, columns[place].1));
        let heights = [Column::Height, Column::Left, Column::Right].into_iter().filter_map(found).collect();
        Some(Self { width: columns.len(), distance: found(Column::Distance)?, heights })
    }
}

/// Why a row is no heading at all.
fn no_heading(row: &Row<'_>) -> Option<String> {
    let mut cells = (0..row.width()).map(|place| row.cell(place));
    if cells.clone().all(|cell| cell.parse::<f64>().is_ok()) {
        return Some("the first row has numbers where the heading is wanted".to_owned());
    }
    let other = cells.find_map(|cell| [';', '\t', '|'].into_iter().find(|mark| cell.contains(*mark)))?;
    Some(format!("columns are parted by `{}`; a comma is wanted", other.escape_debug()))
}

/// The column under a heading such as `left [mm]`.
fn column(row: &Row<'_>, place: usize, problems: &mut Problems) -> Option<(Column, Parsed)> {
    let cell = row.cell(place);
    let (word, unit) = match cell.split_once('[').map(|(word, rest)| (word, rest.strip_suffix(']'))) {
        Some((word, Some(unit))) => (word.trim(), unit.trim()),
        _ => (cell, ""),
    };
    let Some(column) = Column::ALL.into_iter().find(|column| word.eq_ignore_ascii_case(column.word())) else {
        let words = Column::ALL.map(Column::word);
        let hints = (Some(ACCEPTED.to_owned()), likely(word, words.into_iter()));
        problems.push_likely(row.span_of(place), format!("a profile has no column {}", quoted(word)), hints);
        return None;
    };
    if unit.is_empty() {
        let usual = if column == Column::Distance { "m" } else { "mm" };
        let hints = (Some(ACCEPTED.to_owned()), Some(format!("{} [{usual}]", column.word())));
        let message = format!("the heading {} has no unit", quoted(cell));
        problems.push_likely(row.span_of(place), message, hints);
        return None;
    }
    match parse(&format!("1 {unit}"), Kind::Length) {
        Ok(parsed) => Some((column, parsed)),
        Err(error) => {
            let message = format!("the heading {}: {}", quoted(cell), error.message());
            problems.push_likely(row.span_of(place), message, (Some(error.accepted()), error.likely()));
            None
        }
    }
}

/// What is wrong with columns that are each good.
fn misfit(columns: &[(Column, Parsed)]) -> Option<String> {
    let count = |wanted| columns.iter().filter(|(column, _)| *column == wanted).count();
    let [distance, height, left, right] = Column::ALL.map(count);
    if let Some(twice) = Column::ALL.into_iter().find(|column| count(*column) > 1) {
        return Some(format!("there are two columns `{}`", twice.word()));
    }
    match (distance, height, left, right) {
        (0, ..) => Some("there is no column `distance`".to_owned()),
        (_, 0, 0, 0) => Some("there is no column of heights".to_owned()),
        (_, 1, 0, 0) | (_, 0, 1, 1) => None,
        (_, 1, ..) => Some("there is `height` for one track and a column for a side too".to_owned()),
        (_, _, 1, _) => Some("there is `left` without `right`; one track is called `height`".to_owned()),
        _ => Some("there is `right` without `left`; one track is called `height`".to_owned()),
    }
}
