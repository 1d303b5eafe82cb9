//! The values that keys take in a study, read by the rules of the files that the keys are of.

use axlebow_model::{Document, ModelError, Span, Table, Written};
use axlebow_units::{Kind, UnitSystem, parse, show};

use crate::read::Reader;
use crate::vary::{evenly, of_road};
use crate::{StudyRide, Variant, Varied};

/// A path and a document to try values on.
struct Scratch<'p> {
    path: &'p str,
    document: Document,
}

impl Reader<'_> {
    pub fn varied(&mut self, variants: &[Variant], rides: &[StudyRide]) -> Vec<Varied> {
        let mut all: Vec<Varied> = Vec::new();
        for table in self.root.tables("vary") {
            let path = table.text("path");
            if all.iter().any(|varied| varied.path == path) {
                self.problems.push(table.span_of("path"), format!("{path:?} is varied twice"), None);
                continue;
            }
            let (own, documents): (&str, Vec<&Document>) = match of_road(path) {
                Some(own) => (own, rides.iter().map(|ride| &ride.document).collect()),
                None => (path, variants.iter().map(|variant| &variant.document).collect()),
            };
            self.check_not_changed(path);
            let Some(kind) = self.kind_in(table.span_of("path"), (own, own != path), &documents) else {
                continue;
            };
            let mut scratch = Scratch { path: own, document: documents[0].clone() };
            let values = self.values(table, (&mut scratch, kind));
            all.extend(values.map(|values| Varied { path: path.to_owned(), kind, values }));
        }
        all
    }

    /// What a key measures in every one of some documents; a problem if one does not know it.
    fn kind_in(
        &mut self,
        span: Span,
        (path, is_of_road): (&str, bool),
        documents: &[&Document],
    ) -> Option<Kind> {
        if documents.is_empty() {
            // A study without variants has said so already.
            if is_of_road {
                let message = "a key of the road is varied, and the study has no ride";
                self.problems.push(span, message, Some("a `[[ride]]` table".to_owned()));
            }
            return None;
        }
        let kinds: Result<Vec<Kind>, ModelError> =
            documents.iter().map(|document| document.kind(path)).collect();
        kinds
            .map_err(|refusal| self.problems.push_refusal(span, &refusal))
            .ok()
            .and_then(|k| k.first().copied())
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

    fn values(&mut self, table: &Table, (scratch, kind): (&mut Scratch<'_>, Kind)) -> Option<Vec<f64>> {
        let end = |key| {
            let text = table.optional_text(key)?.to_owned();
            Some(Written { text, span: table.span_of(key) })
        };
        match (table.texts("values"), end("from"), end("to"), table.optional_count("points")) {
            ([], Some(from), Some(to), Some(points)) => {
                let (start, last) = (self.value(scratch, &from), self.value(scratch, &to));
                let (start, last) = (start?, last?);
                if start == last {
                    let shown = show(last, kind, UnitSystem::Si);
                    let message = format!("`from` and `to` are both {shown}");
                    self.problems.push(to.span, message, Some("two values that differ".to_owned()));
                    return None;
                }
                Some(evenly(start, last, points))
            }
            (values, None, None, None) if !values.is_empty() => {
                let read: Vec<_> = values.iter().map(|value| self.value(scratch, value)).collect();
                read.into_iter().collect()
            }
            _ => {
                let accepted = "`from`, `to` and `points`, or `values`".to_owned();
                let message = format!("it is not plain which values {:?} takes", table.text("path"));
                self.problems.push(table.span(), message, Some(accepted));
                None
            }
        }
    }

    /// The number (SI) that a text is where the values go.
    fn value(&mut self, scratch: &mut Scratch<'_>, written: &Written) -> Option<f64> {
        let Scratch { path, document } = scratch;
        let number = document.set(path, &written.text).and_then(|()| document.number(path));
        number.map_err(|refusal| self.push_refusal((&written.span, &written.span), &refusal)).ok()
    }

    pub fn masses(&mut self) -> Vec<f64> {
        let Some(table) = self.root.optional_table("constant_mass") else { return Vec::new() };
        table.texts("masses").iter().filter_map(|written| self.mass(written)).collect()
    }

    fn mass(&mut self, written: &Written) -> Option<f64> {
        let (message, hints) = match parse(&written.text, Kind::Mass) {
            Ok(parsed) if parsed.value > 0.0 => return Some(parsed.value),
            Ok(_) => (format!("the mass is {:?}", written.text), (Some("more than 0 kg".to_owned()), None)),
            Err(error) => (error.message(), (Some(error.accepted()), error.likely())),
        };
        self.problems.push_likely(written.span.clone(), message, hints);
        None
    }
}
