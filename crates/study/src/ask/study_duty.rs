//! The duty of a study.

use axlebow_axle::{Axle, Duty};
use axlebow_model::{Document, DutyFile, Problems};

/// The duty that designs are checked under for cracks and the life of bearings.
#[derive(Debug, Clone)]
pub struct StudyDuty {
    /// The file of the duty.
    pub file: DutyFile,
    /// Hash of what it says.
    pub(crate) hash: String,
}

impl StudyDuty {
    /// The duty of a document.
    ///
    /// # Errors
    /// As [`DutyFile::of`].
    pub(crate) fn of(document: &Document) -> Result<Self, Problems> {
        Ok(StudyDuty { file: DutyFile::of(document)?, hash: document.hash() })
    }

    /// What it does to an axle.
    ///
    /// # Errors
    /// As [`DutyFile::duty`], in words.
    pub(crate) fn on(&self, axle: &Axle) -> Result<Duty, String> {
        self.file.duty(axle).map_err(|error| format!("duty {}: {error}", self.file.name))
    }
}
