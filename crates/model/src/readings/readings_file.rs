//! Shop readings of an axle, as rows of a CSV file.

use axlebow_axle::{Actions, Ground, LoadCase, Side};
use axlebow_units::Kind;

use super::reading::{ReadQuantity, Reading};
use super::reading_sheet::ReadingSheet;
use super::readings_heading::ReadingsHeading;
use super::sheet_row::SheetRow;
use crate::build::Model;
use crate::faults::{Problems, Span, quoted};
use crate::read::{LARGEST, rows, text_of};

/// Largest camber or toe, rad: no wheel that runs stands so (the bound of tire faces too).
const LARGEST_ANGLE: f64 = 0.2;

/// Place of natural frequencies among the words of quantities.
const FREQUENCY: usize = 3;

/// Reads shop readings of a model's axle.
///
/// Columns `quantity`, `of`, `load`, `ground`, `value` and `standard error`, in any order; units are written in the cells.
///
/// # Errors
/// Every problem at once, up to fifty: columns, words, load cases that the model lacks, missing units and units of the wrong
/// kind, values that are impossible or not finite.
pub fn readings(bytes: &[u8], file_name: &str, model: &Model) -> Result<Vec<Reading>, Problems> {
    ReadingSheet::from_bytes(bytes, file_name, model).map(|sheet| sheet.readings)
}

impl ReadingSheet {
    /// Reads a sheet as [`readings`] does; rows whose value is blank are left out and listed.
    ///
    /// # Errors
    /// Those of [`readings`], and a sheet in which no value is filled in.
    pub fn from_bytes(bytes: &[u8], file_name: &str, model: &Model) -> Result<ReadingSheet, Problems> {
        let text = text_of(bytes, file_name, LARGEST)?.trim_start_matches('\u{feff}');
        let mut problems = Problems::new(file_name, text.into());
        let mut rows = rows(text).map_while(Result::ok);
        let Some(first) = rows.next() else {
            problems.push(0..0, "there are no readings", Some("a heading and rows of readings".to_owned()));
            return Err(problems);
        };
        let Some(heading) = ReadingsHeading::of(&first, &mut problems) else { return Err(problems) };
        let mut sheet = ReadingSheet { readings: Vec::new(), blank_lines: Vec::new(), notes: Vec::new() };
        for row in rows {
            if problems.is_full() {
                break;
            }
            let (problems, notes) = (&mut problems, &mut sheet.notes);
            let reader = RowReader { sheet: SheetRow { row: &row, model, text, problems, notes }, heading };
            match reader.is_blank() {
                true => sheet.blank_lines.push(reader.sheet.line()),
                false => sheet.readings.extend(reader.reading()),
            }
        }
        if sheet.readings.is_empty() && problems.is_empty() {
            sheet.refuse_empty(first.span(), &mut problems);
        }
        if problems.is_empty() { Ok(sheet) } else { Err(problems) }
    }

    /// Refuses a sheet without a reading, at its heading.
    fn refuse_empty(&self, heading: Span, problems: &mut Problems) {
        let (message, accepted) = match self.blank_lines.len() {
            0 => ("there are no readings under the heading".to_owned(), None),
            count => (format!("none of the {count} readings is filled in"), Some(FILLED_IN.to_owned())),
        };
        problems.push(heading, message, accepted);
    }
}

/// What a sheet needs to be of use.
const FILLED_IN: &str =
    "a number with its unit in the column `value`, such as `-0.2 deg`, in one row or more";

/// One row being read.
struct RowReader<'r> {
    sheet: SheetRow<'r>,
    heading: ReadingsHeading,
}

impl RowReader<'_> {
    /// Whether the row has all its cells and no value.
    fn is_blank(&self) -> bool {
        self.sheet.row.width() == self.heading.width && self.cell(4).is_empty()
    }

    fn reading(mut self) -> Option<Reading> {
        if !self.sheet.has_width(self.heading.width) {
            return None;
        }
        let which = self.word(0, &ReadQuantity::WORDS);
        let quantity = which.and_then(|which| self.quantity(which));
        let load = self.load(which == Some(FREQUENCY));
        let ground = self.word(3, &["standing", "rolling"]).map(|word| match word {
            0 => Ground::Standing,
            _ => Ground::Rolling,
        });
        let kind = [Kind::Angle, Kind::Angle, Kind::Length, Kind::Frequency][which?];
        let value = self.value(kind);
        let standard_error = self.sheet.standard_error(self.heading.places[5], kind);
        let line = self.sheet.line();
        Some(Reading {
            quantity: quantity?,
            load: load?,
            ground: ground?,
            value: value?,
            standard_error: standard_error?,
            line,
        })
    }

    fn cell(&self, column: usize) -> &str {
        self.sheet.row.cell(self.heading.places[column])
    }

    fn refuse<T>(
        &mut self,
        column: usize,
        message: String,
        hints: (Option<String>, Option<String>),
    ) -> Option<T> {
        self.sheet.refuse(self.heading.places[column], message, hints)
    }

    fn word(&mut self, column: usize, words: &[&str]) -> Option<usize> {
        self.sheet.word(self.heading.places[column], words)
    }

    /// The quantity of a word, by its place in [`ReadQuantity::WORDS`].
    fn quantity(&mut self, which: usize) -> Option<ReadQuantity> {
        match which {
            0 | 1 => {
                let side = Side::BOTH[self.word(1, &["left", "right"])?];
                Some(if which == 0 { ReadQuantity::Camber(side) } else { ReadQuantity::Toe(side) })
            }
            2 => self.word(1, &["middle"]).map(|_| ReadQuantity::Bow),
            _ if self.cell(1).is_empty() => {
                let accepted = "the name of a mode as `axlebow modes` gives it, such as `wheel hop`";
                let message = "a natural frequency needs the mode that it is of".to_owned();
                self.refuse(1, message, (Some(accepted.to_owned()), None))
            }
            _ => Some(ReadQuantity::NaturalFrequency(self.cell(1).to_owned())),
        }
    }

    fn load(&mut self, of_frequency: bool) -> Option<LoadCase> {
        let load = self.sheet.load(self.heading.places[2])?;
        let at_rest = Actions { axle_load: load.actions.axle_load, gravity: 1.0, ..Actions::default() };
        if of_frequency && load.actions != at_rest {
            let cell = self.cell(2);
            let message =
                format!("natural frequencies are of an axle at rest on a level road, not of {cell}");
            let accepted = "`rated-load`, `unladen`, or a load such as `60 kN`".to_owned();
            return self.refuse(2, message, (Some(accepted), None));
        }
        Some(load)
    }

    fn value(&mut self, kind: Kind) -> Option<f64> {
        let value = self.sheet.parsed(self.heading.places[4], kind)?;
        let accepted = match kind {
            Kind::Angle if value.abs() > LARGEST_ANGLE => "no more than 0.2 rad (11.5 deg) either way",
            Kind::Frequency if !(value > 0.0) => "a frequency above zero",
            _ => return Some(value),
        };
        let message = format!("{} {} is impossible", self.cell(0), quoted(self.cell(4)));
        self.refuse(4, message, (Some(accepted.to_owned()), None))
    }
}
