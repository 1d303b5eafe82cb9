//! The values or the distribution of one varied key, read from a study file.

use axlebow_model::{Document, Holds, Table, Written};
use axlebow_numerics::{Distribution, Spacing, Spread};
use axlebow_units::{Kind, parse_load, parse_or_zero, show};

use super::read_sample::Method;
use super::reader::Reader;

/// A path and a document to try values on.
type Scratch<'p> = (&'p str, Document);
/// Listed values, or what they are drawn from.
type Values = (Vec<f64>, Option<Distribution>);

/// Keys that say which values are taken.
const ALL: [&str; 9] =
    ["from", "to", "points", "spacing", "values", "distribution", "mean", "deviation", "likely"];

impl Reader<'_> {
    pub(crate) fn values(
        &mut self,
        table: &Table,
        (mut scratch, kind): (Scratch<'_>, Kind),
        method: Method,
    ) -> Option<Values> {
        let searched = method == Method::Searched && table.entry("points").is_none();
        self.check_searched(table, method)?;
        let sampled = searched || matches!(method, Method::Sampled(_));
        if !table.texts("values").is_empty() {
            self.check_keys(table, &["values"], "a list of values")?;
            let read: Vec<_> =
                table.texts("values").iter().map(|value| self.value(&mut scratch, value)).collect();
            return read.into_iter().collect::<Option<_>>().map(|values| (values, None));
        }
        if !sampled {
            let accepted = ["from", "to", "points", "spacing"];
            let steps = table.optional_count("points");
            let given = ["from", "to"].iter().all(|key| table.entry(key).is_some());
            if table.entry("distribution").is_some() {
                let message = "a distribution is drawn from by a sample only";
                let accepted = Some("a `[sample]` with `method = \"sobol\"`, or `points`".to_owned());
                self.problems.push(table.span_of("distribution"), message, accepted);
                return None;
            }
            let Some(points) = steps.filter(|_| given) else { return self.unclear(table, method) };
            self.check_keys(table, &accepted, "values in steps")?;
            let (from, to, spacing) = self.range(table, &mut scratch, kind)?;
            return Some((spacing.values(from, to, points), None));
        }
        let distribution = self.distribution(table, &mut scratch, (kind, method))?;
        self.check_drawn(table, &mut scratch, &distribution)?;
        Some((Vec::new(), Some(distribution)))
    }

    /// What values are drawn from, in a sample.
    pub(crate) fn drawn_from(
        &mut self,
        table: &Table,
        (mut scratch, kind): (Scratch<'_>, Kind),
    ) -> Option<Distribution> {
        self.distribution(table, &mut scratch, (kind, Method::Sampled(Spread::Random)))
    }

    /// A search has no use for a distribution.
    fn check_searched(&mut self, table: &Table, method: Method) -> Option<()> {
        if method != Method::Searched || table.entry("distribution").is_none() {
            return Some(());
        }
        let accepted = Some("`from` and `to`, or `values`".to_owned());
        self.problems.push(table.span_of("distribution"), "a search draws from no distribution", accepted);
        None
    }

    /// Two ends that differ, and what lies between.
    fn range(&mut self, table: &Table, scratch: &mut Scratch<'_>, kind: Kind) -> Option<(f64, f64, Spacing)> {
        let from = Self::written(table, "from").and_then(|written| self.value(scratch, &written));
        let to = Self::written(table, "to").and_then(|written| self.value(scratch, &written));
        let (from, to) = (from?, to?);
        let spacing =
            if table.optional_word("spacing") == Some("log") { Spacing::Log } else { Spacing::Even };
        if from == to {
            let message = format!("`from` and `to` are both {}", show(to, kind, self.system()));
            self.problems.push(table.span_of("to"), message, Some("two values that differ".to_owned()));
            return None;
        }
        if spacing == Spacing::Log && from.min(to) <= 0.0 {
            let message = "equal ratios go by no value that is 0 or less";
            let key = if from <= 0.0 { "from" } else { "to" };
            let accepted = Some("`from` and `to` above 0, or `spacing = \"even\"`".to_owned());
            self.problems.push(table.span_of(key), message, accepted);
            return None;
        }
        Some((from, to, spacing))
    }

    fn distribution(
        &mut self,
        table: &Table,
        scratch: &mut Scratch<'_>,
        (kind, method): (Kind, Method),
    ) -> Option<Distribution> {
        let word = table.optional_word("distribution");
        let (wanted, more): (&[&str], &[&str]) = match word {
            Some("normal" | "lognormal") => (&["mean", "deviation"], &["from", "to", "distribution"]),
            Some("triangular") => (&["from", "likely", "to"], &["distribution"]),
            Some(_) => (&["from", "to"], &["distribution"]),
            None => (&["from", "to"], &["spacing"]),
        };
        if wanted.iter().any(|key| table.entry(key).is_none()) {
            return self.unclear(table, method);
        }
        let of = format!("a {} distribution", word.unwrap_or("uniform"));
        self.check_keys(table, &[wanted, more].concat(), &of)?;
        match word {
            Some("normal" | "lognormal") => self.bell(table, scratch, kind),
            Some("triangular") => self.triangle(table, scratch, kind),
            _ => {
                let (one, other, spacing) = self.range(table, scratch, kind)?;
                let (from, to) = (one.min(other), one.max(other));
                Some(match spacing {
                    Spacing::Even => Distribution::Uniform { from, to },
                    Spacing::Log => Distribution::LogUniform { from, to },
                })
            }
        }
    }

    fn bell(&mut self, table: &Table, scratch: &mut Scratch<'_>, kind: Kind) -> Option<Distribution> {
        let mut end = |key: &str, open: f64| match Self::written(table, key) {
            Some(written) => self.value(scratch, &written),
            None => Some(open),
        };
        let range = [end("from", f64::NEG_INFINITY), end("to", f64::INFINITY)];
        let mean = end("mean", f64::NAN);
        let deviation = Self::written(table, "deviation")?;
        let deviation = match scratch.1.holds(scratch.0) {
            // Its unit is a currency, which only the key knows.
            Ok(Holds::Price { .. }) => self.value(scratch, &deviation).filter(|own| *own > 0.0),
            _ => self.positive(&deviation, kind),
        };
        let (range, mean, deviation) = ([range[0]?, range[1]?], mean?, deviation?);
        let is_log = table.optional_word("distribution") == Some("lognormal");
        if is_log && mean <= 0.0 {
            let message = "a lognormal value is above 0, and so is its mean";
            self.problems.push(table.span_of("mean"), message, Some("a mean above 0".to_owned()));
            return None;
        }
        let found = match is_log {
            true => Distribution::Lognormal { mean, deviation, range },
            false => Distribution::Normal { mean, deviation, range },
        };
        if !found.is_sound() {
            let key = if table.entry("from").is_some() { "from" } else { "to" };
            let message = "hardly any value lies from `from` to `to`";
            self.problems.push(table.span_of(key), message, Some("a range about the mean".to_owned()));
            return None;
        }
        Some(found)
    }

    fn triangle(&mut self, table: &Table, scratch: &mut Scratch<'_>, kind: Kind) -> Option<Distribution> {
        let (from, to, _) = self.range(table, scratch, kind)?;
        let likely = self.value(scratch, &Self::written(table, "likely")?)?;
        if !(from.min(to)..=from.max(to)).contains(&likely) {
            let message = format!("the likeliest value {} lies outside", show(likely, kind, self.system()));
            self.problems.push(table.span_of("likely"), message, Some("one from `from` to `to`".to_owned()));
            return None;
        }
        Some(Distribution::Triangular { from: from.min(to), likely, to: from.max(to) })
    }

    /// The middle of a distribution must be a value of the key.
    fn check_drawn(
        &mut self,
        table: &Table,
        (path, document): &mut Scratch<'_>,
        distribution: &Distribution,
    ) -> Option<()> {
        // No round number, so that a key of whole numbers refuses it.
        let Err(refusal) = document.set_number(path, distribution.quantile(0.519)) else { return Some(()) };
        self.problems.push_refusal(table.span(), &refusal);
        None
    }

    /// Refuses what has no use beside the keys that are given.
    pub(crate) fn check_keys(&mut self, table: &Table, used: &[&str], what: &str) -> Option<()> {
        let idle = ALL.iter().find(|key| table.entry(key).is_some() && !used.contains(key));
        let Some(key) = idle else { return Some(()) };
        let accepted = used.iter().map(|key| format!("`{key}`")).collect::<Vec<_>>().join(", ");
        self.problems.push(table.span_of(key), format!("{what} has no use for `{key}`"), Some(accepted));
        None
    }

    fn unclear<T>(&mut self, table: &Table, method: Method) -> Option<T> {
        let path =
            table.optional_text("path").or(table.texts("paths").first().map(|path| path.text.as_str()));
        let message = format!("it is not plain which values {:?} takes", path.unwrap_or_default());
        let accepted = match method {
            Method::Sampled(_) => {
                "`from` and `to`, or `values`, or a `distribution` with `mean` and `deviation` (normal, lognormal), `from` \
                 and `to` (uniform), or `from`, `likely` and `to` (triangular)"
            }
            _ => "`from`, `to` and `points`, or `values`",
        };
        self.problems.push(table.span(), message, Some(accepted.to_owned()));
        None
    }

    /// The number (SI) that a text is where the values go.
    fn value(&mut self, (path, document): &mut Scratch<'_>, written: &Written) -> Option<f64> {
        let number = document.set(path, &written.text).and_then(|()| document.number(path));
        let number =
            number.map_err(|refusal| self.push_refusal((&written.span, &written.span), &refusal)).ok();
        if document.kind(path) == Ok(Kind::Force) && number.is_some() {
            self.note_weight(path, &written.text);
        }
        number
    }

    /// Keeps that a mass was read as its weight, where one was.
    fn note_weight(&mut self, of: &str, text: &str) {
        if let Some(read) = parse_load(text).ok().and_then(|load| load.reading(text)) {
            self.note(format!("{of}: {read}"));
        }
    }

    /// A quantity of a kind that is above zero, SI; a force may be written as the mass that weighs so much.
    pub(crate) fn positive(&mut self, written: &Written, kind: Kind) -> Option<f64> {
        let value = match parse_load(&written.text).ok().filter(|load| load.is_weight && kind == Kind::Force)
        {
            Some(load) => {
                self.note_weight("deviation", &written.text);
                load.force.value
            }
            None => self.quantity_of(written, kind)?,
        };
        if value > 0.0 {
            return Some(value);
        }
        let message = format!("{:?} is not above 0", written.text);
        let accepted = format!("more than {}", show(0.0, kind, self.system()));
        self.problems.push(written.span.clone(), message, Some(accepted));
        None
    }

    /// A quantity of a kind, SI; a zero needs no unit.
    pub(crate) fn quantity_of(&mut self, written: &Written, kind: Kind) -> Option<f64> {
        match parse_or_zero(&written.text, kind) {
            Ok(parsed) => Some(parsed.value),
            Err(error) => {
                let hints = (Some(error.accepted()), error.likely());
                self.problems.push_likely(written.span.clone(), error.message(), hints);
                None
            }
        }
    }

    pub fn masses(&mut self) -> Vec<f64> {
        let Some(table) = self.root.optional_table("constant_mass") else { return Vec::new() };
        table.texts("masses").iter().filter_map(|written| self.mass(written)).collect()
    }

    fn mass(&mut self, written: &Written) -> Option<f64> {
        let mass = self.quantity_of(written, Kind::Mass)?;
        if mass > 0.0 {
            return Some(mass);
        }
        let message = format!("the mass is {:?}", written.text);
        self.problems.push(
            written.span.clone(),
            message,
            Some(format!("more than {}", show(0.0, Kind::Mass, self.system()))),
        );
        None
    }
}
