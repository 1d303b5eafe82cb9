//! A model: an axle with its load cases, as a file gives them.

use axlebow_axle::{Axle, LoadCase, StrengthOptions, standard_cases};
use axlebow_units::UnitSystem;

use super::builder::Builder;
use super::combine::with_combinations;
use super::strength_build::strength_options;
use crate::content::{Assumed, Document};
use crate::faults::Problems;
use crate::keys::MODEL;
use crate::read::read_bytes;

/// An axle with its load cases, as a file gives them.
#[derive(Debug, Clone)]
pub struct Model {
    /// What the axle is called.
    pub name: String,
    /// `trailer-tube` or `drive-housing`.
    pub kind: &'static str,
    /// Whether its numbers are invented for demonstration.
    pub invented: bool,
    /// Keys whose values are typical of such axles and not measured on this one.
    pub typical: Vec<String>,
    /// Hash of everything that the file says and leaves to be assumed, not of how it is laid out.
    pub hash: String,
    /// The axle.
    pub axle: Axle,
    /// The standard load cases, then the file's combinations.
    pub cases: Vec<LoadCase>,
    /// What strength is asked for.
    pub strength: StrengthOptions,
    /// Defaults in use.
    pub assumed: Vec<Assumed>,
    /// How values were read, where that is not plain from the file.
    pub notes: Vec<String>,
    /// Unit system of the file.
    pub system: UnitSystem,
}

impl Model {
    /// Reads a model file.
    ///
    /// # Errors
    /// Every problem at once; see [`read_bytes`](crate::read_bytes) and [`Model::of`].
    pub fn from_bytes(bytes: &[u8], file_name: &str) -> Result<Model, Problems> {
        Model::of(&read_bytes(bytes, file_name, &MODEL)?)
    }

    /// Builds the axle that a document describes.
    ///
    /// # Errors
    /// Every misfit between keys: wall thicker than the radius, seats outboard of the wheels, a side given
    /// twice or not at all, a combination of cases that do not exist.
    pub fn of(document: &Document) -> Result<Model, Problems> {
        let mut builder = Builder::of(document);
        let axle = builder.axle();
        let typical = builder.typical();
        let cases = axle.as_ref().map(|axle| {
            let standard = standard_cases(axle);
            with_combinations(document.root(), standard, &mut builder.problems)
        });
        let (Some(axle), Some(cases), true) = (axle, cases, builder.problems.is_empty()) else {
            return Err(builder.problems);
        };
        let root = document.root();
        Ok(Model {
            name: root.text("name").to_owned(),
            kind: root.word("kind"),
            invented: root.flag("invented"),
            typical,
            hash: document.hash(),
            axle,
            cases,
            strength: strength_options(root.table("strength")),
            assumed: [document.assumed(), &builder.assumed].concat(),
            notes: document.notes(),
            system: document.system(),
        })
    }
}
