//! The model file that a study points to.

use std::fs::File;
use std::io::Read as _;
use std::path::Path;

use axlebow_model::{Document, LARGEST, MODEL, Problems, likely, read_bytes};

/// Reads the model file that the key `model` of a study names, from the study's folder.
///
/// # Errors
/// A file that cannot be read, as a problem of the study; else the problems of the model file.
pub(crate) fn read(study: &Document, folder: &Path) -> Result<Document, Problems> {
    let named = study.root().text("model");
    let path = folder.join(named);
    let bytes = bytes_of(&path).map_err(|reason| {
        let mut problems = study.problems();
        let message = format!("the model file {named:?} cannot be read: {reason}");
        let hints =
            (Some("a model file, from the study file's folder".to_owned()), likely_file(&path, named));
        problems.push_likely(study.root().span_of("model"), message, hints);
        problems
    })?;
    read_bytes(&bytes, named, &MODEL)
}

/// The bytes of a regular file, one more than a model may have at most.
fn bytes_of(path: &Path) -> Result<Vec<u8>, String> {
    let failed = |error: std::io::Error| error.to_string();
    if !std::fs::metadata(path).map_err(failed)?.is_file() {
        return Err("it is not a file".to_owned());
    }
    let mut bytes = Vec::new();
    let file = File::open(path).map_err(failed)?;
    file.take(LARGEST as u64 + 1).read_to_end(&mut bytes).map_err(failed)?;
    Ok(bytes)
}

/// The file that is named most like this one, of those beside where it should be.
fn likely_file(path: &Path, named: &str) -> Option<String> {
    let wanted = path.file_name()?.to_str()?;
    let entries = std::fs::read_dir(path.parent()?).ok()?;
    let mut names: Vec<String> =
        entries.filter_map(|entry| entry.ok()?.file_name().into_string().ok()).collect();
    names.sort();
    let near = likely(wanted, names.iter().map(String::as_str))?;
    Some(Path::new(named).with_file_name(near).to_string_lossy().into_owned())
}
