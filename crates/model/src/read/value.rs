//! Raw value to value: the rules for what a key holds.

use axlebow_units::{
    Kind, Parsed, ParsedLoad, UnitError, UnitSystem, accepted_loads, is_bare_zero, parse, parse_load, show,
};
use toml::Spanned;
use toml::de::{DeInteger, DeString, DeTable, DeValue};

use super::price::{Price, price};
use super::reader::{Place, Reader};
use crate::content::{EntryNote, Table, Value, Written};
use crate::declare::{Bounds, Holds, KeySpec, Presence, TableSpec, Word};
use crate::faults::{Span, likely, quoted};

/// A raw value and where it is.
struct Site<'r> {
    spec: &'static KeySpec,
    raw: &'r DeValue<'r>,
    raw_span: Span,
    span: Span,
    path: String,
}

impl Reader<'_> {
    /// Reads a raw value; `None` if it is refused, with the reason added to the problems.
    pub fn value(
        &mut self,
        spec: &'static KeySpec,
        raw: &Spanned<DeValue<'_>>,
        path: String,
    ) -> Option<Value> {
        let site = Site { spec, raw: raw.get_ref(), raw_span: raw.span(), span: self.span(raw.span()), path };
        match (spec.holds, site.raw) {
            (Holds::Quantity { kind, bounds }, _) => self.quantity(&site, kind, bounds),
            (Holds::Load { bounds }, _) => self.load(&site, bounds),
            (Holds::QuantityOr { words, .. }, DeValue::String(text)) if is_word(text) => {
                self.word(&site, words, text)
            }
            (Holds::QuantityOr { kind, bounds, .. }, _) => self.quantity(&site, kind, bounds),
            (Holds::Percent { most }, _) => self.percent(&site, most),
            (Holds::Price { per }, _) => self.price(&site, per),
            (Holds::Number { bounds }, _) => self.number(&site, bounds),
            (Holds::Count { min, max }, DeValue::Integer(integer)) => self.count(&site, integer, min..=max),
            (Holds::Flag, DeValue::Boolean(flag)) => Some(Value::Flag(*flag)),
            (Holds::Text, DeValue::String(text)) => self.text(&site, text).map(Value::Text),
            (Holds::Choice(words), DeValue::String(text)) => self.word(&site, words, text),
            (Holds::Table(inner), DeValue::Table(raw)) => {
                Some(Value::Table(self.inner_table(&site, inner, raw)))
            }
            (Holds::Tables(inner), DeValue::Array(list)) => self.tables(&site, inner, list),
            (Holds::Tables(_), DeValue::Table(_)) => {
                self.refuse_for(&site, "is one table where a list is wanted", format!("`[[{}]]`", site.path))
            }
            (Holds::Factors, DeValue::Table(raw)) => self.factors(&site, raw),
            (Holds::Texts, DeValue::Array(list)) => self.texts(&site, list),
            (Holds::Numbers { bounds }, DeValue::Array(list)) => self.numbers(&site, list, bounds),
            (Holds::Values, DeValue::Array(list)) => self.plain_values(&site, list),
            (Holds::Changes, DeValue::Table(raw)) => self.changes(&site, raw),
            (Holds::Corners, DeValue::Array(list)) => self.corners(&site, list),
            _ => self.wrong_type(&site),
        }
    }

    fn quantity(&mut self, site: &Site<'_>, kind: Kind, bounds: Bounds) -> Option<Value> {
        let text = self.quantity_text(site)?;
        if self.takes_bare_zero && is_bare_zero(&text) {
            return self.measured(site, (Parsed { value: 0.0, system: None }, kind), bounds);
        }
        match parse(&text, kind) {
            Ok(parsed) => self.measured(site, (parsed, kind), bounds),
            Err(error) => self.refuse_unit(site, (&text, &error), error.accepted()),
        }
    }

    fn load(&mut self, site: &Site<'_>, bounds: Bounds) -> Option<Value> {
        let text = self.quantity_text(site)?;
        let zero = || ParsedLoad { force: Parsed { value: 0.0, system: None }, is_weight: false };
        let read = if self.takes_bare_zero && is_bare_zero(&text) { Ok(zero()) } else { parse_load(&text) };
        match read {
            Ok(load) => {
                let value = self.measured(site, (load.force, Kind::Force), bounds)?;
                self.note = load.reading(&text).map(EntryNote::ReadAs);
                Some(value)
            }
            Err(error) => self.refuse_unit(site, (&text, &error), accepted_loads()),
        }
    }

    /// The text of a quantity, or a bare number in digits.
    fn quantity_text(&mut self, site: &Site<'_>) -> Option<String> {
        match site.raw {
            DeValue::String(text) => Some(text.as_ref().to_owned()),
            raw => number_text(raw).or_else(|| self.wrong_type(site)),
        }
    }

    /// A quantity with a unit, if it is within the bounds.
    fn measured(
        &mut self,
        site: &Site<'_>,
        (Parsed { value, system }, kind): (Parsed, Kind),
        bounds: Bounds,
    ) -> Option<Value> {
        let shown = system.unwrap_or(UnitSystem::Si);
        let value = self.within(site, (value, kind, shown), bounds)?;
        Some(Value::Quantity { value, kind, system })
    }

    fn refuse_unit<T>(
        &mut self,
        site: &Site<'_>,
        (text, error): (&str, &UnitError),
        accepted: String,
    ) -> Option<T> {
        let written = matches!(site.raw, DeValue::String(_));
        let likely = error.likely().map(|l| if written { l } else { format!("\"{l}\"") });
        let span = if written { self.part(site, text, error.range()) } else { site.span.clone() };
        let message = format!("`{}`: {}", site.path, error.message());
        self.problems.push_likely(span, message, (Some(accepted), likely));
        None
    }

    fn percent(&mut self, site: &Site<'_>, most: f64) -> Option<Value> {
        let DeValue::String(text) = site.raw else { return self.wrong_type(site) };
        let is_plain = self.takes_bare_zero && is_bare_zero(text);
        if !text.contains('%') && !is_plain {
            return self.refuse(site, "is without its %");
        }
        match self.quantity(site, Kind::Ratio, Bounds::Any)? {
            Value::Quantity { value, .. } if !Bounds::Between(0.0, most / 100.0).admit(value) => {
                self.refuse(site, &format!("is {text}"))
            }
            value => Some(value),
        }
    }

    fn price(&mut self, site: &Site<'_>, per: Option<Kind>) -> Option<Value> {
        let text = self.quantity_text(site)?;
        match price(&text, per) {
            Ok(Price { amount, currency }) => Some(Value::Price { amount, currency: currency.to_owned() }),
            Err(fault) => self.refuse(site, &fault.to_string()),
        }
    }

    /// Bytes of a part of a text, if the file has the text letter for letter; else those of the value.
    fn part(&self, site: &Site<'_>, text: &str, part: Span) -> Span {
        let inside = site.raw_span.start + 1..site.raw_span.end.saturating_sub(1);
        let literal = self.stands_at.is_none() && self.text.get(inside.clone()) == Some(text);
        if literal && !part.is_empty() {
            inside.start + part.start..inside.start + part.end
        } else {
            site.span.clone()
        }
    }

    /// The value, if it is within the bounds; `measured` is value (SI), kind and system to show it in.
    fn within(&mut self, site: &Site<'_>, measured: (f64, Kind, UnitSystem), bounds: Bounds) -> Option<f64> {
        let (value, kind, system) = measured;
        if bounds.admit(value) {
            return Some(value);
        }
        let wanted = bounds.words(kind, system).unwrap_or_else(|| "a finite value".to_owned());
        self.refuse_for(site, &format!("is {}", show(value, kind, system)), wanted)
    }

    fn number(&mut self, site: &Site<'_>, bounds: Bounds) -> Option<Value> {
        match number_text(site.raw) {
            Some(number) => {
                let value = number.parse().unwrap_or(f64::NAN);
                self.within(site, (value, Kind::Ratio, UnitSystem::Si), bounds).map(Value::Number)
            }
            None => self.wrong_type(site),
        }
    }

    fn count(
        &mut self,
        site: &Site<'_>,
        raw: &DeInteger<'_>,
        range: std::ops::RangeInclusive<u32>,
    ) -> Option<Value> {
        match u32::from_str_radix(raw.as_str(), raw.radix()) {
            Ok(count) if range.contains(&count) => Some(Value::Count(count)),
            _ => self.refuse(site, &format!("is {raw}")),
        }
    }

    fn word(&mut self, site: &Site<'_>, words: &'static [Word], text: &str) -> Option<Value> {
        if let Some(found) = words.iter().find(|word| word.word == text) {
            return Some(Value::Word(found.word));
        }
        let message = format!("`{}` cannot be {}", site.path, quoted(text));
        let hints = (Some(site.spec.holds.accepted()), likely(text, words.iter().map(|word| word.word)));
        self.problems.push_likely(site.span.clone(), message, hints);
        None
    }

    fn inner_table(&mut self, site: &Site<'_>, spec: &'static TableSpec, raw: &DeTable<'_>) -> Table {
        self.table(spec, raw, Place { path: site.path.clone(), span: site.span.clone() })
    }

    fn tables(
        &mut self,
        site: &Site<'_>,
        spec: &'static TableSpec,
        list: &[Spanned<DeValue<'_>>],
    ) -> Option<Value> {
        if list.is_empty() && site.spec.presence == Presence::Required {
            return self.refuse(site, "is an empty list");
        }
        let mut tables = Vec::new();
        for (i, item) in list.iter().enumerate() {
            if self.problems.is_full() {
                return None;
            }
            let path = format!("{}[{i}]", site.path);
            let span = self.span(item.span());
            let inner = Site { raw: item.get_ref(), raw_span: item.span(), span, path, ..*site };
            match inner.raw {
                DeValue::Table(raw) => tables.push(self.inner_table(&inner, spec, raw)),
                _ => self.wrong_type(&inner)?,
            }
        }
        Some(Value::Tables(tables))
    }

    fn factors(&mut self, site: &Site<'_>, raw: &DeTable<'_>) -> Option<Value> {
        let mut factors = Vec::new();
        for (key, item) in in_file_order(raw) {
            if self.problems.is_full() {
                return None;
            }
            let inner = self.under(site, key, item);
            if let Some(Value::Number(factor)) = self.number(&inner, Bounds::Any) {
                factors.push((key.get_ref().as_ref().to_owned(), factor));
            }
        }
        Some(Value::Factors(factors))
    }

    /// Each item of a list that is not empty, those that cannot be read left out.
    fn items<T>(
        &mut self,
        site: &Site<'_>,
        list: &[Spanned<DeValue<'_>>],
        read: impl Fn(&mut Self, &Site<'_>) -> Option<T>,
    ) -> Option<Vec<T>> {
        if list.is_empty() {
            return self.refuse(site, "is an empty list");
        }
        let mut items = Vec::new();
        for (i, item) in list.iter().enumerate() {
            if self.problems.is_full() {
                return None;
            }
            let (path, span) = (format!("{}[{i}]", site.path), self.span(item.span()));
            let inner = Site { raw: item.get_ref(), raw_span: item.span(), span, path, ..*site };
            items.extend(read(self, &inner));
        }
        Some(items)
    }

    fn texts(&mut self, site: &Site<'_>, list: &[Spanned<DeValue<'_>>]) -> Option<Value> {
        self.items(site, list, Self::written).map(Value::Texts)
    }

    fn numbers(&mut self, site: &Site<'_>, list: &[Spanned<DeValue<'_>>], bounds: Bounds) -> Option<Value> {
        let number = |reader: &mut Self, site: &Site<'_>| match reader.number(site, bounds)? {
            Value::Number(number) => Some(number),
            _ => None,
        };
        self.items(site, list, number).map(Value::Numbers)
    }

    fn changes(&mut self, site: &Site<'_>, raw: &DeTable<'_>) -> Option<Value> {
        let mut changes = Vec::new();
        for (key, item) in in_file_order(raw) {
            if self.problems.is_full() {
                return None;
            }
            let inner = self.under(site, key, item);
            let path = Written { text: key.get_ref().as_ref().to_owned(), span: self.span(key.span()) };
            changes.extend(self.plain_value(&inner).map(|text| (path, text)));
        }
        Some(Value::Changes(changes))
    }

    fn plain_values(&mut self, site: &Site<'_>, list: &[Spanned<DeValue<'_>>]) -> Option<Value> {
        self.items(site, list, Self::plain_value).map(Value::Texts)
    }

    /// What may stand at a key of another file, in the letters in which that file would have it.
    fn plain_value(&mut self, site: &Site<'_>) -> Option<Written> {
        let text = match site.raw {
            DeValue::Boolean(flag) => flag.to_string(),
            raw => match number_text(raw) {
                Some(number) => number,
                None => return self.written(site),
            },
        };
        Some(Written { text, span: site.span.clone() })
    }

    fn corners(&mut self, site: &Site<'_>, list: &[Spanned<DeValue<'_>>]) -> Option<Value> {
        let mut corners = Vec::new();
        for (i, item) in list.iter().enumerate() {
            if self.problems.is_full() {
                return None;
            }
            let (path, span) = (format!("{}[{i}]", site.path), self.span(item.span()));
            let inner = Site { raw: item.get_ref(), raw_span: item.span(), span, path, ..*site };
            corners.push(self.corner(&inner)?);
        }
        Some(Value::Corners(corners))
    }

    fn corner(&mut self, site: &Site<'_>) -> Option<[f64; 2]> {
        let DeValue::Array(pair) = site.raw else { return self.wrong_type(site) };
        let [x, z] = pair.as_ref() else { return self.refuse(site, "is not two lengths") };
        let mut length = |item: &Spanned<DeValue<'_>>| {
            let (path, span) = (site.path.clone(), self.span(item.span()));
            let own = Site { spec: site.spec, raw: item.get_ref(), raw_span: item.span(), span, path };
            match self.quantity(&own, Kind::Length, Bounds::Any)? {
                Value::Quantity { value, .. } => Some(value),
                _ => None,
            }
        };
        let (x, z) = (length(x), length(z));
        Some([x?, z?])
    }

    fn written(&mut self, site: &Site<'_>) -> Option<Written> {
        match site.raw {
            DeValue::String(text) => {
                self.text(site, text).map(|text| Written { text, span: site.span.clone() })
            }
            _ => self.wrong_type(site),
        }
    }

    /// A text, if there is something to read in it and nothing that would steer the terminal on which it is shown.
    fn text(&mut self, site: &Site<'_>, text: &str) -> Option<String> {
        if text.trim().is_empty() {
            return self.refuse(site, "is empty");
        }
        let steers = |letter: &char| letter.is_control() && !matches!(letter, '\n' | '\t');
        if let Some(letter) = text.chars().find(steers) {
            let reason = format!("holds the control character U+{:04X}", u32::from(letter));
            return self.refuse_for(site, &reason, "letters, digits and other signs in print".to_owned());
        }
        Some(text.to_owned())
    }

    /// The site of a value under a free key of a table.
    fn under<'r>(
        &self,
        site: &Site<'_>,
        key: &Spanned<DeString<'_>>,
        item: &'r Spanned<DeValue<'r>>,
    ) -> Site<'r> {
        let path = format!("{}.{}", site.path, quoted(key.get_ref()).trim_matches('`'));
        let span = self.span(item.span());
        Site { spec: site.spec, raw: item.get_ref(), raw_span: item.span(), span, path }
    }

    fn wrong_type<T>(&mut self, site: &Site<'_>) -> Option<T> {
        let found = match site.raw {
            DeValue::String(_) => "text",
            DeValue::Integer(_) | DeValue::Float(_) => "a bare number",
            DeValue::Boolean(_) => "true or false",
            DeValue::Datetime(_) => "a date",
            DeValue::Array(_) => "a list",
            DeValue::Table(_) => "a table",
        };
        self.refuse(site, &format!("cannot be {found}"))
    }

    fn refuse<T>(&mut self, site: &Site<'_>, reason: &str) -> Option<T> {
        self.refuse_for(site, reason, site.spec.holds.accepted())
    }

    fn refuse_for<T>(&mut self, site: &Site<'_>, reason: &str, accepted: String) -> Option<T> {
        self.problems.push(site.span.clone(), format!("`{}` {reason}", site.path), Some(accepted));
        None
    }
}

/// Whether a text is meant as a word and not as a number with a unit.
fn is_word(text: &str) -> bool {
    text.trim_start().starts_with(char::is_alphabetic)
}

/// The keys and values of a table, in file order.
fn in_file_order<'r>(raw: &'r DeTable<'r>) -> Vec<(&'r Spanned<DeString<'r>>, &'r Spanned<DeValue<'r>>)> {
    let mut keys: Vec<_> = raw.iter().collect();
    keys.sort_by_key(|(key, _)| key.span().start);
    keys
}

/// A raw number in decimal digits, if it is a number.
fn number_text(raw: &DeValue<'_>) -> Option<String> {
    match raw {
        DeValue::Float(float) => Some(float.as_str().to_owned()),
        DeValue::Integer(integer) if integer.radix() == 10 => Some(integer.as_str().to_owned()),
        DeValue::Integer(integer) => {
            let whole = u128::from_str_radix(integer.as_str(), integer.radix());
            Some(whole.map_or_else(|_| "inf".to_owned(), |whole| whole.to_string()))
        }
        _ => None,
    }
}
