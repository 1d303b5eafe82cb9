//! From a tire file to a tread.

use axlebow_axle::tread::{Tread, TreadError};
use axlebow_axle::{Axle, AxleError, Side, Sides, TREAD_SHARE, Wheel};

use crate::content::{Assumed, Document, Table};
use crate::faults::Problems;
use crate::keys::TIRE;
use crate::read::read_bytes;

/// A tire that a file describes, to put on the wheels of any model.
#[derive(Debug, Clone)]
pub struct TireFile {
    /// What it is called.
    pub name: String,
    /// Whether its numbers are invented for demonstration.
    pub invented: bool,
    /// Defaults in use.
    pub assumed: Vec<Assumed>,
    table: Table,
}

impl TireFile {
    /// Reads a tire file.
    ///
    /// # Errors
    /// Every problem at once: those of any file, and an impossible tread.
    pub fn from_bytes(bytes: &[u8], file_name: &str) -> Result<TireFile, Problems> {
        TireFile::of(&read_bytes(bytes, file_name, &TIRE)?)
    }

    /// The tire that a document describes.
    ///
    /// # Errors
    /// An impossible tread.
    pub fn of(document: &Document) -> Result<TireFile, Problems> {
        let (root, mut problems) = (document.root(), document.problems());
        let table = root.table("tread").clone();
        if let Err(error) = tread(&table, 1.0) {
            problems.push(table.span(), error.to_string(), None);
            return Err(problems);
        }
        Ok(TireFile {
            name: root.text("name").to_owned(),
            invented: root.flag("invented"),
            assumed: document.assumed().to_vec(),
            table,
        })
    }

    /// The axle with this tread on all its wheels; where the file does not say how wide the tread is, it is 0.8 of each
    /// tire's section width.
    ///
    /// # Errors
    /// [`AxleError::Value`] for a tread wider than the tire.
    pub fn fitted(&self, axle: &Axle) -> Result<Axle, AxleError> {
        let wheel = |side: Side| -> Result<Wheel, AxleError> {
            let wheel = *axle.wheels.of(side);
            wheel.with_tread(tread(&self.table, wheel.tire().width)?)
        };
        let wheels = Sides { left: wheel(Side::Left)?, right: wheel(Side::Right)? };
        Ok(Axle { wheels, ..axle.clone() })
    }
}

/// The tread of a table on a tire of a section width (m).
pub(crate) fn tread(table: &Table, tire_width: f64) -> Result<Tread, TreadError> {
    Tread {
        width: table.optional_number("width").unwrap_or(TREAD_SHARE * tire_width),
        ribs: table.count("ribs") as usize,
        crown: table.number("crown"),
        depth: table.number("depth"),
        shear_modulus: table.number("shear_modulus"),
        abradability: table.number("abradability"),
        inflation: table.number("inflation"),
        sidewall_share: table.number("sidewall_share"),
        friction: table.number("friction"),
    }
    .checked()
}
