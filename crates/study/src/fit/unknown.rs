//! What a fit may change: a key of the model on a scale that keeps its bounds.

use std::collections::BTreeSet;

use axlebow_axle::Side;
use axlebow_model::{Bounds, Document, ModelError, ReadQuantity, Reading};
use axlebow_units::Kind;

use super::error::FitError;

/// Natural logarithm of how far a positive unknown may move from its initial value: a thousand times either way.
const REACH: f64 = 6.907_755_278_982_137;

/// What a joule takes off an ordinary rubber; a model that does not give it tells wear without a depth.
pub(crate) const ABRASION: &str = "running.abrasion";

/// The scale on which an unknown is varied.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Scale {
    /// The logarithm of the value: it stays positive, and uncertainties are relative.
    Logarithm,
    /// The share of the way from the lower bound to the upper one.
    Share {
        /// Lower bound.
        low: f64,
        /// Upper bound.
        high: f64,
    },
    /// The value over the size of its initial value.
    Plain {
        /// The size.
        size: f64,
    },
}

impl Scale {
    /// Whether its ends are those of the search only, and not of what is possible.
    pub(crate) fn is_endless(self) -> bool {
        !matches!(self, Scale::Share { .. })
    }
}

/// A key of the model that a fit may change.
#[derive(Debug, Clone, PartialEq)]
pub struct Unknown {
    /// Its path.
    pub path: String,
    /// What it measures.
    pub kind: Kind,
    /// First guess: the value in the model file, SI.
    pub start: f64,
    /// The scale on which it is varied.
    pub scale: Scale,
}

impl Unknown {
    /// The key at a path of a model file, which must give it.
    ///
    /// # Errors
    /// [`FitError::Unknown`] for a path that leads to no number of the file, [`FitError::StartsAtZero`].
    pub fn of(document: &Document, path: &str) -> Result<Self, FitError> {
        let refused =
            |refusal: ModelError| FitError::Unknown { path: path.to_owned(), why: refusal.to_string() };
        let bounds = document.bounds(path).map_err(refused)?;
        let kind = document.kind(path).map_err(refused)?;
        let start = document.number(path).map_err(refused)?;
        let scale = match bounds {
            Bounds::Between(low, high) => Scale::Share { low, high },
            _ if start == 0.0 => return Err(FitError::StartsAtZero { path: path.to_owned() }),
            Bounds::Any => Scale::Plain { size: start.abs() },
            Bounds::Positive | Bounds::NonNegative => Scale::Logarithm,
        };
        Ok(Unknown { path: path.to_owned(), kind, start, scale })
    }

    /// A value on the scale.
    pub fn scaled(&self, value: f64) -> f64 {
        match self.scale {
            Scale::Logarithm => value.ln(),
            Scale::Share { low, high } => (value - low) / (high - low),
            Scale::Plain { size } => value / size,
        }
    }

    /// The value at a place of the scale.
    pub fn value(&self, place: f64) -> f64 {
        match self.scale {
            Scale::Logarithm => place.exp(),
            // The ends exactly: a last digit beyond a bound would be refused.
            Scale::Share { low, high } => (low + place * (high - low)).clamp(low, high),
            Scale::Plain { size } => place * size,
        }
    }

    /// Derivative of the value with respect to the scale.
    pub fn slope(&self, place: f64) -> f64 {
        match self.scale {
            Scale::Logarithm => place.exp(),
            Scale::Share { low, high } => high - low,
            Scale::Plain { size } => size,
        }
    }

    /// Half of an interval that says nothing.
    pub(crate) fn widest(&self) -> f64 {
        if self.scale == Scale::Logarithm { REACH } else { f64::INFINITY }
    }

    /// The ends of the scale.
    pub(crate) fn limits(&self) -> [f64; 2] {
        let start = self.scaled(self.start);
        match self.scale {
            Scale::Logarithm => [start - REACH, start + REACH],
            Scale::Share { .. } => [0.0, 1.0],
            Scale::Plain { .. } => [start - 1e3, start + 1e3],
        }
    }
}

/// The unknowns of a fit that asks for none: of shop readings the wall, the rotational stiffness of each seat, and what camber
/// and toe the wheel ends were made with where camber and toe were read; of removed tires how hard they were driven and what
/// the roads took off.
pub fn usual_unknowns(document: &Document, readings: &[Reading]) -> Vec<String> {
    let is_removal = |own: &&Reading| matches!(own.quantity, ReadQuantity::TreadDepth(_));
    let (removals, taken): (Vec<&Reading>, Vec<&Reading>) = readings.iter().partition(is_removal);
    let of_wear = ["running.severity", ABRASION].map(str::to_owned);
    let of_wear = of_wear.into_iter().filter(|_| !removals.is_empty());
    let only_removals = taken.is_empty() && !removals.is_empty();
    let of_axle = if only_removals { Vec::new() } else { unknowns_of_axle(document, &taken) };
    of_axle.into_iter().chain(of_wear).collect()
}

fn unknowns_of_axle(document: &Document, readings: &[&Reading]) -> Vec<String> {
    let walls = ["tube.wall", "housing.wall"].map(str::to_owned);
    let seats =
        (0..document.root().tables("seat").len()).map(|seat| format!("seat[{seat}].rotational_stiffness"));
    let ends = document.root().tables("wheel_end").len();
    let made = |reading: &&Reading| match reading.quantity {
        // One table is of both ends, two are of the left and the right one.
        ReadQuantity::Camber(side) => Some(("camber", side)),
        ReadQuantity::Toe(side) => Some(("toe", side)),
        _ => None,
    };
    let made = readings
        .iter()
        .filter_map(made)
        .map(|(key, side)| (usize::from(side == Side::Right).min(ends - 1), key));
    let made: BTreeSet<_> = made.collect();
    let made = made.into_iter().map(|(end, key)| format!("wheel_end[{end}].{key}"));
    walls.into_iter().chain(seats).chain(made).filter(|path| Unknown::of(document, path).is_ok()).collect()
}

/// Values at a place of the scales.
pub(crate) fn values(unknowns: &[Unknown], place: &[f64]) -> Vec<f64> {
    unknowns.iter().zip(place).map(|(unknown, place)| unknown.value(*place)).collect()
}
