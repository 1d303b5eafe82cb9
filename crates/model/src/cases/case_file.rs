//! From a file to a case sheet: rules between keys and the axle, each misfit reported at its place.

use std::path::Path;

use axlebow_axle::tread::{DutyName, Feather};
use axlebow_axle::{Side, Sides, TireLayout, TireSlot};
use axlebow_units::{Kind, parse, show};

use super::case_sheet::{CaseSheet, DamperState, FeltFeather, ReadingErrors, SeenEnd, SeenTire, StatedPrior};
use crate::build::Model;
use crate::complete::read_model;
use crate::content::{Document, Table, Written};
use crate::faults::{Problems, likely};
use crate::keys::{CASE, MODEL};
use crate::read::{LARGEST, named_file, read_bytes};
use crate::start::TYPICAL;

/// What stands for a rib that was not measured.
const NOT_MEASURED: &str = "-";
/// Standard errors by which a depth may be more than the new one.
const OVER_NEW: f64 = 4.0;
/// Range of a wall or a radius as read, over that of the axle's file, within which it can be the same axle (a judgment).
const SAME_AXLE: [f64; 2] = [0.5, 1.5];
const SAME_TIRE: [f64; 2] = [0.9, 1.1];

impl CaseSheet {
    /// Reads a sheet and the axle that it names, from the folder of the sheet.
    ///
    /// Arguments: `causes`, words that may have a prior.
    ///
    /// # Errors
    /// Every problem of the sheet at once, or those of the axle's file: tires that the axle does not have, tires or wheel ends
    /// twice, ribs that do not match the tire, impossible depths, no depth at all, causes that do not exist.
    pub fn from_bytes(
        bytes: &[u8],
        (file_name, folder): (&str, &Path),
        causes: &[&str],
    ) -> Result<CaseSheet, Problems> {
        let sheet = read_bytes(bytes, file_name, &CASE)?;
        let document = axle_of(&sheet, folder)?;
        Self::of(&sheet, document, causes)
    }

    /// Reads a sheet about an axle that is at hand, whatever axle it names.
    ///
    /// # Errors
    /// As [`Self::from_bytes`].
    pub fn on_axle(bytes: &[u8], document: Document, causes: &[&str]) -> Result<CaseSheet, Problems> {
        Self::of(&read_bytes(bytes, "case sheet", &CASE)?, document, causes)
    }

    fn of(sheet: &Document, document: Document, causes: &[&str]) -> Result<CaseSheet, Problems> {
        let model = Model::of(&document)?;
        let problems = sheet.problems();
        CaseReader { sheet, document, model, problems }.read(causes)
    }
}

/// The file of the axle that a sheet names.
fn axle_of(sheet: &Document, folder: &Path) -> Result<Document, Problems> {
    let root = sheet.root();
    let named = root.text("axle");
    if let Some(typical) = TYPICAL.iter().find(|own| own.name == named) {
        return read_bytes(typical.called(typical.about).as_bytes(), typical.name, &MODEL);
    }
    let bytes = named_file(sheet, (root, "axle"), folder, LARGEST).map_err(|missing| {
        let near = likely(named, TYPICAL.iter().map(|own| own.name));
        let Some(near) = near else { return missing };
        let mut problems = sheet.problems();
        let message = format!("`axle` names {named:?}, which is neither a file nor a typical axle");
        let accepted = Some("a model file, or a typical axle that `axlebow start` lists".to_owned());
        problems.push_likely(root.span_of("axle"), message, (accepted, Some(near)));
        problems
    })?;
    read_model(&bytes, named)
}

/// A sheet that is read.
struct CaseReader<'d> {
    sheet: &'d Document,
    document: Document,
    model: Model,
    problems: Problems,
}

