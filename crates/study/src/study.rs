//! A study: variants of a model and the values that its keys take.

use std::path::Path;

use axlebow_model::{Document, Model, Problems, read_bytes};

use crate::keys::STUDY;
use crate::read::Reader;
use crate::{Varied, model_file};

/// Most designs of a study.
pub const MOST_DESIGNS: u32 = 1_000_000;

/// Variants of a model and the values that its keys take.
#[derive(Debug, Clone)]
pub struct Study {
    /// What the study is called.
    pub name: String,
    /// What the reader of the results must know.
    pub note: Option<String>,
    /// The model without changes.
    pub base: Model,
    /// Name of the load case that is run.
    pub case: String,
    /// Variants of the model; at least one.
    pub variants: Vec<Variant>,
    /// Keys that are varied, the last one fastest; at least one.
    pub varied: Vec<Varied>,
    /// Masses of the bare axle at which variants are held against one another, kg.
    pub masses: Vec<f64>,
}

/// The model with some keys changed.
#[derive(Debug, Clone)]
pub struct Variant {
    /// What it is called.
    pub name: String,
    pub(crate) document: Document,
}

/// A design of a study.
#[derive(Debug, Clone, PartialEq)]
pub struct Point {
    /// Place of its variant in [`Study::variants`].
    pub variant: usize,
    /// Values of [`Study::varied`], SI.
    pub values: Vec<f64>,
}

impl Study {
    /// Reads a study file and the model file that it points to.
    ///
    /// Arguments: `bytes`, the study file; `file_name`, for messages; `folder`, in which the study file is.
    ///
    /// # Errors
    /// Every problem of the study file at once, or those of the model file: unknown keys, paths and cases,
    /// values of the wrong kind, empty ranges, more than [`MOST_DESIGNS`], a model that cannot be read.
    pub fn from_bytes(bytes: &[u8], file_name: &str, folder: &Path) -> Result<Study, Problems> {
        let document = read_bytes(bytes, file_name, &STUDY)?;
        let model = model_file::read(&document, folder)?;
        let base = Model::of(&model)?;
        let (root, problems) = (document.root(), document.problems());
        Reader { root, model: &model, base: &base, scratch: model.clone(), problems }.study()
    }

    /// Number of designs: each variant with each combination of varied values.
    pub fn count(&self) -> usize {
        self.variants.len() * self.varied.iter().map(|varied| varied.values.len()).product::<usize>()
    }

    /// The design at a place in the order: variants one after the other, the last key fastest.
    ///
    /// # Panics
    /// If `index` is not below [`count`](Self::count).
    pub fn point(&self, index: usize) -> Point {
        assert!(index < self.count(), "design {index} of {}", self.count());
        let mut rest = index;
        let mut values: Vec<f64> = Vec::with_capacity(self.varied.len());
        for varied in self.varied.iter().rev() {
            values.push(varied.values[rest % varied.values.len()]);
            rest /= varied.values.len();
        }
        values.reverse();
        Point { variant: rest, values }
    }

    /// The designs in order.
    pub fn points(&self) -> impl ExactSizeIterator<Item = Point> {
        (0..self.count()).map(|index| self.point(index))
    }
}
