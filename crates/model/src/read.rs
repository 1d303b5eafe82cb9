//! Text to document: the walk over the tables of a file.

use std::sync::Arc;

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use crate::problem::{likely, quoted};
use crate::{
    Assumed, Document, Entry, Holds, KeySpec, ModelError, Presence, Problems, Span, Table, TableSpec, Value,
};

/// The longest file that is read, bytes.
pub const LARGEST: usize = 1_000_000;

/// Reads a file against its declaration.
///
/// Arguments: `text`, TOML 1.1; `file_name`, for messages; `spec`, the declaration of the whole file.
///
/// Returns what the file says, in SI, with the defaults that it leaves to be assumed.
///
/// # Errors
/// Every problem at once, up to fifty: a file that is too long or empty, syntax, unknown and missing keys,
/// contents of the wrong type, unit or range.
pub fn read(text: &str, file_name: &str, spec: &'static TableSpec) -> Result<Document, Problems> {
    if text.len() > LARGEST {
        return Err(too_long(text.len(), file_name, LARGEST));
    }
    let source: Arc<str> = Arc::from(text);
    let mut problems = Problems::new(file_name, Arc::clone(&source));
    let (raw, faults) = DeTable::parse_recoverable(text);
    for fault in &faults {
        problems.push(fault.span().unwrap_or_default(), fault.message(), None);
    }
    if faults.is_empty() && raw.get_ref().is_empty() {
        problems.push(0..0, "the file is empty", Some(format!("a {} with {}", spec.name, spec.key_list())));
        return Err(problems);
    }
    let mut reader = Reader::new(text, Problems::new(file_name, source));
    reader.whole = faults.is_empty();
    let root = reader.table(spec, raw.get_ref(), Place { path: String::new(), span: 0..0 });
    problems.absorb(&reader.problems);
    if problems.is_empty() { Ok(Document::new(problems, root, reader.assumed)) } else { Err(problems) }
}

/// Reads a file that may not be text; see [`read`].
///
/// # Errors
/// Those of [`read`], and bytes that are not UTF-8.
pub fn read_bytes(bytes: &[u8], file_name: &str, spec: &'static TableSpec) -> Result<Document, Problems> {
    read(text_of(bytes, file_name, LARGEST)?, file_name, spec)
}

/// The text of a file of at most so many bytes.
pub(crate) fn text_of<'b>(bytes: &'b [u8], file_name: &str, most: usize) -> Result<&'b str, Problems> {
    if bytes.len() > most {
        return Err(too_long(bytes.len(), file_name, most));
    }
    str::from_utf8(bytes).map_err(|error| {
        let at = error.valid_up_to();
        let mut problems = Problems::new(file_name, String::from_utf8_lossy(bytes).into());
        let shown = at..at + char::REPLACEMENT_CHARACTER.len_utf8();
        problems.push(shown, "this is not UTF-8 text", Some("a text file saved as UTF-8".to_owned()));
        problems
    })
}

fn too_long(length: usize, file_name: &str, most: usize) -> Problems {
    let mut problems = Problems::new(file_name, "".into());
    problems.push(0..0, format!("the file is {length} bytes long"), Some(format!("at most {most} bytes")));
    problems
}

/// Reads one value by the rules of its key; text is taken without its quotes.
pub(crate) fn lone_value(spec: &'static KeySpec, path: &str, text: &str) -> Result<Value, ModelError> {
    let refused =
        |message, accepted, likely| ModelError::Refused { path: path.to_owned(), message, accepted, likely };
    let raw = match spec.holds {
        Holds::Table(_)
        | Holds::Tables(_)
        | Holds::Factors
        | Holds::Texts
        | Holds::Numbers { .. }
        | Holds::Changes
        | Holds::Corners => {
            return Err(ModelError::NotOneValue { path: path.to_owned() });
        }
        Holds::Quantity { .. }
        | Holds::QuantityOr { .. }
        | Holds::Percent { .. }
        | Holds::Text
        | Holds::Choice(_) => Spanned::new(0..text.len(), DeValue::String(text.into())),
        Holds::Number { .. } | Holds::Count { .. } | Holds::Flag => {
            DeValue::parse(text.trim()).map_err(|_| {
                refused(format!("`{path}` cannot be {}", quoted(text)), Some(spec.holds.accepted()), None)
            })?
        }
    };
    let mut reader = Reader::new(text, Problems::new("", "".into()));
    reader.stands_at = Some(0..0);
    reader.value(spec, &raw, path.to_owned()).ok_or_else(|| {
        let problem = reader.problems.iter().next().cloned();
        problem
            .map_or_else(|| refused(String::new(), None, None), |p| refused(p.message, p.accepted, p.likely))
    })
}

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
}

impl<'s> Reader<'s> {
    pub fn new(text: &'s str, problems: Problems) -> Self {
        Self { text, stands_at: None, problems, assumed: Vec::new(), whole: true }
    }

    /// Bytes of the file that a raw span stands for.
    pub fn span(&self, raw: Span) -> Span {
        self.stands_at.clone().unwrap_or(raw)
    }

    /// Reads a table: its keys in file order, then the defaults.
    pub fn table(&mut self, spec: &'static TableSpec, raw: &DeTable<'_>, place: Place) -> Table {
        let mut table = Table { spec, span: place.span.clone(), entries: Vec::new() };
        let mut keys: Vec<_> = raw.iter().collect();
        keys.sort_by_key(|(key, _)| key.span().start);
        for (key, value) in keys {
            match spec.key(key.get_ref()) {
                _ if self.problems.is_full() => break,
                Some(key_spec) => table.entries.extend(self.entry(key_spec, value, &place)),
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
        Some(Entry { key: spec.key, value, span, assumed })
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