impl CaseReader<'_> {
    fn read(mut self, causes: &[&str]) -> Result<CaseSheet, Problems> {
        let sheet = self.sheet;
        let root = sheet.root();
        self.check_layout();
        let errors = errors(root.table("errors"));
        let tires = self.tires(errors);
        let ends = self.ends();
        self.check_wall();
        let priors = self.priors(causes);
        if !self.problems.is_empty() {
            return Err(self.problems);
        }
        let mut assumed = sheet.assumed().to_vec();
        assumed.extend(self.model.assumed.iter().cloned());
        Ok(CaseSheet {
            name: root.text("name").to_owned(),
            invented: root.flag("invented"),
            position: root.optional_text("position").map(str::to_owned),
            duty: root.optional_word("duty").and_then(duty_named),
            distance: root.optional_number("distance"),
            usual_distance: root.number("usual_distance"),
            new_depth: root.optional_number("new_depth"),
            axle_load: root.optional_number("axle_load"),
            offset: root.optional_number("offset"),
            skew: root.optional_number("skew"),
            wall: root.optional_number("wall"),
            damper: root.optional_word("damper").map(|word| match word {
                "good" => DamperState::Good,
                "leaking" => DamperState::Leaking,
                _ => DamperState::Dead,
            }),
            tires,
            ends,
            errors,
            priors,
            hash: format!("{}-{}", sheet.hash(), self.model.hash),
            assumed,
            system: sheet.system(),
            model: self.model,
            document: self.document,
        })
    }

    /// Whether the sheet's word for how tires sit is the axle's.
    fn check_layout(&mut self) {
        let root = self.sheet.root();
        let Some(word) = root.optional_word("tires") else { return };
        let own = match self.model.axle.wheels.left.layout() {
            TireLayout::Single => "single",
            TireLayout::WideBase => "wide-base",
            TireLayout::Dual { .. } => "dual",
        };
        if word != own {
            let message = format!("the sheet says `{word}` tires, and the axle has `{own}` ones");
            let accepted = format!("`{own}`, or an axle with `{word}` tires");
            self.problems.push(root.span_of("tires"), message, Some(accepted));
        }
    }

    fn tires(&mut self, errors: ReadingErrors) -> Vec<SeenTire> {
        let tables = self.sheet.root().tables("tire");
        let mut all: Vec<SeenTire> = Vec::new();
        for table in tables {
            let (side, slot) = (side_of(table), slot_of(table));
            if all.iter().any(|own| (own.side, own.slot) == (side, slot)) {
                let message = format!("the {} is there twice", slot.of_side(side.word()));
                self.problems.push(table.span(), message, Some("each tire once".to_owned()));
            }
            self.check_slot(table, side, slot);
            self.check_circumference(table, side);
            all.push(SeenTire {
                depths: self.depths(table, side, errors),
                cups: table.optional_count("cups"),
                feather: table.optional_word("feather").map(feather_of),
                inflation: table.optional_number("inflation"),
                circumference: table.optional_number("circumference"),
                ..SeenTire::unseen(side, slot)
            });
        }
        if tables.iter().all(|table| table.texts("depths").iter().all(|own| own.text == NOT_MEASURED)) {
            let span = tables.first().map_or(0..0, Table::span);
            let accepted = "`depths` of at least one tire: wear says nothing without them".to_owned();
            self.problems.push(span, "no tread depth is filled in", Some(accepted));
        }
        all
    }

    /// Whether the axle has such a tire.
    fn check_slot(&mut self, table: &Table, side: Side, slot: TireSlot) {
        let own: Vec<&str> = self.model.axle.wheels.of(side).tires().map(|place| place.slot.word()).collect();
        if !own.contains(&slot.word()) {
            let message =
                format!("the axle has no {}: its tires are {}", slot.of_side(side.word()), own.join(" and "));
            let accepted = own.iter().map(|word| format!("`{word}`")).collect::<Vec<_>>().join(", ");
            self.problems.push(table.span_of("place"), message, Some(accepted));
        }
    }

    fn check_circumference(&mut self, table: &Table, side: Side) {
        let Some(read) = table.optional_number("circumference") else { return };
        let own = std::f64::consts::TAU * self.model.axle.wheels.of(side).tire().loaded_radius;
        let shown = |length| show(length, Kind::Length, self.sheet.system());
        let ratio = read / own;
        if !(SAME_TIRE[0]..=SAME_TIRE[1]).contains(&ratio) {
            let message = format!("{} round the tire is not a tire of this axle", shown(read));
            let accepted = format!("from {} to {}", shown(SAME_TIRE[0] * own), shown(SAME_TIRE[1] * own));
            self.problems.push(table.span_of("circumference"), message, Some(accepted));
        }
    }

    fn depths(&mut self, table: &Table, side: Side, errors: ReadingErrors) -> Vec<Option<f64>> {
        let written = table.texts("depths");
        let tread = *self.model.axle.wheels.of(side).tread();
        if !written.is_empty() && written.len() != tread.ribs {
            let message = format!("{} depths are given, and the tire has {} ribs", written.len(), tread.ribs);
            let accepted = format!(
                "{} depths, the inner shoulder first, {NOT_MEASURED:?} where none was measured; `ribs` of the axle's tread says \
                 how many there are",
                tread.ribs
            );
            self.problems.push(table.span_of("depths"), message, Some(accepted));
        }
        let new = self.sheet.root().optional_number("new_depth");
        let most = new.unwrap_or(1.5 * tread.depth) + OVER_NEW * errors.depth;
        written.iter().map(|own| self.depth(own, most)).collect()
    }

    /// One depth, if it was measured and can be.
    fn depth(&mut self, written: &Written, most: f64) -> Option<f64> {
        if written.text == NOT_MEASURED {
            return None;
        }
        let depth = match parse(&written.text, Kind::Length) {
            Ok(parsed) => parsed.value,
            Err(error) => {
                self.problems.push(written.span.clone(), error.message(), Some(error.accepted()));
                return None;
            }
        };
        if !(0.0..=most).contains(&depth) {
            let shown = |length| show(length, Kind::Length, self.sheet.system());
            let message = format!("a tread is not {} deep", shown(depth));
            let accepted = format!("from {} to {}, the new depth and some error", shown(0.0), shown(most));
            self.problems.push(written.span.clone(), message, Some(accepted));
        }
        Some(depth)
    }

    fn ends(&mut self) -> Sides<SeenEnd> {
        let mut ends: Sides<Option<SeenEnd>> = Sides::default();
        for table in self.sheet.root().tables("wheel_end") {
            let side = side_of(table);
            if ends.of(side).is_some() {
                let message = format!("the {} wheel end is there twice", side.word());
                self.problems.push(table.span(), message, Some("each wheel end once".to_owned()));
            }
            let read = |key: &str| table.optional_number(key);
            *ends.of_mut(side) = Some(SeenEnd {
                endplay: read("endplay"),
                camber: read("camber"),
                toe: read("toe"),
                runout: read("runout"),
            });
        }
        Sides::each(|side| ends.of(side).unwrap_or_default())
    }

    fn check_wall(&mut self) {
        let root = self.sheet.root();
        let Some(read) = root.optional_number("wall") else { return };
        let own = [CaseSheet::TUBE_WALL, CaseSheet::HOUSING_WALL].map(|path| self.document.number(path).ok());
        let Some(own) = own.into_iter().flatten().next() else { return };
        if !(SAME_AXLE[0]..=SAME_AXLE[1]).contains(&(read / own)) {
            let shown = |length| show(length, Kind::Length, self.sheet.system());
            let message =
                format!("a wall of {} is not that of this axle, whose file says {}", shown(read), shown(own));
            let accepted =
                format!("from {} to {}, or the axle that has it", shown(0.5 * own), shown(1.5 * own));
            self.problems.push(root.span_of("wall"), message, Some(accepted));
        }
    }

    fn priors(&mut self, causes: &[&str]) -> Vec<StatedPrior> {
        let root = self.sheet.root();
        let priors = root.factors("priors");
        for (word, weight) in priors {
            let span = root.span_of("priors");
            if !causes.contains(&word.as_str()) {
                let hints = (Some(causes.join(", ")), likely(word, causes.iter().copied()));
                self.problems.push_likely(span, format!("there is no cause `{word}`"), hints);
            } else if !(weight.is_finite() && *weight >= 0.0) {
                let message = format!("the weight of `{word}` is {weight}");
                self.problems.push(span, message, Some("0 or more".to_owned()));
            }
        }
        priors.iter().map(|(cause, weight)| StatedPrior { cause: cause.clone(), weight: *weight }).collect()
    }
}

