//! A table as data.

use crate::number::{Numbers, Shown};

/// The cell of a check that fails, in capitals so that it is seen.
pub(crate) const FAILS: &str = "FAILS";

/// Rows of cells under headings.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Table {
    /// What the table is about, if its headings do not say it.
    pub caption: Option<String>,
    /// Its columns.
    pub columns: Vec<Column>,
    /// Its rows, a cell for each column, in the order of the columns.
    pub rows: Vec<Vec<String>>,
}

/// A column of a table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Column {
    /// What stands in it.
    pub heading: String,
    /// Unit of its numbers; empty where they have none or each cell has its own.
    pub unit: String,
    /// Whether it holds words, which stand to the left, or numbers, which stand to the right.
    pub is_words: bool,
}

impl Column {
    /// A column of words.
    pub(crate) fn words(heading: impl Into<String>) -> Self {
        Column { heading: heading.into(), unit: String::new(), is_words: true }
    }

    /// A column of numbers in a unit.
    pub(crate) fn number(heading: impl Into<String>, unit: impl Into<String>) -> Self {
        Column { heading: heading.into(), unit: unit.into(), is_words: false }
    }

    /// A column of numbers without a unit.
    pub(crate) fn plain(heading: impl Into<String>) -> Self {
        Column::number(heading, "")
    }

    /// A column of a quantity in the reader's unit.
    pub(crate) fn shown(heading: impl Into<String>, shown: impl Into<Shown>, n: Numbers) -> Self {
        Column::number(heading, n.unit(shown))
    }
}

impl Table {
    /// A table without rows.
    pub(crate) fn new(columns: impl IntoIterator<Item = Column>) -> Self {
        Table { caption: None, columns: columns.into_iter().collect(), rows: Vec::new() }
    }

    /// The table under a caption.
    pub(crate) fn with_caption(self, caption: impl Into<String>) -> Self {
        Table { caption: Some(caption.into()), ..self }
    }

    /// Adds a row.
    pub(crate) fn add_row<T: ToString>(&mut self, cells: impl IntoIterator<Item = T>) {
        self.rows.push(cells.into_iter().map(|cell| cell.to_string()).collect());
    }

    /// Letters of the longest line of its text.
    pub(crate) fn width(&self) -> usize {
        let text = super::table_text::rows_text(self);
        text.lines().map(|line| line.chars().count()).max().unwrap_or(0)
    }
}
