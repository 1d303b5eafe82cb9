//! Tires that came off, as rows of a CSV file: what each rib had left, and how far it ran.

use axlebow_axle::{LoadCase, Side, TireSlot, Wheel};
use axlebow_units::Kind;

use super::reading::{ReadQuantity, Reading, RemovedRib};
use super::reading_sheet::ReadingSheet;
use super::removals_heading::RemovalsHeading;
use super::sheet_row::SheetRow;
use crate::build::Model;
use crate::faults::{Problems, quoted};
use crate::read::{LARGEST, rows, text_of};

impl ReadingSheet {
    /// Reads a sheet of removed tires: columns `wheel`, `tire`, `load`, `distance`, `rib 1` (the inner shoulder) and on, and
    /// `standard error`, in any order; units are written in the cells. Each rib is a reading of the depth that it had left.
    /// Rows in which no rib is filled in are left out and listed.
    ///
    /// # Errors
    /// Every problem at once, up to fifty: columns, a count of ribs that the model's tread does not have, tires that the wheel
    /// does not have, a removal without its distance, ribs that are not filled in beside others, and depths that are impossible.
    pub fn of_removals(bytes: &[u8], file_name: &str, model: &Model) -> Result<ReadingSheet, Problems> {
        let text = text_of(bytes, file_name, LARGEST)?.trim_start_matches('\u{feff}');
        let mut problems = Problems::new(file_name, text.into());
        let mut rows = rows(text).map_while(Result::ok);
        let Some(first) = rows.next() else {
            problems.push(0..0, "there are no removals", Some("a heading and rows of removals".to_owned()));
            return Err(problems);
        };
        let Some(heading) = RemovalsHeading::of(&first, &mut problems) else { return Err(problems) };
        let mut sheet = ReadingSheet { readings: Vec::new(), blank_lines: Vec::new(), notes: Vec::new() };
        for row in rows {
            if problems.is_full() {
                break;
            }
            let (problems, notes) = (&mut problems, &mut sheet.notes);
            let row = SheetRow { row: &row, model, text, problems, notes };
            let removal = RemovalRow { heading: &heading, row };
            match removal.is_blank() {
                true => sheet.blank_lines.push(removal.row.line()),
                false => sheet.readings.extend(removal.readings().into_iter().flatten()),
            }
        }
        if sheet.readings.is_empty() && problems.is_empty() {
            let accepted = "the depth of every rib of a tire, such as `7.5 mm`, in one row or more";
            problems.push(first.span(), "no removal is filled in", Some(accepted.to_owned()));
        }
        if problems.is_empty() { Ok(sheet) } else { Err(problems) }
    }
}

/// One row being read.
struct RemovalRow<'r> {
    heading: &'r RemovalsHeading,
    row: SheetRow<'r>,
}

impl RemovalRow<'_> {
    /// Whether the row has all its cells and no rib.
    fn is_blank(&self) -> bool {
        let row = self.row.row;
        row.width() == self.heading.width && self.heading.ribs.iter().all(|rib| row.cell(*rib).is_empty())
    }

    fn readings(mut self) -> Option<Vec<Reading>> {
        let heading = self.heading;
        if !self.row.has_width(heading.width) {
            return None;
        }
        let side = self.row.word(heading.wheel, &["left", "right"]).map(|word| Side::BOTH[word]);
        let tire = side.and_then(|side| self.tire(side));
        let load = self.row.load(heading.load);
        let distance = self.distance();
        let depths = self.depths(side.unwrap_or(Side::Left));
        let error = self.row.standard_error(heading.standard_error, Kind::Length);
        let (tire, load, distance, error) = ((side?, tire?), load?, distance?, error?);
        let own = Removal { tire, load, distance, error, line: self.row.line() };
        Some(depths?.into_iter().enumerate().map(|rib| own.reading(rib, self.row.model)).collect())
    }

    /// A tire that the wheel has.
    fn tire(&mut self, side: Side) -> Option<TireSlot> {
        let slots: Vec<TireSlot> = self.wheel(side).tires().map(|place| place.slot).collect();
        let words: Vec<&str> = slots.iter().map(|slot| slot.word()).collect();
        Some(slots[self.row.word(self.heading.tire, &words)?])
    }

    fn wheel(&self, side: Side) -> Wheel {
        *self.row.model.axle.wheels.of(side)
    }

    fn distance(&mut self) -> Option<f64> {
        let place = self.heading.distance;
        if self.row.row.cell(place).is_empty() {
            let message = "the removal has no distance, without which wear has no rate".to_owned();
            return self.row.refuse(place, message, (Some("such as `150000 km`".to_owned()), None));
        }
        let distance = self.row.parsed(place, Kind::Length)?;
        if distance > 0.0 {
            return Some(distance);
        }
        let message = format!("the distance {} is impossible", quoted(self.row.row.cell(place)));
        self.row.refuse(place, message, (Some("more than zero, such as `150000 km`".to_owned()), None))
    }

    /// What every rib had left, as many as the tread has.
    fn depths(&mut self, side: Side) -> Option<Vec<f64>> {
        let (ribs, tread) = (&self.heading.ribs, *self.wheel(side).tread());
        if ribs.len() != tread.ribs {
            let message = format!("the sheet has {} ribs, the model's tread {}", ribs.len(), tread.ribs);
            let accepted = "a column for every rib, or `tread.ribs` of the model as the tire has them";
            self.row.problems.push(self.row.row.span(), message, Some(accepted.to_owned()));
            return None;
        }
        let each: Vec<Option<f64>> = ribs.iter().map(|rib| self.depth(*rib, tread.depth)).collect();
        each.into_iter().collect()
    }

    fn depth(&mut self, place: usize, new: f64) -> Option<f64> {
        if self.row.row.cell(place).is_empty() {
            let message = "a rib is not filled in beside others of its tire".to_owned();
            return self.row.refuse(place, message, (Some("the depth of every rib".to_owned()), None));
        }
        let depth = self.row.parsed(place, Kind::Length)?;
        if (0.0..=new).contains(&depth) {
            return Some(depth);
        }
        let message = format!("the depth {} is impossible", quoted(self.row.row.cell(place)));
        let new = axlebow_units::show(new, Kind::Length, self.row.model.system);
        let accepted = format!("0 to {new}, the depth of the model's new tread (`tread.depth`)");
        self.row.refuse(place, message, (Some(accepted), None))
    }
}

/// What the ribs of a removed tire have in common.
struct Removal {
    tire: (Side, TireSlot),
    load: LoadCase,
    distance: f64,
    error: f64,
    line: usize,
}

impl Removal {
    fn reading(&self, (rib, depth): (usize, f64), model: &Model) -> Reading {
        Reading {
            quantity: ReadQuantity::TreadDepth(RemovedRib::of(self.tire, rib, self.distance)),
            load: self.load.clone(),
            ground: model.axle.ground,
            value: depth,
            standard_error: self.error,
            line: self.line,
        }
    }
}
