//! The page's axle as a model file of its own.

use std::fs::OpenOptions;
use std::io::{self, ErrorKind, Write};
use std::path::{Path, PathBuf};

use axlebow_model::{MODEL, read_bytes};
use serde::Deserialize;
use serde_json::json;

use crate::choice::{Choice, Chosen};
use crate::server::Live;
use crate::trouble::Trouble;
use crate::values::Edit;

/// How many names are tried before a file is given up.
const MOST_NAMES: usize = 1000;

/// What a page asks to be saved.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct SaveQuestion {
    /// The axle.
    pub axle: Choice,
    /// Whether a file is written here; else its text is handed over alone.
    pub write: bool,
}

/// The text of the file, its name, and where it was written.
pub(crate) fn save(live: &Live, asked: &SaveQuestion) -> Result<String, Trouble> {
    let own = asked.axle.model(live)?;
    let text = text(&own)?;
    let folder = own.source.file.as_deref().and_then(Path::parent).unwrap_or(Path::new(""));
    let written = if asked.write {
        let new = new_file(folder, &own.source.stem, &text);
        Some(new.map_err(|error| Trouble::Refused(format!("cannot write beside the model: {error}")))?)
    } else {
        None
    };
    let name = format!("{}-changed.toml", own.source.stem);
    let written = written.map(|path| path.display().to_string());
    Ok(json!({ "name": name, "text": text, "written": written }).to_string())
}

/// The file's text with the changes in it, comments and layout kept; read again to make sure that it says the same.
fn text(own: &Chosen) -> Result<String, Trouble> {
    let mut document = own.source.document.clone();
    let mut text = document.with_texts(&[])?;
    for edit in &own.changed.edits {
        text = match edit {
            Edit::Set(path, value) => document.with_texts(&[(path.clone(), value.clone())])?,
            Edit::Add(table) => format!("{text}\n{table}"),
        };
        document = read_bytes(text.as_bytes(), "the changed file", &MODEL)?;
    }
    if document.hash() == own.changed.document.hash() { Ok(text) } else { Err(Trouble::Internal) }
}

/// Writes a file under a name that nothing has.
fn new_file(folder: &Path, stem: &str, text: &str) -> io::Result<PathBuf> {
    for number in 1..=MOST_NAMES {
        let name = if number == 1 {
            format!("{stem}-changed.toml")
        } else {
            format!("{stem}-changed-{number}.toml")
        };
        let path = folder.join(name);
        match OpenOptions::new().write(true).create_new(true).open(&path) {
            Ok(mut file) => {
                let written = file.write_all(text.as_bytes()).and_then(|()| file.sync_all());
                return match written {
                    Ok(()) => Ok(path),
                    Err(error) => {
                        // Half a file is none; where it cannot be taken away, the error still says that it was not written.
                        let _ = std::fs::remove_file(&path);
                        Err(error)
                    }
                };
            }
            Err(error) if error.kind() == ErrorKind::AlreadyExists => {}
            Err(error) => return Err(error),
        }
    }
    Err(io::Error::new(ErrorKind::AlreadyExists, "every name that was tried is taken"))
}
