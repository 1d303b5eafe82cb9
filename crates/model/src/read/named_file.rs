//! A file that another file points to.

use std::fs::File;
use std::io::{ErrorKind, Read as _};
use std::path::{Path, PathBuf};

use super::given_file::{given_file, missing_folder, names_beside};
use crate::content::{Document, Table};
use crate::faults::{Problems, likely};

/// The file that a key names, with its usual ending where only that is there: `base = "trailer"` is trailer.toml, and of a
/// measured profile `profile = "road"` is road.csv.
///
/// Arguments: the `key` and what it `named`; `folder`, that the name starts from.
pub fn named_path((key, named): (&str, &str), folder: &Path) -> PathBuf {
    given_file(&folder.join(named), if key == "profile" { "csv" } else { "toml" })
}

/// The bytes of the file that a key of a document's table names; one more than `most` at most.
///
/// Arguments: the table and the `key`, which holds the name; `folder`, that the name starts from; `most`, the length in bytes up
/// to which it will be read.
///
/// # Errors
/// A file that is not there or cannot be read, as a problem of the document.
pub fn named_file(
    document: &Document,
    (table, key): (&Table, &str),
    folder: &Path,
    most: usize,
) -> Result<Vec<u8>, Problems> {
    let named = table.text(key);
    let path = named_path((key, named), folder);
    bytes_of(&path, most).map_err(|reason| {
        let mut problems = document.problems();
        let accepted = "a file, named from the folder of the one that names it".to_owned();
        let hints = (Some(accepted), likely_file(&path, named));
        let message = format!("`{key}` names {named:?}, which cannot be read: {reason}");
        problems.push_likely(table.span_of(key), message, hints);
        problems
    })
}

/// The bytes of a regular file, one more than accepted at most.
fn bytes_of(path: &Path, most: usize) -> Result<Vec<u8>, String> {
    let failed = |error: std::io::Error| match (error.kind(), missing_folder(path)) {
        (ErrorKind::NotFound, Some(folder)) => format!("{}/ does not exist", folder.display()),
        (ErrorKind::NotFound, None) => "no such file".to_owned(),
        _ => error.to_string(),
    };
    if !std::fs::metadata(path).map_err(failed)?.is_file() {
        return Err("it is not a file".to_owned());
    }
    let mut bytes = Vec::new();
    let file = File::open(path).map_err(failed)?;
    file.take(most as u64 + 1).read_to_end(&mut bytes).map_err(failed)?;
    Ok(bytes)
}

/// The file that is named most like this one, of those beside where it should be.
fn likely_file(path: &Path, named: &str) -> Option<String> {
    let wanted = path.file_name()?.to_str()?;
    let names = names_beside(path, |_| true)?;
    let near = likely(wanted, names.iter().map(String::as_str))?;
    Some(Path::new(named).with_file_name(near).to_string_lossy().into_owned())
}
