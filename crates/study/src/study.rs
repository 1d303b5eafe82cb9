//! A study: variants of a model, the values that its keys take and the roads that it is driven over.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use axlebow_model::{Assumed, Document, Model, Problems, likely, read_bytes};
use axlebow_numerics::thinned;
use axlebow_wall::SeatTable;

use crate::files::Files;
use crate::keys::STUDY;
use crate::names::Named;
use crate::read::Reader;
use crate::{Derived, Limit, Link, Plan, Quantity, SearchOptions, StudyRide, UncertaintyOptions, Varied};

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
    /// Reads a study file and the model and road files that it points to.
    ///
    /// Arguments: `bytes`, the study file; `file_name`, for messages; `folder`, in which the study file is.
    ///
    /// # Errors
    /// Every problem of the study file at once, or those of a file that it points to: unknown keys, paths, cases
    /// and results, values of the wrong kind, empty ranges, a file that cannot be read. How many designs are too many is
    /// for the caller to say; see [`MOST_DESIGNS`].
    pub fn from_bytes(bytes: &[u8], file_name: &str, folder: &Path) -> Result<Study, Problems> {
        let document = read_bytes(bytes, file_name, &STUDY)?;
        let files = Files::read(&document, folder)?;
        Reader { document: &document, root: document.root(), problems: document.problems(), files: &files }
            .study()
    }

    /// The same study with at most so many values of each varied key, evenly spaced, both ends among them, or with about so
    /// many designs of a sample: a quick look.
    pub fn coarse(mut self, most: usize) -> Study {
        match &mut self.together {
            Together::Sampled(plan) => *plan = plan.coarse(most),
            _ => self.varied.iter_mut().for_each(|varied| varied.values = thinned(&varied.values, most)),
        }
        self
    }

    /// Whether it shows, ranks by, limits or derives from a result of a kind.
    pub(crate) fn asks_for(&self, is: fn(&Quantity) -> bool) -> bool {
        let limited = self.limits.iter().map(|limit| &limit.of);
        let searched = self.search.iter().flat_map(|ask| std::iter::once(&ask.goal).chain(&ask.against));
        let named =
            self.shown.iter().chain(&self.ranked_by).chain(limited).chain(searched).map(String::as_str);
        let used =
            self.derived.iter().flat_map(|derived| &derived.uses).filter_map(|(_, named)| match named {
                Named::Result(name, _) => Some(*name),
                _ => None,
            });
        named.chain(used).filter_map(|name| Quantity::named(name).ok()).any(is)
    }

    /// Whether its designs have a quantity, which those that cost a solution of their own have only where asked for.
    pub(crate) fn has(&self, quantity: &Quantity) -> bool {
        let extra: [fn(&Quantity) -> bool; 4] = [
            Quantity::is_of_composite,
            Quantity::is_of_weld,
            Quantity::is_of_tires,
            Quantity::is_of_strength,
        ];
        extra.into_iter().all(|is| !is(quantity) || self.asks_for(is))
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

    /// The name of a result that it has, by how a file or an option writes it.
    ///
    /// # Errors
    /// Why it has none, what is accepted, and the name that was likely meant.
    pub fn result_named(&self, name: &str) -> Result<String, NoResult> {
        result_named(name, (&self.derived, self.rides.is_empty()))
    }

    /// The designs in order.
    pub fn points(&self) -> impl ExactSizeIterator<Item = Point> {
        (0..self.count()).map(|index| self.point(index))
    }
}

/// Why a study has no result of a name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NoResult {
    /// What is wrong.
    pub why: String,
    /// What is accepted.
    pub accepted: String,
    /// The name that was likely meant.
    pub likely: Option<String>,
}

/// The name of a result of a study with some derived results, and with or without rides.
pub(crate) fn result_named(name: &str, (derived, standing): (&[Derived], bool)) -> Result<String, NoResult> {
    if derived.iter().any(|own| own.name == name) {
        return Ok(name.to_owned());
    }
    let all =
        || derived.iter().map(|own| own.name.as_str()).chain(crate::QUANTITIES.iter().map(|own| own.name));
    match Quantity::named(name) {
        Ok(quantity) if quantity.is_of_ride() && standing => Err(NoResult {
            why: format!("{name:?} is a result of a ride, and the study has none"),
            accepted: "a `[[ride]]` table".to_owned(),
            likely: None,
        }),
        Ok(_) => Ok(name.to_owned()),
        Err(_) => Err(NoResult {
            why: format!("no result is named {name:?}"),
            accepted: all().collect::<Vec<_>>().join(", "),
            likely: likely(name, all()),
        }),
    }
}
