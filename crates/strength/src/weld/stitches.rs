//! A fillet laid in stitches.

use axlebow_units::Kind;

use super::Fillet;
use crate::error::{positive, within};
use crate::{Check, StrengthError};

const SEGMENT: &str = "ANSI/AISC 360-22, J2.2b: 4 legs and 1 1/2 in (38 mm) or more (from memory)";
const SPACING: &str = "ANSI/AISC 360-22, D4 with J3 for parts in contact: 24 thicknesses and 12 in (300 mm) at most, \
     painted or not liable to rust (from memory)";
const GAP_TENSION: &str = "EN 1993-1-8:2005, 4.3.2 and Fig. 4.1: gap of 16 thicknesses and 200 mm at most in tension \
     (from memory)";
const GAP_COMPRESSION: &str = "EN 1993-1-8:2005, 4.3.2 and Fig. 4.1: gap of 12 thicknesses, a quarter of the width \
     and 200 mm at most in compression or shear (from memory)";
const END: &str = "EN 1993-1-8:2005, 4.3.2 and Fig. 4.1: end stitch of 3/4 of the narrower width or more (from \
     memory)";
const LENGTH: &str = "EN 1993-1-8:2005, 4.5.1: 30 mm and 6 throats or more (from memory)";

/// A fillet laid in equal stitches; EN 1993-1-8 rules them out where the place can rust.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stitches {
    fillet: Fillet,
    length: f64,
    pitch: f64,
    end_length: f64,
}

/// What stitches join.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StitchedPart {
    /// Thickness of the thinner part (m).
    pub thinner: f64,
    /// Width of the narrower part (m).
    pub width: f64,
}

impl Stitches {
    /// Equal stitches, those at the ends as long as the others.
    ///
    /// - `length`: of one stitch (m), above 0
    /// - `pitch`: from the start of one to that of the next (m), at least the length
    ///
    /// Errors: [`StrengthError::NotPositive`], [`StrengthError::Range`].
    pub fn new(fillet: Fillet, length: f64, pitch: f64) -> Result<Self, StrengthError> {
        let length = positive("length of a stitch", length, "m")?;
        let pitch = within("pitch of the stitches", pitch, "m", length..=1e3)?;
        Ok(Self { fillet, length, pitch, end_length: length })
    }

    /// The same stitches with longer ones (m) at the ends, where the load peaks.
    ///
    /// Errors: [`StrengthError::NotPositive`].
    pub fn with_ends(self, end_length: f64) -> Result<Self, StrengthError> {
        Ok(Self { end_length: positive("length of an end stitch", end_length, "m")?, ..self })
    }

    /// How many times the load per length of a continuous weld a stitch carries: pitch over length.
    pub fn load_factor(&self) -> f64 {
        self.pitch / self.length
    }

    /// Clear gap between two stitches (m).
    pub fn gap(&self) -> f64 {
        self.pitch - self.length
    }

    /// Stitch and gap against ANSI/AISC 360-22.
    pub fn aisc_checks(&self, part: &StitchedPart) -> [Check; 2] {
        let least = (4.0 * self.fillet.leg()).max(0.038);
        let most = (24.0 * part.thinner).min(0.300);
        [
            Check::at_least("stitch length", Kind::Length, self.length, least)
                .sourced(SEGMENT)
                .advising("lengthen the stitches"),
            Check::at_most("stitch spacing", Kind::Length, self.pitch, most)
                .sourced(SPACING)
                .advising("bring the stitches closer"),
        ]
    }

    /// Stitch, ends and gap against EN 1993-1-8:2005; the gap by the rule for compression or shear where
    /// `compressed`, else by that for tension.
    pub fn en_checks(&self, part: &StitchedPart, compressed: bool) -> [Check; 3] {
        let (most, source) = if compressed {
            ((12.0 * part.thinner).min(0.25 * part.width).min(0.200), GAP_COMPRESSION)
        } else {
            ((16.0 * part.thinner).min(0.200), GAP_TENSION)
        };
        let least = (6.0 * self.fillet.throat()).max(0.030);
        [
            Check::at_least("stitch length", Kind::Length, self.length, least)
                .sourced(LENGTH)
                .advising("lengthen the stitches"),
            Check::at_least("end stitch length", Kind::Length, self.end_length, 0.75 * part.width)
                .sourced(END)
                .advising("lengthen the stitches at the ends"),
            Check::at_most("gap between stitches", Kind::Length, self.gap(), most)
                .sourced(source)
                .advising("bring the stitches closer, or weld all along"),
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Verdict;

    fn stitches(length: f64, pitch: f64) -> Stitches {
        Stitches::new(Fillet::with_leg(0.006).unwrap(), length, pitch).unwrap()
    }

    const ANGLE: StitchedPart = StitchedPart { thinner: 0.0095, width: 0.0762 };

    #[test]
    fn fifty_on_a_hundred_and_fifty_carries_three_times_the_load() {
        let stitches = stitches(0.050, 0.150);
        assert!((stitches.load_factor() - 3.0).abs() < 1e-12);
        assert!(stitches.aisc_checks(&ANGLE).iter().all(|check| check.verdict() == Verdict::Passes));
    }

    #[test]
    fn compression_allows_less_of_a_gap_and_ends_want_more_weld() {
        let verdicts = |compressed| stitches(0.050, 0.150).en_checks(&ANGLE, compressed).map(|c| c.verdict());
        assert_eq!(verdicts(false), [Verdict::Passes, Verdict::Fails, Verdict::Passes]);
        assert_eq!(verdicts(true), [Verdict::Passes, Verdict::Fails, Verdict::Fails]);
        let ends = stitches(0.050, 0.150).with_ends(0.060).unwrap();
        assert_eq!(ends.en_checks(&ANGLE, false)[1].verdict(), Verdict::Passes);
    }

    #[test]
    fn stitches_that_overlap_are_refused() {
        let fillet = Fillet::with_leg(0.006).unwrap();
        assert!(Stitches::new(fillet, 0.05, 0.05).is_ok());
        assert!(Stitches::new(fillet, 0.05, 0.049).is_err());
        assert!(Stitches::new(fillet, 0.05, f64::NAN).is_err());
    }
}
