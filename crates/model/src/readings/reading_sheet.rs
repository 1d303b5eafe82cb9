//! A sheet of shop readings as it was filled in.

use super::reading::Reading;

/// A sheet of shop readings as it was filled in.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ReadingSheet {
    /// What was read.
    pub readings: Vec<Reading>,
    /// Lines, from 1, of rows whose value is not filled in.
    pub blank_lines: Vec<usize>,
    /// How cells were read, where that is not plain from them.
    pub notes: Vec<String>,
}

impl ReadingSheet {
    /// Both sheets as one.
    pub fn and(mut self, other: ReadingSheet) -> ReadingSheet {
        self.readings.extend(other.readings);
        self.blank_lines.extend(other.blank_lines);
        self.notes.extend(other.notes);
        self
    }

    /// What was left out and how cells were read, a sentence each.
    pub fn notes(&self) -> Vec<String> {
        let lines: Vec<String> = self.blank_lines.iter().map(usize::to_string).collect();
        let blank = match lines.as_slice() {
            [] => None,
            [line] => Some(format!("line {line} is skipped: its reading is not filled in")),
            lines => {
                Some(format!("lines {} are skipped: their readings are not filled in", lines.join(", ")))
            }
        };
        blank.into_iter().chain(self.notes.iter().cloned()).collect()
    }
}
