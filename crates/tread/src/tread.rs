//! A tread by its properties.

use crate::TreadError;
use crate::error::{at_most, not_negative, positive};

/// Most ribs across a tread.
pub const MOST_RIBS: usize = 1000;

/// Largest share of the sidewalls: a tire that stands on its sidewalls more than on its air is flat (a judgment, no source).
const MOST_SIDEWALL: f64 = 0.5;

/// Width of each shoulder through which a sidewall carries its load, over the tread's: the outer fifth, the outermost of
/// five ribs (assumed).
pub(crate) const SHOULDER: f64 = 0.2;

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
    /// Rated inflation, at which the tire's vertical stiffness and rated load are stated, Pa.
    pub inflation: f64,
    /// Share of load and vertical stiffness that the sidewalls carry through the shoulders at the rated load and inflation.
    pub sidewall_share: f64,
    /// Friction of tread on road.
    pub friction: f64,
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
            sidewall_share: 0.15,
            friction: 0.8,
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
        not_negative("sidewall share", self.sidewall_share, "")?;
        at_most("sidewall share", (self.sidewall_share, ""), MOST_SIDEWALL, "0 to 0.5")?;
        positive("friction", self.friction, "")?;
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

    /// Vertical stiffness of the tire at an inflation (Pa) over that at the rated one: `s + (1 − s) p/p₀` with the share s of
    /// the sidewalls.
    ///
    /// That it grows linearly with inflation from a part that is there without air: J. Y. Wong, Theory of Ground Vehicles,
    /// 3rd ed. 2001, ch. 1 (from memory).
    pub fn stiffness_over_rated(&self, inflation: f64) -> f64 {
        self.sidewall_share + (1.0 - self.sidewall_share) * inflation / self.inflation
    }

    /// Share of each rib's width that lies in a shoulder, the inner shoulder first.
    pub(crate) fn shoulder_shares(&self) -> impl Iterator<Item = f64> + use<> {
        let (edge, half) = ((0.5 - SHOULDER) * self.width, 0.5 * self.rib_width());
        self.rib_places().map(move |place| {
            let outside = |from: f64, to: f64| (to - from.max(edge)).max(0.0);
            let (from, to) = (place - half, place + half);
            (outside(from, to) + outside(-to, -from)) / (2.0 * half)
        })
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

    /// By hand: the outer fifths of four ribs reach over 0.8 of the outer ones; of two ribs over 0.4 of each.
    #[test]
    fn shoulders_are_the_outer_fifths_however_many_ribs_there_are() {
        let shares = |ribs: usize| -> Vec<f64> {
            Tread { ribs, ..Tread::usual(0.25).unwrap() }.shoulder_shares().collect()
        };
        for (ribs, expected) in
            [(2, vec![0.4, 0.4]), (4, vec![0.8, 0.0, 0.0, 0.8]), (5, vec![1.0, 0.0, 0.0, 0.0, 1.0])]
        {
            let off = shares(ribs).iter().zip(&expected).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max);
            assert!(off < 1e-12, "{ribs}: {:?}", shares(ribs));
        }
        assert!((shares(7).iter().sum::<f64>() - 2.8).abs() < 1e-12);
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
            Tread { sidewall_share: 0.6, ..good },
            Tread { sidewall_share: -0.1, ..good },
        ] {
            assert!(bad.checked().is_err(), "{bad:?}");
        }
    }
}
