//! A tread by its properties.

use crate::TreadError;
use crate::error::{at_most, not_negative, positive};

/// Most ribs across a tread.
pub const MOST_RIBS: usize = 1000;

/// The tread of one tire: ribs of equal width and equal height across it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tread {
    /// Width from shoulder to shoulder, m.
    pub width: f64,
    /// Number of ribs.
    pub ribs: usize,
    /// How far the shoulders' edges lie below the middle of the tread, m: the crown is a parabola.
    pub crown: f64,
    /// Depth of the tread over its base, m.
    pub depth: f64,
    /// Shear modulus of the tread as it stands on the road, voids and sipes counted, Pa.
    pub shear_modulus: f64,
    /// Volume that a joule of scuff takes off, over that of an ordinary rubber.
    pub abradability: f64,
    /// Inflation pressure, Pa.
    pub inflation: f64,
    /// Friction of tread on road.
    pub friction: f64,
    /// Side force over load that driving asks of a tire to and fro: what wears an upright wheel that runs straight.
    pub usual_side_force: f64,
}

impl Tread {
    /// An ordinary drive or trailer tread of a width (m); all its numbers are from memory.
    ///
    /// # Errors
    /// [`TreadError::Value`] for a width that is not a finite value above zero.
    pub fn usual(width: f64) -> Result<Self, TreadError> {
        Tread {
            width,
            ribs: 5,
            crown: 0.002,
            depth: 0.016,
            shear_modulus: 1.2e6,
            abradability: 1.0,
            inflation: 760e3,
            friction: 0.8,
            usual_side_force: 0.03,
        }
        .checked()
    }

    /// The same tread when every value is in range.
    ///
    /// # Errors
    /// [`TreadError::Value`] names the quantity out of range.
    pub fn checked(self) -> Result<Self, TreadError> {
        positive("tread width", self.width, "m")?;
        if !(2..=MOST_RIBS).contains(&self.ribs) {
            let (thing, value) = ("number of ribs", self.ribs as f64);
            return Err(TreadError::Value { thing, value, unit: "", accepted: "2 to 1000" });
        }
        not_negative("crown", self.crown, "m")?;
        positive("tread depth", self.depth, "m")?;
        positive("tread shear modulus", self.shear_modulus, "Pa")?;
        positive("abradability", self.abradability, "")?;
        positive("inflation", self.inflation, "Pa")?;
        positive("friction", self.friction, "")?;
        at_most("usual side force", (self.usual_side_force, ""), self.friction, "0 to the friction")?;
        not_negative("usual side force", self.usual_side_force, "")?;
        Ok(self)
    }

    /// Width of a rib, m.
    pub fn rib_width(&self) -> f64 {
        self.width / self.ribs as f64
    }

    /// Places of the middles of the ribs, m outboard of the tire's center, the inner shoulder first.
    pub fn rib_places(&self) -> impl Iterator<Item = f64> + use<> {
        let (width, inner) = (self.rib_width(), -0.5 * self.width);
        (0..self.ribs).map(move |rib| inner + (rib as f64 + 0.5) * width)
    }

    /// How far the tread lies below its middle at a place (m outboard of the tire's center), m.
    pub fn crown_at(&self, outboard: f64) -> f64 {
        self.crown * (2.0 * outboard / self.width).powi(2)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ribs_lie_evenly_and_the_crown_falls_to_the_shoulders() {
        let tread = Tread { crown: 0.003, ..Tread::usual(0.25).unwrap() };
        let places: Vec<f64> = tread.rib_places().collect();
        for (place, expected) in places.iter().zip([-0.1, -0.05, 0.0, 0.05, 0.1]) {
            assert!((place - expected).abs() < 1e-15, "{place}");
        }
        assert_eq!(tread.crown_at(0.0), 0.0);
        assert!((tread.crown_at(-0.125) - 0.003).abs() < 1e-15);
    }

    #[test]
    fn what_cannot_be_is_refused() {
        let good = Tread::usual(0.22).unwrap();
        for bad in [
            Tread { width: 0.0, ..good },
            Tread { ribs: 1, ..good },
            Tread { crown: -0.001, ..good },
            Tread { depth: 0.0, ..good },
            Tread { shear_modulus: f64::NAN, ..good },
            Tread { abradability: 0.0, ..good },
            Tread { inflation: -1.0, ..good },
            Tread { friction: 0.0, ..good },
            Tread { usual_side_force: f64::INFINITY, ..good },
        ] {
            assert!(bad.checked().is_err(), "{bad:?}");
        }
    }
}
