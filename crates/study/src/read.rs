//! From a study file to a study: rules across keys and files, each misfit reported at its place.

use axlebow_model::{Document, Model, ModelError, Problems, Span, Table, Written, likely};
use axlebow_units::{Kind, UnitSystem, parse, show};

use crate::vary::evenly;
use crate::{MOST_DESIGNS, Study, Variant, Varied};

/// Reads the tables of a study file against the model and collects misfits.
pub(crate) struct Reader<'d> {
    pub root: &'d Table,
    pub model: &'d Document,
    pub base: &'d Model,
    /// A model to try values on.
    pub scratch: Document,
    pub problems: Problems,
}

/// Most variants of a study.
const MOST_VARIANTS: usize = 1000;

impl Reader<'_> {
    /// The study, or everything that is wrong with it.
    pub fn study(mut self) -> Result<Study, Problems> {
        self.check_case();
        let variants = self.variants();
        let varied = self.varied();
        let masses = self.masses();
        self.check_count(variants.len(), &varied);
        if !self.problems.is_empty() {
            return Err(self.problems);
        }
        Ok(Study {
            name: self.root.text("name").to_owned(),
            note: self.root.optional_text("note").map(str::to_owned),
            base: self.base.clone(),
            case: self.root.text("case").to_owned(),
            variants,
            varied,
            masses,
        })
    }

    fn check_case(&mut self) {
        let (case, cases) =
            (self.root.text("case"), || self.base.cases.iter().map(|case| case.name.as_str()));
        if !cases().any(|known| known == case) {
            let hints = (Some(cases().collect::<Vec<_>>().join(", ")), likely(case, cases()));
            let message = format!("the model has no load case {case:?}");
            self.problems.push_likely(self.root.span_of("case"), message, hints);
        }
    }

    fn variants(&mut self) -> Vec<Variant> {
        let tables = self.root.tables("variant");
        if tables.is_empty() {
            return vec![Variant { name: self.base.name.clone(), document: self.model.clone() }];
        }
        if let Some(beyond) = tables.get(MOST_VARIANTS) {
            let message = format!("the study has {} variants", tables.len());
            self.problems.push(beyond.span(), message, Some(format!("{MOST_VARIANTS} at most")));
            return Vec::new();
        }
        let mut variants: Vec<Variant> = Vec::new();
        for table in tables {
            let name = table.text("name").to_owned();
            if variants.iter().any(|variant| variant.name == name) {
                self.problems.push(table.span_of("name"), format!("two variants are named {name:?}"), None);
            }
            let mut document = self.model.clone();
            for (path, text) in table.changes("change") {
                if let Err(refusal) = document.set(&path.text, &text.text) {
                    self.push_refusal((&path.span, &text.span), &refusal);
                }
            }
            variants.push(Variant { name, document });
        }
        variants
    }

    fn varied(&mut self) -> Vec<Varied> {
        let mut all: Vec<Varied> = Vec::new();
        for table in self.root.tables("vary") {
            let path = table.text("path");
            if all.iter().any(|varied| varied.path == path) {
                self.problems.push(table.span_of("path"), format!("{path:?} is varied twice"), None);
                continue;
            }
            self.check_not_changed(path);
            match self.model.kind(path) {
                Ok(kind) => all.extend(self.values(table, (path, kind)).map(|values| Varied {
                    path: path.to_owned(),
                    kind,
                    values,
                })),
                Err(refusal) => self.problems.push_refusal(table.span_of("path"), &refusal),
            }
        }
        all
    }

    /// A key that is varied has no use for a change.
    fn check_not_changed(&mut self, path: &str) {
        for table in self.root.tables("variant") {
            for (changed, _) in table.changes("change").iter().filter(|(changed, _)| changed.text == path) {
                let message = format!("{path:?} is changed here and varied too");
                self.problems.push(changed.span.clone(), message, Some("one of the two".to_owned()));
            }
        }
    }

    fn values(&mut self, table: &Table, (path, kind): (&str, Kind)) -> Option<Vec<f64>> {
        let end = |key| {
            let text = table.optional_text(key)?.to_owned();
            Some(Written { text, span: table.span_of(key) })
        };
        match (table.texts("values"), end("from"), end("to"), table.optional_count("points")) {
            ([], Some(from), Some(to), Some(points)) => {
                let (start, last) = (self.value(path, &from), self.value(path, &to));
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
                let read: Vec<_> = values.iter().map(|value| self.value(path, value)).collect();
                read.into_iter().collect()
            }
            _ => {
                let accepted = "`from`, `to` and `points`, or `values`".to_owned();
                let message = format!("it is not plain which values {path:?} takes");
                self.problems.push(table.span(), message, Some(accepted));
                None
            }
        }
    }

    /// The number (SI) that a text is at a path of the model.
    fn value(&mut self, path: &str, written: &Written) -> Option<f64> {
        let number = self.scratch.set(path, &written.text).and_then(|()| self.scratch.number(path));
        number.map_err(|refusal| self.push_refusal((&written.span, &written.span), &refusal)).ok()
    }

    fn masses(&mut self) -> Vec<f64> {
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

    fn check_count(&mut self, variants: usize, varied: &[Varied]) {
        let each = varied.iter().map(|varied| varied.values.len());
        let count = each.fold(variants, usize::saturating_mul);
        if count > MOST_DESIGNS as usize {
            let span = self.root.tables("vary").last().map_or(0..0, Table::span);
            let message = format!("the study has {count} designs");
            self.problems.push(span, message, Some(format!("{MOST_DESIGNS} at most")));
        }
    }

    /// Reports at the path if that is at fault, else at the value.
    fn push_refusal(&mut self, (path, value): (&Span, &Span), refusal: &ModelError) {
        let span = if matches!(refusal, ModelError::Refused { .. }) { value } else { path };
        self.problems.push_refusal(span.clone(), refusal);
    }
}
