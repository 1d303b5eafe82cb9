//! Links, derived results and limits, read from a study file.

use axlebow_model::{Span, Table, likely};
use axlebow_numerics::Expression;
use axlebow_units::Kind;

use super::names::Names;
use super::read_vary::Into;
use super::reader::Reader;
use crate::ask::{Derived, Limit, Link, Named, StudyKind, StudyRide, Varied};
use crate::solve::{Has, Quantity};

impl Reader<'_> {
    /// Keys that follow the varied ones.
    pub fn links(&mut self, files: Into<'_>, varied: &[Varied]) -> Vec<Link> {
        if self.misses_names(varied) {
            return Vec::new();
        }
        let names = Names::of_varied(varied);
        let own = |varied: &Varied| -> Vec<String> {
            let changes =
                varied.choices.iter().flat_map(|choice| &choice.changes).map(|(path, _)| path.clone());
            varied.paths().map(str::to_owned).chain(changes).collect()
        };
        let mut seen: Vec<String> = varied.iter().flat_map(own).collect();
        let mut links = Vec::new();
        for table in self.root.tables("link") {
            let paths = self.paths(table);
            let known = paths.iter().filter(|path| self.kind_at(path, files, &mut seen).is_some()).count();
            let value = self.expression((table, "as"), &names);
            if let (Some(value), true) = (value, known == paths.len() && known > 0) {
                links.push(Link { paths: paths.into_iter().map(|path| path.text).collect(), value });
            }
        }
        links
    }

    /// Further results, each of those before it and all others.
    pub fn derived(&mut self, varied: &[Varied], (rides, duty): (&[StudyRide], bool)) -> Vec<Derived> {
        let rides: Vec<String> = rides.iter().map(|ride| ride.name.clone()).collect();
        let mut names = Names::of_varied(varied).with_results(&rides, duty);
        let mut all: Vec<Derived> = Vec::new();
        for table in self.root.tables("derived") {
            let name = table.text("name");
            let word = name.replace('-', "_");
            if let Some(why) = names.refuse(&word) {
                let accepted = Some("letters, digits, `-` and `_`, as no key or result is called".to_owned());
                self.problems.push(table.span_of("name"), why, accepted);
                continue;
            }
            let kind = self.unit(table);
            let expression = match self.misses_names(varied) {
                true => Expression::read("0", &[]).ok(),
                false => self.expression((table, "as"), &names),
            };
            let Some(expression) = expression else { continue };
            let uses = expression.uses().into_iter().map(|place| (place, names.stand_for[place])).collect();
            names.add(word, Named::Derived(all.len()));
            all.push(Derived { name: name.to_owned(), kind: kind.unwrap_or(Kind::Ratio), expression, uses });
        }
        all
    }

    /// What the unit of a derived result measures.
    fn unit(&mut self, table: &Table) -> Option<Kind> {
        let unit = table.optional_text("unit")?;
        let found =
            Kind::ALL.into_iter().find(|kind| axlebow_units::parse(&format!("1 {unit}"), *kind).is_ok());
        if found.is_none() {
            let known: Vec<&str> =
                Kind::ALL.iter().filter_map(|kind| kind.accepted().first().copied()).collect();
            let message = format!("{unit:?} is no unit of anything that is shown");
            let accepted = format!("a unit of the kind of one of {}", known.join(", "));
            self.problems.push(table.span_of("unit"), message, Some(accepted));
        }
        found
    }

    /// What results may be.
    pub fn limits(&mut self, has: Has) -> Vec<Limit> {
        self.root.tables("limit").iter().filter_map(|table| self.limit(table, has)).collect()
    }

    fn limit(&mut self, table: &Table, has: Has) -> Option<Limit> {
        let of = self.result(&Self::written(table, "of")?, has)?;
        let own = has.derived.iter().find(|own| own.name == of).map(|own| own.kind);
        let kind = own.or(Quantity::named(&of).ok().map(|quantity| quantity.kind)).unwrap_or(Kind::Ratio);
        let mut end = |key: &str| match Self::written(table, key) {
            Some(written) => self.quantity_of(&written, kind).map(Some),
            None => Some(None),
        };
        let (least, most, within) = (end("least"), end("most"), end("within"));
        let limit = Limit { of, kind, least: least?, most: most?, within: within? };
        self.check_limit(table, &limit)?;
        Some(limit)
    }

    /// A limit says something, and something can meet it.
    fn check_limit(&mut self, table: &Table, limit: &Limit) -> Option<()> {
        let Limit { least, most, within, .. } = limit;
        let span = table.span();
        if least.or(*most).or(*within).is_none() {
            let accepted = Some("`least`, `most` or `within`".to_owned());
            self.problems.push(span, "the limit is not said", accepted);
            return None;
        }
        let low = least.unwrap_or(f64::NEG_INFINITY).max(within.map_or(f64::NEG_INFINITY, |within| -within));
        let high = most.unwrap_or(f64::INFINITY).min(within.unwrap_or(f64::INFINITY));
        if low > high {
            self.problems.push(
                span,
                "no value can meet this limit",
                Some("a `least` below the `most`".to_owned()),
            );
            return None;
        }
        Some(())
    }

    /// Whether a varied key is at fault, so that expressions would miss its name; that has been said.
    fn misses_names(&self, varied: &[Varied]) -> bool {
        varied.len() < self.root.tables("vary").len()
    }

    /// An expression under a key, its faults underlined where they stand.
    fn expression(&mut self, (table, key): (&Table, &str), names: &Names) -> Option<Expression> {
        let text = table.text(key);
        match Expression::read(text, &names.words) {
            Ok(expression) => Some(expression),
            Err(error) => {
                let span = inside(&table.span_of(key), text, &error.span);
                let meant = error.fault.unknown().and_then(|(word, known)| likely(word, known.into_iter()));
                self.problems.push_likely(span, error.to_string(), (error.fault.accepted(), meant));
                None
            }
        }
    }

    /// An uncertainty says how every value is distributed.
    pub fn check_distributed(&mut self, (kind, varied): (StudyKind, &[Varied])) {
        // A key whose values were refused has been reported already.
        if kind != StudyKind::Uncertainty || self.misses_names(varied) {
            return;
        }
        for table in self.root.tables("vary") {
            let said = ["distribution", "values", "choice"].iter().any(|key| table.entry(key).is_some());
            if !said {
                let path = table.optional_text("path").unwrap_or("the value");
                let accepted = "`distribution`: `normal`, `lognormal`, `uniform` or `triangular`";
                let message = format!("it is not said how {path:?} is distributed");
                self.problems.push(table.span(), message, Some(accepted.to_owned()));
            }
        }
    }
}

/// Bytes of a part of a text in the file, if the file has the text letter for letter between its quotes.
fn inside(value: &Span, text: &str, part: &Span) -> Span {
    if value.len() != text.len() + 2 {
        return value.clone();
    }
    // An end of the text is underlined by its closing quote.
    let end = if part.is_empty() { part.start + 1 } else { part.end };
    value.start + 1 + part.start..value.start + 1 + end
}
