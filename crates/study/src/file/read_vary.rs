//! The values that keys take in a study, read by the rules of the files that the keys are of.

use axlebow_model::{Document, ModelError, Table, Written};
use axlebow_numerics::plain_name;
use axlebow_units::Kind;

use super::names::{Names, is_result};
use super::read_sample::Method;
use super::reader::Reader;
use crate::ask::{Choice, StudyRide, Variant, Varied, last_word, of_road};

/// The documents that a study's paths lead into.
#[derive(Clone, Copy)]
pub(crate) struct Into<'s> {
    pub variants: &'s [Variant],
    pub rides: &'s [StudyRide],
}

/// A key of a file, and the documents that have it.
pub(crate) struct Key<'s> {
    pub path: &'s Written,
    /// The path within the documents.
    pub own: &'s str,
    pub documents: Vec<&'s Document>,
}

impl<'s> Into<'s> {
    /// The key at a path.
    pub fn key(self, path: &'s Written) -> Key<'s> {
        match of_road(&path.text) {
            Some(own) => Key { path, own, documents: self.rides.iter().map(|ride| &ride.document).collect() },
            None => {
                let documents = self.variants.iter().map(|variant| &variant.document).collect();
                Key { path, own: &path.text, documents }
            }
        }
    }
}

impl Reader<'_> {
    pub fn varied(&mut self, files: Into<'_>, method: Method) -> Vec<Varied> {
        let mut all: Vec<Varied> = Vec::new();
        let mut seen: Vec<String> = Vec::new();
        for table in self.root.tables("vary") {
            let varied = match table.tables("choice") {
                [] => self.varied_key(table, (files, method), &mut seen),
                choices => self.catalogue((table, choices), files, &mut seen),
            };
            all.extend(varied);
        }
        self.check_names(&mut all);
        all
    }

    /// The paths of a table: `path` or `paths`.
    pub(crate) fn paths(&mut self, table: &Table) -> Vec<Written> {
        let one = table
            .optional_text("path")
            .map(|text| Written { text: text.to_owned(), span: table.span_of("path") });
        match (one, table.texts("paths")) {
            (Some(path), []) => vec![path],
            (None, several @ [_, ..]) => several.to_vec(),
            (Some(_), _) => {
                let message = "it has both `path` and `paths`";
                self.problems.push(table.span_of("paths"), message, Some("one of the two".to_owned()));
                Vec::new()
            }
            (None, _) => {
                let message = "it is not said which key is meant";
                let accepted = "`path`, `paths` or `[[vary.choice]]` tables";
                let accepted = if table.spec().name == "vary" { accepted } else { "`path` or `paths`" };
                self.problems.push(table.span(), message, Some(accepted.to_owned()));
                Vec::new()
            }
        }
    }

