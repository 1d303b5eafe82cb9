//! The model file that a study points to.

use std::path::Path;

use axlebow_model::{Document, LARGEST, MODEL, Problems, named_file, read_bytes};

/// Reads the model file that the key `model` of a study names, from the study's folder.
///
/// # Errors
/// A file that cannot be read, as a problem of the study; else the problems of the model file.
pub(crate) fn read(study: &Document, folder: &Path) -> Result<Document, Problems> {
    let bytes = named_file(study, "model", folder, LARGEST)?;
    read_bytes(&bytes, study.root().text("model"), &MODEL)
}
