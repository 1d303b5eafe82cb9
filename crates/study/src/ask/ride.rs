//! The rides of a study: the road and how it is driven.

use std::path::PathBuf;

use axlebow_axle::{Axle, RideBasis};
use axlebow_model::{Document, RoadFile, named_path};

/// A road that every design of a study is driven over.
#[derive(Debug, Clone)]
pub struct StudyRide {
    /// What it is called in results.
    pub name: String,
    /// The road as its file has it, changes made.
    pub road: RoadFile,
    /// Speed, m/s; that of the road if there is none.
    pub speed: Option<f64>,
    /// Whether the axle carries its unladen load instead of the rated one.
    pub unladen: bool,
    /// The motions that the ride is solved in.
    pub basis: RideBasis,
    pub(crate) document: Document,
    /// Where the road file is.
    pub(crate) folder: PathBuf,
}

impl StudyRide {
    /// Load of the axle on the road at rest, N.
    pub(crate) fn axle_load(&self, axle: &Axle) -> f64 {
        if self.unladen { axle.loading.unladen_load } else { axle.loading.rated_load }
    }

    /// The measured profile that its road reads, if it reads one.
    pub(crate) fn profile(&self) -> Option<PathBuf> {
        let named = self.document.root().optional_text("profile")?;
        Some(named_path(("profile", named), &self.folder))
    }
}
