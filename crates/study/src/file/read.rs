//! From a study file to a study: rules across keys and files, each misfit reported at its place.

use std::path::Path;

use axlebow_axle::RideBasis;
use axlebow_model::{Document, Model, Problems, RoadFile, Table, Written, likely, read_bytes_partly};

use super::files::Files;
use super::keys::STUDY;
use super::read_sample::Method;
use super::read_vary::Into;
use super::reader::Reader;
use crate::ask::{Study, StudyDuty, StudyKind, StudyRide, Variant};
use crate::solve::Has;

/// Most variants of a study.
const MOST_VARIANTS: usize = 1000;

impl Study {
    /// Reads a study file and the model and road files that it points to.
    ///
    /// Arguments: `bytes`, the study file; `file_name`, for messages; `folder`, in which the study file is.
    ///
    /// # Errors
    /// Every problem of the study file at once, or those of a file that it points to: unknown keys, paths, cases
    /// and results, values of the wrong kind, empty ranges, a file that cannot be read. How many designs are too many is
    /// for the caller to say; see [`MOST_DESIGNS`](crate::MOST_DESIGNS).
    pub fn from_bytes(bytes: &[u8], file_name: &str, folder: &Path) -> Result<Study, Problems> {
        let read = read_bytes_partly(bytes, file_name, &STUDY);
        let document = read.map_err(|unread| unread.with(|partial| Files::missing(partial, folder)))?;
        let files = Files::read(&document, folder)?;
        let (root, problems, notes) = (document.root(), document.problems(), Vec::new());
        Reader { document: &document, root, problems, files: &files, notes }.study()
    }
}

