//! A study: variants of a model, the values that its keys take and the roads that it is driven over.

use std::path::Path;
use std::sync::Arc;

use axlebow_model::{Document, Model, Problems, read_bytes};
use axlebow_wall::SeatTable;

use crate::files::Files;
use crate::keys::STUDY;
use crate::read::Reader;
use crate::vary::thinned;
use crate::{Quantity, StudyRide, Varied};

/// Most designs of a study.
pub const MOST_DESIGNS: u32 = 1_000_000;

/// Variants of a model and the values that its keys take.
#[derive(Debug, Clone)]
pub struct Study {
    /// What the study is called.
    pub name: String,
    /// What the reader of the results must know.
    pub note: Option<String>,
    /// What it does.
    pub kind: StudyKind,
    /// The model without changes; side by side, that of the baseline.
    pub base: Model,
    /// Name of the load case that is run.
    pub case: String,
    /// Variants of the model; at least one.
    pub variants: Vec<Variant>,
    /// Keys that are varied, the last one fastest; at least one in a sweep, none side by side.
    pub varied: Vec<Varied>,
    /// Roads that every design is driven over.
    pub rides: Vec<StudyRide>,
    /// Results that tables and pictures show; none where the file does not say.
    pub shown: Vec<&'static Quantity>,
    /// What the designs are ranked by, largest first, if they are.
    pub ranked_by: Option<&'static Quantity>,
    /// Masses of the bare axle at which variants are held against one another, kg.
    pub masses: Vec<f64>,
    /// Whether shells of the walls at seats are interpolated from tables where these reach.
    pub tabled_walls: bool,
    /// Those tables, once it runs.
    pub(crate) seat_tables: Vec<Arc<SeatTable>>,
}

/// What a study does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StudyKind {
    /// Every varied value with every variant.
    Sweep,
    /// Variants held against one of them.
    SideBySide {
        /// Place of that one in [`Study::variants`].
        baseline: usize,
    },
}

impl StudyKind {
    /// Place of the variant that the others are held against, the first in a sweep.
    pub fn baseline(self) -> usize {
        if let StudyKind::SideBySide { baseline } = self { baseline } else { 0 }
    }
}

/// A model with some keys changed.
#[derive(Debug, Clone)]
pub struct Variant {
    /// What it is called.
    pub name: String,
    pub(crate) document: Document,
}

impl Variant {
    /// Whether stiffeners are welded on, so that its reader may come to weld.
    pub(crate) fn is_stiffened(&self) -> bool {
        !self.document.root().tables("stiffener").is_empty()
    }
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
    /// Reads a study file and the model and road files that it points to.
    ///
    /// Arguments: `bytes`, the study file; `file_name`, for messages; `folder`, in which the study file is.
    ///
    /// # Errors
    /// Every problem of the study file at once, or those of a file that it points to: unknown keys, paths, cases
    /// and results, values of the wrong kind, empty ranges, more than [`MOST_DESIGNS`], a file that cannot be
    /// read.
    pub fn from_bytes(bytes: &[u8], file_name: &str, folder: &Path) -> Result<Study, Problems> {
        let document = read_bytes(bytes, file_name, &STUDY)?;
        let files = Files::read(&document, folder)?;
        Reader { root: document.root(), problems: document.problems(), files: &files }.study()
    }

    /// The same study with at most so many values of each varied key, evenly spaced, both ends among them: a quick
    /// look.
    pub fn coarse(mut self, most: usize) -> Study {
        for varied in &mut self.varied {
            varied.values = thinned(&varied.values, most);
        }
        self
    }

    /// Whether it shows or ranks by a result of a kind.
    pub(crate) fn asks_for(&self, is: fn(&Quantity) -> bool) -> bool {
        self.shown.iter().copied().chain(self.ranked_by).any(is)
    }

    /// Whether its designs have a quantity, which those that cost a solution of their own have only where asked for.
    pub(crate) fn has(&self, quantity: &Quantity) -> bool {
        let extra: [fn(&Quantity) -> bool; 2] = [Quantity::is_of_tied, Quantity::is_of_tires];
        extra.into_iter().all(|is| !is(quantity) || self.asks_for(is))
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
