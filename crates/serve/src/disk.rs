//! Model files and typical axles as they were read.

use std::collections::VecDeque;
use std::fs::File;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::io::{self, Read};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};

use axlebow_model::{Document, LARGEST, Problems, TYPICAL, read_model};

use crate::trouble::Trouble;
use crate::values::Edit;

/// Starts that are held for pages that are open.
const HELD: usize = 16;

/// What a page began with.
#[derive(Debug)]
pub(crate) struct Source {
    /// By which a page names its text.
    pub revision: String,
    /// Its file; none of a typical axle.
    pub file: Option<PathBuf>,
    /// What a file made from it is named after.
    pub stem: String,
    /// What the text says.
    pub document: Document,
    /// What remedies and earlier controls have changed in it.
    pub applied: Vec<Edit>,
}

/// The file, and everything that pages began with.
#[derive(Debug)]
pub(crate) struct Shelf {
    file: Option<PathBuf>,
    held: Mutex<VecDeque<Arc<Source>>>,
}

/// The word by which a page asks for the file.
pub(crate) const FILE: &str = "file";

impl Shelf {
    pub fn new(file: Option<PathBuf>) -> Self {
        Shelf { file, held: Mutex::default() }
    }

    /// The file.
    pub fn file(&self) -> Option<&Path> {
        self.file.as_deref()
    }

    /// Reads the file, or takes the typical axle of a name.
    pub fn read(&self, from: &str) -> Result<Arc<Source>, Trouble> {
        let source = Arc::new(match (from, &self.file) {
            (FILE, Some(path)) => from_disk(path)?,
            _ => typical(from)?,
        });
        self.hold(source.clone());
        Ok(source)
    }

    /// The same text with changes, to go on from.
    pub fn with_edits(&self, of: &Source, applied: Vec<Edit>) -> Arc<Source> {
        let mut hasher = DefaultHasher::new();
        (&of.revision, &applied).hash(&mut hasher);
        let source = Arc::new(Source {
            revision: format!("{:016x}", hasher.finish()),
            file: of.file.clone(),
            stem: of.stem.clone(),
            document: of.document.clone(),
            applied,
        });
        self.hold(source.clone());
        source
    }

    fn hold(&self, source: Arc<Source>) {
        let mut held = self.held.lock().unwrap_or_else(PoisonError::into_inner);
        held.retain(|own| own.revision != source.revision);
        held.push_front(source);
        held.truncate(HELD);
    }

    /// What a page began with.
    pub fn held(&self, revision: &str) -> Result<Arc<Source>, Trouble> {
        let held = self.held.lock().unwrap_or_else(PoisonError::into_inner);
        held.iter().find(|own| own.revision == revision).cloned().ok_or(Trouble::Gone)
    }

    /// The revision of the file as it is on the disk now; none where it cannot be read.
    pub fn revision_on_disk(&self) -> Option<String> {
        self.file.as_deref().and_then(|path| bytes(path).ok()).map(|bytes| revision(&bytes))
    }
}

fn from_disk(path: &Path) -> Result<Source, Trouble> {
    let name = path.display().to_string();
    let unread = |error: io::Error| Trouble::Refused(format!("cannot read {name}: {error}"));
    let bytes = bytes(path).map_err(unread)?;
    let stem = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
    Ok(Source { file: Some(path.to_owned()), stem, ..source(&bytes, &name)? })
}

fn typical(name: &str) -> Result<Source, Trouble> {
    let own = TYPICAL.iter().find(|own| own.name == name);
    let own = own.ok_or_else(|| Trouble::Malformed(format!("there is no typical axle `{name}`")))?;
    Ok(Source { stem: own.name.to_owned(), ..source(own.text().as_bytes(), own.name)? })
}

fn source(bytes: &[u8], name: &str) -> Result<Source, Problems> {
    let document = read_model(bytes, name)?;
    Ok(Source { revision: revision(bytes), file: None, stem: String::new(), document, applied: Vec::new() })
}

/// The bytes of a file, stopping just past the longest that is accepted.
fn bytes(path: &Path) -> io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    File::open(path)?.take(LARGEST as u64 + 1).read_to_end(&mut bytes)?;
    Ok(bytes)
}

fn revision(bytes: &[u8]) -> String {
    let mut hasher = DefaultHasher::new();
    bytes.hash(&mut hasher);
    format!("{:016x}", hasher.finish())
}