impl CaseSheet {
    /// Path of the wall of a trailer tube in its file.
    pub const TUBE_WALL: &str = "tube.wall";
    /// Path of the wall of a drive housing in its file.
    pub const HOUSING_WALL: &str = "housing.wall";
}

fn errors(table: &Table) -> ReadingErrors {
    let of = |key: &str| table.number(key);
    ReadingErrors {
        depth: of("depth"),
        endplay: of("endplay"),
        angle: of("angle"),
        wall: of("wall"),
        inflation: of("inflation"),
        offset: of("offset"),
        circumference: of("circumference"),
        runout: of("runout"),
        load: of("load"),
    }
}

fn side_of(table: &Table) -> Side {
    if table.word("side") == "left" { Side::Left } else { Side::Right }
}

fn slot_of(table: &Table) -> TireSlot {
    match table.word("place") {
        "single" => TireSlot::Single,
        "outer" => TireSlot::Outer,
        _ => TireSlot::Inner,
    }
}

fn feather_of(word: &str) -> FeltFeather {
    match word {
        "inboard" => FeltFeather::Points(Feather::Inboard),
        "outboard" => FeltFeather::Points(Feather::Outboard),
        _ => FeltFeather::None,
    }
}

fn duty_named(word: &str) -> Option<DutyName> {
    DutyName::USUAL.into_iter().find(|name| name.word() == word)
}
