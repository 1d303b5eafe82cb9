//! Stress categories of ANSI/AISC 360-22, Appendix 3.

use super::LifeCurve;
use crate::StrengthError;

/// 1000 lbf/in² (Pa); NIST SP 811.
const KSI: f64 = 6_894_757.293_168;

/// A stress category of ANSI/AISC 360-22, Appendix 3.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AiscCategory {
    /// A: plain steel.
    A,
    /// B: continuous longitudinal welds.
    B,
    /// B': the same with backing or partial penetration.
    BPrime,
    /// C: short transverse attachments.
    C,
    /// D: attachments of 50 to 100 mm.
    D,
    /// E: attachments longer than 100 mm, ends of cover plates, stitches.
    E,
    /// E': the same on parts thicker than 25 mm (1 in).
    EPrime,
}

impl AiscCategory {
    /// Every category, from the best down.
    pub const ALL: [Self; 7] = [Self::A, Self::B, Self::BPrime, Self::C, Self::D, Self::E, Self::EPrime];

    /// C_f, in 1e8 ksi³ cycles, and F_TH (ksi).
    fn constants(self) -> (f64, f64) {
        match self {
            Self::A => (250.0, 24.0),
            Self::B => (120.0, 16.0),
            Self::BPrime => (61.0, 12.0),
            Self::C => (44.0, 10.0),
            Self::D => (22.0, 7.0),
            Self::E => (11.0, 4.5),
            Self::EPrime => (3.9, 2.6),
        }
    }

    /// F_SR = (C_f/n)^(1/3), at least F_TH.
    ///
    /// The threshold is for ranges that never pass it; where some do, as on a road, count those below it too with
    /// [`AiscCategory::endless_curve`].
    ///
    /// Errors: none for these constants; those of [`LifeCurve`] by type.
    ///
    /// Source: ANSI/AISC 360-22, Appendix 3, Table A-3.1 (from memory).
    pub fn curve(self) -> Result<LifeCurve, StrengthError> {
        self.endless_curve()?.ending_below(self.constants().1 * KSI)
    }

    /// F_SR = (C_f/n)^(1/3) without a threshold.
    pub fn endless_curve(self) -> Result<LifeCurve, StrengthError> {
        let (constant, _) = self.constants();
        LifeCurve::through(constant.cbrt() * KSI, 1e8, 3.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_better_category_lasts_longer_at_every_range() {
        for pair in AiscCategory::ALL.windows(2) {
            let [better, worse] = [pair[0], pair[1]].map(|category| category.curve().unwrap());
            for range in [10e6, 40e6, 100e6, 250e6] {
                assert!(better.cycles(range) >= worse.cycles(range));
            }
        }
    }
}