impl Reader<'_> {
    /// The study, or everything that is wrong with it; problems of a model file by itself come alone.
    pub fn study(mut self) -> Result<Study, Problems> {
        let kind = self.kind();
        let variants = self.variants();
        let rides = self.rides()?;
        let duty = self.files.duty.as_ref().map(StudyDuty::of).transpose()?;
        let own = self.files.model.as_ref().filter(|_| !matches!(kind, StudyKind::SideBySide { .. }));
        let base = own.or(variants.get(kind.baseline()).map(|variant| &variant.document));
        let base = Model::of(base.ok_or_else(|| self.problems.clone())?)?;
        self.note_variants(&variants);
        self.check_cases(&base)?;
        let files = Into { variants: &variants, rides: &rides };
        let method = self.method(kind);
        let varied = self.varied(files, method);
        self.check_distributed((kind, &varied));
        let links = self.links(files, &varied);
        let derived = self.derived(&varied, (&rides, duty.is_some()));
        let has = Has { derived: &derived, rides: !rides.is_empty(), duty: duty.is_some() };
        let limits = self.limits(has);
        let (masses, shown) = (self.masses(), self.shown(has));
        let ranked_by = self.ranked_by(has);
        self.check_masses(method);
        let uncertainty = self.uncertainty(kind);
        let search = self.search(kind, has);
        let together = self.together((kind, method), &varied);
        if !self.problems.is_empty() {
            return Err(self.problems);
        }
        let name = self.root.text("name").to_owned();
        let note = self.root.optional_text("note").map(str::to_owned);
        let case = self.root.text("case").to_owned();
        let strength_cases =
            self.root.texts("strength_cases").iter().map(|written| written.text.clone()).collect();
        let tabled_walls = self.root.optional_word("seat_walls") == Some("table");
        let (assumed, seat_tables) = (self.assumed(kind), Vec::new());
        let profiles = rides.iter().filter_map(StudyRide::profile);
        let files = self.files.paths.iter().cloned().chain(profiles).collect();
        let study = Study {
            name,
            note,
            kind,
            base,
            case,
            strength_cases,
            variants,
            varied,
            together,
            links,
            derived,
            limits,
            search,
            uncertainty,
            rides,
            duty,
            shown,
            ranked_by,
            masses,
            files,
            tabled_walls,
            assumed,
            notes: self.notes.clone(),
            seat_tables,
            content: self.document.hash(),
        };
        self.check_count(study.count());
        if self.problems.is_empty() { Ok(study) } else { Err(self.problems) }
    }

    /// What the study does; its tables must be those that this needs.
    fn kind(&mut self) -> StudyKind {
        let variants = self.root.tables("variant");
        if let Some(kind) = self.varying_kind() {
            return kind;
        }
        if let Some(table) = self.root.tables("vary").first() {
            self.problems.push(
                table.span(),
                "nothing is varied side by side",
                Some("`[[variant]]` tables".into()),
            );
        }
        if self.root.optional_table("constant_mass").is_some() {
            self.misfit("constant_mass", "nothing is varied to reach a mass side by side", "a sweep");
        }
        if variants.len() < 2 {
            self.misfit("kind", "there is nothing to hold side by side", "two or more `[[variant]]` tables");
        }
        StudyKind::SideBySide { baseline: self.baseline() }
    }

    /// A kind that varies keys, if it is one.
    fn varying_kind(&mut self) -> Option<StudyKind> {
        let (kind, words) = match self.root.word("kind") {
            "sweep" => (StudyKind::Sweep, "a sweep"),
            "uncertainty" => (StudyKind::Uncertainty, "an uncertainty"),
            "search" => (StudyKind::Search, "a search"),
            _ => return None,
        };
        if self.root.tables("vary").is_empty() {
            self.misfit("kind", &format!("{words} varies no key"), "one or more `[[vary]]` tables");
        }
        if self.root.optional_text("baseline").is_some() {
            self.misfit("baseline", &format!("{words} has no baseline"), "`kind = \"side-by-side\"`");
        }
        Some(kind)
    }

    /// Designs of equal mass are looked for along the key of a grid that varies fastest.
    fn check_masses(&mut self, method: Method) {
        let last = self.root.tables("vary").last().is_some_and(|table| !table.tables("choice").is_empty());
        if self.root.optional_table("constant_mass").is_some() && (method != Method::Grid || last) {
            let message = "designs of equal mass are found between the steps of a grid's last key only";
            self.misfit("constant_mass", message, "a grid whose last `[[vary]]` has a `path`");
        }
    }

    fn baseline(&mut self) -> usize {
        let names = || self.root.tables("variant").iter().map(|table| table.text("name"));
        let Some(wanted) = self.root.optional_text("baseline") else { return 0 };
        names().position(|name| name == wanted).unwrap_or_else(|| {
            let hints = (Some(names().collect::<Vec<_>>().join(", ")), likely(wanted, names()));
            let message = format!("no variant is named {wanted:?}");
            self.problems.push_likely(self.root.span_of("baseline"), message, hints);
            0
        })
    }

    /// The load cases must be ones of every model.
    pub(crate) fn check_cases(&mut self, base: &Model) -> Result<(), Problems> {
        self.check_case(base);
        for own in self.files.of_variants.iter().flatten() {
            self.check_case(&Model::of(own)?);
        }
        Ok(())
    }

    fn check_case(&mut self, model: &Model) {
        let cases = || model.cases.iter().map(|case| case.name.as_str());
        let case = Written { text: self.root.text("case").to_owned(), span: self.root.span_of("case") };
        for Written { text: case, span } in self.root.texts("strength_cases").iter().chain([&case]) {
            if !cases().any(|known| known == case) {
                let hints = (Some(cases().collect::<Vec<_>>().join(", ")), likely(case, cases()));
                let message = format!("the model has no load case {case:?}");
                self.problems.push_likely(span.clone(), message, hints);
            }
        }
    }

    fn variants(&mut self) -> Vec<Variant> {
        let tables = self.root.tables("variant");
        if let (Some(model), []) = (&self.files.model, tables) {
            return vec![Variant { name: model.root().text("name").to_owned(), document: model.clone() }];
        }
        if let Some(beyond) = tables.get(MOST_VARIANTS) {
            let message = format!("the study has {} variants", tables.len());
            self.problems.push(beyond.span(), message, Some(format!("{MOST_VARIANTS} at most")));
            return Vec::new();
        }
        if tables.is_empty() {
            self.misfit("model", "there is no model to study", "the `model` of the study");
        }
        let mut variants: Vec<Variant> = Vec::new();
        for (table, own) in tables.iter().zip(&self.files.of_variants) {
            let name = table.text("name").to_owned();
            if variants.iter().any(|variant| variant.name == name) {
                self.problems.push(table.span_of("name"), format!("two variants are named {name:?}"), None);
            }
            let Some(document) = own.as_ref().or(self.files.model.as_ref()) else {
                let message = format!("the variant {name:?} has no model");
                let accepted = "the `model` of the study or one of its own";
                self.problems.push(table.span(), message, Some(accepted.to_owned()));
                continue;
            };
            variants.push(Variant { name, document: self.changed(document, table) });
        }
        variants
    }

    /// Keeps how values of the variants were read, with the variant where the study has several.
    fn note_variants(&mut self, variants: &[Variant]) {
        for variant in variants {
            for note in variant.document.notes() {
                let alone = variants.len() == 1;
                self.note(if alone { note } else { format!("variant {}: {note}", variant.name) });
            }
        }
    }

    /// A document with the changes of a table made.
    pub(crate) fn changed(&mut self, document: &Document, table: &Table) -> Document {
        let mut document = document.clone();
        for (path, text) in table.changes("change") {
            if let Err(refusal) = document.set(&path.text, &text.text) {
                self.push_refusal((&path.span, &text.span), &refusal);
            }
        }
        document
    }

    /// The rides; problems of a road file come alone.
    fn rides(&mut self) -> Result<Vec<StudyRide>, Problems> {
        let mut rides: Vec<StudyRide> = Vec::new();
        for (table, (file, folder)) in self.root.tables("ride").iter().zip(&self.files.roads) {
            let stem = Path::new(table.text("road")).file_stem().unwrap_or_default();
            let stem = stem.to_string_lossy().into_owned();
            let name = table.optional_text("name").map_or(stem, str::to_owned);
            if rides.iter().any(|ride| ride.name == name) {
                let accepted = Some("a `name` of its own for each ride".to_owned());
                self.problems.push(table.span(), format!("two rides are named {name:?}"), accepted);
            }
            let document = self.changed(file, table);
            let road = RoadFile::of(&document, folder)?;
            let unladen = table.word("load") == "unladen";
            let basis = if table.word("basis") == "reduced" { RideBasis::Reduced } else { RideBasis::Full };
            let speed = table.optional_number("speed");
            let folder = folder.clone();
            rides.push(StudyRide { name, road, speed, unladen, basis, document, folder });
        }
        Ok(rides)
    }

    /// The results that the file says are shown.
    fn shown(&mut self, has: Has) -> Vec<String> {
        let mut shown = Vec::new();
        for written in self.root.texts("show") {
            shown.extend(self.result(written, has));
        }
        shown
    }

    /// What the file says that designs are ranked by.
    fn ranked_by(&mut self, has: Has) -> Option<String> {
        self.result(&Self::written(self.root, "rank_by")?, has)
    }
}