    /// A key, or several that take the same value.
    fn varied_key(
        &mut self,
        table: &Table,
        (files, method): (Into<'_>, Method),
        seen: &mut Vec<String>,
    ) -> Option<Varied> {
        let paths = self.paths(table);
        if !table.texts("values").is_empty() && self.holds_words(&paths, files) {
            return self.varied_words((table, &paths), files, seen);
        }
        let mut kinds: Vec<Kind> = Vec::new();
        for path in &paths {
            kinds.push(self.kind_at(path, files, seen)?);
        }
        let (first, kind) = (paths.first()?, *kinds.first()?);
        if let Some(other) = kinds.iter().position(|own| *own != kind) {
            let message = format!(
                "{:?} measures {}, and {:?} {}",
                first.text,
                kind.name(),
                paths[other].text,
                kinds[other].name()
            );
            self.problems.push(
                paths[other].span.clone(),
                message,
                Some("keys that measure the same".to_owned()),
            );
            return None;
        }
        let key = files.key(first);
        let mut varied = Varied::of_key(&first.text, kind, Vec::new());
        varied.others = paths[1..].iter().map(|path| path.text.clone()).collect();
        let scratch = (key.own, key.documents[0].clone());
        (varied.values, varied.distribution) = self.values(table, (scratch, kind), method)?;
        Some(varied)
    }

    /// What a key measures, if every file knows it and nothing else sets it.
    pub(crate) fn kind_at(
        &mut self,
        path: &Written,
        files: Into<'_>,
        seen: &mut Vec<String>,
    ) -> Option<Kind> {
        self.check_free(path, files, seen)?;
        let key = files.key(path);
        let kinds: Result<Vec<Kind>, ModelError> =
            key.documents.iter().map(|document| document.kind(key.own)).collect();
        match kinds {
            Ok(kinds) => kinds.first().copied(),
            Err(refusal) => {
                self.problems.push_refusal(path.span.clone(), &refusal);
                None
            }
        }
    }

    /// A key is varied once, is not changed too, and has a file that it is of.
    pub(crate) fn check_free(
        &mut self,
        path: &Written,
        files: Into<'_>,
        seen: &mut Vec<String>,
    ) -> Option<()> {
        if seen.contains(&path.text) {
            self.problems.push(path.span.clone(), format!("{:?} is varied twice", path.text), None);
            return None;
        }
        seen.push(path.text.clone());
        self.check_not_changed(&path.text);
        self.check_documents(&files.key(path))
    }

    /// Keeps how values of a choice were read.
    pub(crate) fn note_changes(&mut self, before: &Document, after: &Document, choice: &str) {
        let known = before.notes();
        for note in after.notes().into_iter().filter(|note| !known.contains(note)) {
            self.note(format!("{choice}: {note}"));
        }
    }

    fn check_documents(&mut self, key: &Key<'_>) -> Option<()> {
        // A study without variants has said so already.
        if key.documents.is_empty() && of_road(&key.path.text).is_some() {
            let message = "a key of the road is varied, and the study has no ride";
            self.problems.push(key.path.span.clone(), message, Some("a `[[ride]]` table".to_owned()));
        }
        (!key.documents.is_empty()).then_some(())
    }

    /// A key that is varied has no use for a change.
    fn check_not_changed(&mut self, path: &str) {
        let (own, tables) = match of_road(path) {
            Some(own) => (own, self.root.tables("ride")),
            None => (path, self.root.tables("variant")),
        };
        for table in tables {
            let speed = table.entry("speed").filter(|_| path == "road.speed").map(|entry| &entry.span);
            let changes = table.changes("change").iter().filter(|(changed, _)| changed.text == own);
            for span in changes.map(|(changed, _)| &changed.span).chain(speed) {
                let message = format!("{path:?} is changed here and varied too");
                self.problems.push(span.clone(), message, Some("one of the two".to_owned()));
            }
        }
    }

    /// A choice among entries that each set several keys.
    fn catalogue(
        &mut self,
        (table, entries): (&Table, &[Table]),
        files: Into<'_>,
        seen: &mut Vec<String>,
    ) -> Option<Varied> {
        for key in [
            "path",
            "paths",
            "from",
            "to",
            "points",
            "spacing",
            "values",
            "distribution",
            "mean",
            "deviation",
            "likely",
        ] {
            if table.entry(key).is_some() {
                let accepted = Some("`name` and `[[vary.choice]]` tables, or the other keys".to_owned());
                self.problems.push(table.span_of(key), format!("a choice has no use for `{key}`"), accepted);
            }
        }
        let Some(name) = table.optional_text("name") else {
            let message = "the choice has no name";
            self.problems.push(table.span(), message, Some("`name`, such as \"stiffener\"".to_owned()));
            return None;
        };
        let mut choices: Vec<Choice> = Vec::new();
        let mut own: Vec<String> = Vec::new();
        for entry in entries {
            choices.extend(self.choice((entry, &choices), files, (seen, &mut own)));
        }
        seen.extend(own);
        let places = (0..choices.len()).map(|place| place as f64).collect();
        let name = name.to_owned();
        let kind = Kind::Ratio;
        Some(Varied { choices, is_named: true, ..Varied::of_key(&name, kind, places) })
    }

    /// One entry of a catalogue, tried on every file that it is of.
    fn choice(
        &mut self,
        (entry, before): (&Table, &[Choice]),
        files: Into<'_>,
        (seen, own): (&[String], &mut Vec<String>),
    ) -> Option<Choice> {
        let name = entry.text("name").to_owned();
        if before.iter().any(|choice| choice.name == name) {
            self.problems.push(entry.span_of("name"), format!("two choices are named {name:?}"), None);
        }
        for (path, text) in entry.changes("change") {
            if seen.contains(&path.text) {
                self.problems.push(path.span.clone(), format!("{:?} is varied twice", path.text), None);
            }
            if !own.contains(&path.text) {
                own.push(path.text.clone());
                self.check_not_changed(&path.text);
            }
            let key = files.key(path);
            self.check_documents(&key)?;
            for document in &key.documents {
                let mut changed = Document::clone(document);
                if let Err(refusal) = changed.set(key.own, &text.text) {
                    self.push_refusal((&path.span, &text.span), &refusal);
                    break;
                }
                self.note_changes(document, &changed, &name);
            }
        }
        let changes =
            entry.changes("change").iter().map(|(path, text)| (path.text.clone(), text.text.clone()));
        Some(Choice { name, changes: changes.collect() })
    }

    /// Gives every key the name that expressions call it by.
    fn check_names(&mut self, all: &mut [Varied]) {
        let tables = self.root.tables("vary");
        if all.len() < tables.len() {
            return;
        }
        for (place, table) in tables.iter().enumerate() {
            let Some(name) = table.optional_text("name") else { continue };
            let refusal = match is_result(name) {
                true => Some(format!("a result is called {name:?} already")),
                false => Names::of_varied(&all[..place]).refuse(name),
            };
            // A choice has no number, so that no expression must write it.
            if let Some(why) = refusal.filter(|_| all[place].choices.is_empty()) {
                let accepted =
                    Some("letters, digits and `_`, as no other key or result is called".to_owned());
                self.problems.push(table.span_of("name"), why, accepted);
            }
            name.clone_into(&mut all[place].name);
            all[place].is_named = true;
        }
        let alike = |name: &str, all: &[Varied]| all.iter().filter(|own| own.name == name).count() > 1;
        let taken: Vec<bool> = all.iter().map(|own| alike(&own.name, all) || is_result(&own.name)).collect();
        for (own, _) in all.iter_mut().zip(taken).filter(|(own, taken)| *taken && !own.is_named) {
            own.name = plain_name(&own.path);
        }
        debug_assert!(
            all.iter().all(|own| own.is_named || !own.name.is_empty() || last_word(&own.path).is_empty())
        );
    }
}
