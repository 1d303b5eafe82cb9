//! A study: variants of a model, the values that its keys take and the roads that it is driven over.

use std::path::PathBuf;
use std::sync::Arc;

use axlebow_model::{Assumed, Document, Model};
use axlebow_numerics::thinned;
use axlebow_wall::SeatTable;

use super::derived::Derived;
use super::limit::Limit;
use super::plan::Plan;
use super::ride::StudyRide;
use super::search_options::SearchOptions;
use super::study_duty::StudyDuty;
use super::uncertainty_options::UncertaintyOptions;
use super::vary::{Link, Varied};

/// Most designs of a study that nobody is asked about.
pub const MOST_DESIGNS: u32 = 10_000_000;

/// Most designs of any study: random samples have a place for each.
pub(crate) const MOST_OF_ALL: usize = 1 << 32;

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
    /// Names of the load cases that strength is checked in; none for all of the model.
    pub strength_cases: Vec<String>,
    /// Variants of the model; at least one.
    pub variants: Vec<Variant>,
    /// Keys that are varied, the last one fastest; at least one in a sweep, none side by side.
    pub varied: Vec<Varied>,
    /// How the varied values come together.
    pub together: Together,
    /// Keys that follow the varied ones.
    pub links: Vec<Link>,
    /// Further results.
    pub derived: Vec<Derived>,
    /// What results may be.
    pub limits: Vec<Limit>,
    /// What a search is asked, if it is one.
    pub search: Option<SearchOptions>,
    /// What an uncertainty study says of each result.
    pub uncertainty: UncertaintyOptions,
    /// Roads that every design is driven over.
    pub rides: Vec<StudyRide>,
    /// The duty that they are checked under for cracks and the life of bearings.
    pub duty: Option<StudyDuty>,
    /// Names of results that tables and pictures show; none where the file does not say.
    pub shown: Vec<String>,
    /// Name of the result that the designs are ranked by, largest first, if they are.
    pub ranked_by: Option<String>,
    /// Masses of the bare axle at which variants are compared with one another, kg.
    pub masses: Vec<f64>,
    /// Model and road files that it points to, and the profiles that these roads read.
    pub files: Vec<PathBuf>,
    /// Whether shells of the walls at seats are interpolated from tables where these reach.
    pub tabled_walls: bool,
    /// Defaults that were used for how designs are sampled and what is said of them.
    pub assumed: Vec<Assumed>,
    /// How values were read, where that is not plain from the files.
    pub notes: Vec<String>,
    /// Those tables, once it runs.
    pub(crate) seat_tables: Vec<Arc<SeatTable>>,
    /// Hash of what the study file says.
    pub(crate) content: String,
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
    /// A sample of designs whose results scatter.
    Uncertainty,
    /// The best design within the limits.
    Search,
}

/// How the varied values of designs come together.
#[derive(Debug, Clone)]
pub enum Together {
    /// Every combination.
    Grid,
    /// First with first, second with second.
    List,
    /// By the shares of a sample.
    Sampled(Plan),
}

impl StudyKind {
    /// Place of the variant that the others are compared with, the first in a sweep.
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
    /// The same study with at most so many values of each varied key, evenly spaced, both ends among them, or with about so
    /// many designs of a sample: a quick look.
    pub fn coarse(mut self, most: usize) -> Study {
        match &mut self.together {
            Together::Sampled(plan) => *plan = plan.coarse(most),
            _ => self.varied.iter_mut().for_each(|varied| varied.values = thinned(&varied.values, most)),
        }
        self
    }

    /// Number of designs: each variant with each combination of varied values, or each point of the sample.
    pub fn count(&self) -> usize {
        self.variants.len().saturating_mul(self.count_of_variant())
    }

    /// Number of designs of each variant.
    pub fn count_of_variant(&self) -> usize {
        // A continuous value of a search makes no combinations.
        let mut counts = self.varied.iter().map(|varied| varied.values.len().max(1));
        match &self.together {
            Together::Grid => counts.fold(1, usize::saturating_mul),
            Together::List => counts.next().unwrap_or(1),
            Together::Sampled(plan) => plan.count(),
        }
    }

    /// The design at a place in the order: variants one after the other, the last key fastest.
    ///
    /// # Panics
    /// If `index` is not below [`count`](Self::count).
    pub fn point(&self, index: usize) -> Point {
        assert!(index < self.count(), "design {index} of {}", self.count());
        let own = self.count_of_variant();
        let (variant, place) = (index / own, index % own);
        let values = match &self.together {
            Together::Grid => self.combination(place),
            Together::List => self.varied.iter().map(|varied| varied.values[place]).collect(),
            Together::Sampled(plan) => {
                let shares = plan.point(place).into_iter();
                self.varied.iter().zip(shares).map(|(varied, share)| varied.at_share(share)).collect()
            }
        };
        Point { variant, values }
    }

    /// The combination of varied values at a place, the last key fastest.
    fn combination(&self, place: usize) -> Vec<f64> {
        let mut rest = place;
        let mut values: Vec<f64> = Vec::with_capacity(self.varied.len());
        for varied in self.varied.iter().rev() {
            match varied.values.len() {
                // A continuous value of a search stands in the middle of its range.
                0 => values.push(varied.at_share(0.5)),
                count => {
                    values.push(varied.values[rest % count]);
                    rest /= count;
                }
            }
        }
        values.reverse();
        values
    }

    /// The designs in order.
    pub fn points(&self) -> impl ExactSizeIterator<Item = Point> {
        (0..self.count()).map(|index| self.point(index))
    }
}
