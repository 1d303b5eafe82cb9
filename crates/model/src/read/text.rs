//! Text to document.

use std::sync::Arc;

use toml::de::{DeTable, DeValue};

use super::reader::{Place, Reader};
use crate::content::Document;
use crate::declare::TableSpec;
use crate::faults::Problems;

/// The longest file that is read, bytes.
pub const LARGEST: usize = 1_000_000;

/// The longest file of a measured series that is read, bytes.
pub const LARGEST_SERIES: usize = 50_000_000;

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
    read_partly(text, file_name, spec).map_err(|unread| unread.problems)
}

/// A file that has problems.
#[derive(Debug)]
pub struct Unread {
    /// What is wrong with it.
    pub problems: Problems,
    /// What could be read of it, gaps left open; none where its syntax is at fault. Accessors of its tables without
    /// `optional_` may meet a gap.
    pub partial: Option<Box<Document>>,
}

impl Unread {
    /// The problems with those that `find` finds in what could be read, but for lines that have one already.
    pub fn with(self, find: impl Fn(&Document) -> Option<Problems>) -> Problems {
        let mut problems = self.problems;
        self.partial.and_then(|partial| find(&partial)).iter().for_each(|more| problems.absorb(more));
        problems
    }
}

impl From<Problems> for Unread {
    fn from(problems: Problems) -> Self {
        Unread { problems, partial: None }
    }
}

/// Reads a file as [`read`] does and gives back what could be read of one that has problems.
fn read_partly(text: &str, file_name: &str, spec: &'static TableSpec) -> Result<Document, Unread> {
    if text.len() > LARGEST {
        return Err(too_long(text.len(), file_name, LARGEST).into());
    }
    let source: Arc<str> = Arc::from(text);
    let mut problems = Problems::new(file_name, Arc::clone(&source));
    let (raw, faults) = DeTable::parse_recoverable(text);
    for fault in &faults {
        problems.push(fault.span().unwrap_or_default(), fault.message(), None);
    }
    if faults.is_empty() && raw.get_ref().is_empty() {
        problems.push(0..0, "the file is empty", Some(format!("a {} with {}", spec.name, spec.key_list())));
        return Err(problems.into());
    }
    let empty = problems.clone();
    let mut reader = Reader::new(text, Problems::new(file_name, source));
    reader.whole = faults.is_empty();
    let root = reader.table(spec, raw.get_ref(), Place { path: String::new(), span: 0..0 });
    problems.absorb(&reader.problems);
    let document = Document::new(empty, root, reader.assumed);
    match problems.is_empty() {
        true => Ok(document),
        false => Err(Unread { problems, partial: faults.is_empty().then(|| Box::new(document)) }),
    }
}

/// Reads a file as [`read_bytes`] does and gives back what could be read of one that has problems.
///
/// # Errors
/// Those of [`read_bytes`].
pub fn read_bytes_partly(
    bytes: &[u8],
    file_name: &str,
    spec: &'static TableSpec,
) -> Result<Document, Unread> {
    read_partly(text_of(bytes, file_name, LARGEST)?, file_name, spec)
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

/// What a file says at a key of its top table, if that is text and the file can be read so far.
pub fn top_word(bytes: &[u8], key: &str) -> Option<String> {
    let text = text_of(bytes, "", LARGEST).ok()?;
    let (raw, _) = DeTable::parse_recoverable(text);
    let found = raw.get_ref().iter().find(|(own, _)| own.get_ref() == key)?;
    match found.1.get_ref() {
        DeValue::String(word) => Some(word.as_ref().to_owned()),
        _ => None,
    }
}

fn too_long(length: usize, file_name: &str, most: usize) -> Problems {
    let mut problems = Problems::new(file_name, "".into());
    problems.push(0..0, format!("the file is {length} bytes long"), Some(format!("at most {most} bytes")));
    problems
}
