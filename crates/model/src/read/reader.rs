//! The walk over the tables of a file.

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use crate::content::{Assumed, Entry, EntryNote, Table, Value};
use crate::declare::{KeySpec, Presence, TableSpec};
use crate::faults::{Problems, Span, likely, quoted};

/// Where a table is: its path, empty for the whole file, and its head.
pub(crate) struct Place {
    pub path: String,
    pub span: Span,
}

impl Place {
    fn path_of(&self, key: &str) -> String {
        if self.path.is_empty() { key.to_owned() } else { format!("{}.{key}", self.path) }
    }
}

/// The state of a walk over a file or over the text of one value.
pub(crate) struct Reader<'s> {
    /// The text that spans of raw values count in.
    pub text: &'s str,
    /// The place in the file that `text` stands for, if it is not the file itself.
    pub stands_at: Option<Span>,
    pub problems: Problems,
    pub assumed: Vec<Assumed>,
    /// Whether the file parsed without faults, so that a missing key is missing indeed.
    pub whole: bool,
    /// Whether a zero may stand without its unit.
    pub takes_bare_zero: bool,
    /// How the value that was read last was read, where that is not plain.
    pub note: Option<EntryNote>,
}

impl<'s> Reader<'s> {
    pub fn new(text: &'s str, problems: Problems) -> Self {
        Self {
            text,
            stands_at: None,
            problems,
            assumed: Vec::new(),
            whole: true,
            takes_bare_zero: false,
            note: None,
        }
    }

    /// Bytes of the file that a raw span stands for.
    pub fn span(&self, raw: Span) -> Span {
        self.stands_at.clone().unwrap_or(raw)
    }

    /// Reads a table: its keys in file order, then the defaults.
    pub fn table(&mut self, spec: &'static TableSpec, raw: &DeTable<'_>, place: Place) -> Table {
        let mut table = Table { spec, span: place.span.clone(), entries: Vec::new(), faulty: Vec::new() };
        let mut keys: Vec<_> = raw.iter().collect();
        keys.sort_by_key(|(key, _)| key.span().start);
        for (key, value) in keys {
            match spec.key(key.get_ref()) {
                _ if self.problems.is_full() => break,
                Some(key_spec) => match self.entry(key_spec, value, &place) {
                    Some(entry) => table.entries.push(entry),
                    None => table.faulty.push(key_spec.key),
                },
                None => self.unknown_key(spec, self.span(key.span()), key.get_ref()),
            }
        }
        for key_spec in spec.keys.iter().filter(|key_spec| !raw.contains_key(key_spec.key)) {
            match key_spec.presence {
                Presence::Required if self.whole => self.missing_key(key_spec, &place),
                Presence::Default(text) => table.entries.extend(self.default_entry(key_spec, text, &place)),
                Presence::Required | Presence::Optional => {}
            }
        }
        table
    }

    fn entry(&mut self, spec: &'static KeySpec, raw: &Spanned<DeValue<'_>>, place: &Place) -> Option<Entry> {
        let path = place.path_of(spec.key);
        let span = self.span(raw.span());
        let assumed = self.stands_at.is_some();
        let value = self.value(spec, raw, path.clone())?;
        if assumed && !matches!(value, Value::Table(_)) {
            let text = self.text.get(raw.span()).unwrap_or_default().trim_matches('"').to_owned();
            self.assumed.push(Assumed { path, text, meaning: spec.meaning });
        }
        Some(Entry { key: spec.key, value, span, assumed, note: self.note.take() })
    }

    fn default_entry(&mut self, spec: &'static KeySpec, text: &'static str, place: &Place) -> Option<Entry> {
        let raw = match DeValue::parse(text) {
            Ok(raw) => raw,
            Err(error) => {
                let message = format!(
                    "the default of `{}` cannot be read: {}",
                    place.path_of(spec.key),
                    error.message()
                );
                self.problems.push(place.span.clone(), message, None);
                return None;
            }
        };
        let file_text = std::mem::replace(&mut self.text, text);
        let outer = self.stands_at.replace(place.span.clone());
        let entry = self.entry(spec, &raw, place);
        self.text = file_text;
        self.stands_at = outer;
        entry
    }

    fn unknown_key(&mut self, spec: &TableSpec, span: Span, key: &str) {
        let likely = likely(key, spec.keys.iter().map(|known| known.key));
        let message = format!("{} has no key {}", spec.name, quoted(key));
        self.problems.push_likely(span, message, (Some(spec.key_list()), likely));
    }

    fn missing_key(&mut self, spec: &KeySpec, place: &Place) {
        let message = format!("`{}` is missing: {}", place.path_of(spec.key), spec.meaning);
        self.problems.push(place.span.clone(), message, Some(spec.holds.accepted()));
    }
}
