//! How lives of one detail scatter.

use super::LifeCurve;
use crate::StrengthError;
use crate::error::within;

/// Share of details that crack before the life of a code's curve.
const OF_CODE: f64 = 0.05;
/// Standard normal value below which that share lies.
const NORMAL_OF_CODE: f64 = -1.644_853_627;

/// How lives of one detail under one stress range scatter: their logarithms are normal.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LifeScatter {
    deviation: f64,
}

/// A share of details that have cracked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cracked {
    /// 5 %: that of the code's curve.
    Fifth,
    /// Half: the median.
    Half,
    /// 95 %.
    NinetyFifth,
}

impl Cracked {
    /// Standard normal value below which that share lies.
    fn normal(self) -> f64 {
        match self {
            Self::Fifth => NORMAL_OF_CODE,
            Self::Half => 0.0,
            Self::NinetyFifth => -NORMAL_OF_CODE,
        }
    }

    /// The share.
    pub fn share(self) -> f64 {
        match self {
            Self::Fifth => OF_CODE,
            Self::Half => 0.5,
            Self::NinetyFifth => 1.0 - OF_CODE,
        }
    }
}

impl LifeScatter {
    /// That of welded details, a standard deviation of log10 N of 0.2.
    ///
    /// Source: BS 7608:1993, Table 14, has 0.18 to 0.25 from class to class (from memory).
    pub const USUAL: Self = Self { deviation: 0.2 };

    /// By the standard deviation s of log10 N, 0 to 1.
    ///
    /// Errors: [`StrengthError::Range`].
    pub fn new(deviation: f64) -> Result<Self, StrengthError> {
        Ok(Self { deviation: within("standard deviation of log10 N", deviation, "", 0.0..=1.0)? })
    }

    /// Standard deviation of log10 N.
    pub fn deviation(self) -> f64 {
        self.deviation
    }

    /// The curve that a share of details does not reach, from that of a code, which 5 % do not reach:
    ///
    /// every range times 10^(s (z + 1.645)/m), with the slope m of its first branch; knees and cut-off keep their cycles.
    ///
    /// Errors: those of [`LifeCurve::times`], for a curve of no code.
    ///
    /// Source: EN 1993-1-9:2005, 7.1: a category is the range that 95 % survive (from memory).
    pub fn curve(self, of_code: &LifeCurve, cracked: Cracked) -> Result<LifeCurve, StrengthError> {
        let decades = self.deviation * (cracked.normal() - NORMAL_OF_CODE);
        of_code.clone().times(10f64.powf(decades / of_code.first_slope()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Detail;
    use approx::assert_relative_eq;

    /// By hand: the median life is 10^(1.644 854 · 0.2) = 2.1329 times that of the code, the 95th percentile 4.5493 times.
    #[test]
    fn lives_scatter_about_the_median_on_the_first_branch() {
        let of_code = Detail::named("attachment-tapered").unwrap().curve().unwrap();
        let life = |cracked| LifeScatter::USUAL.curve(&of_code, cracked).unwrap().cycles(150e6);
        let own = of_code.cycles(150e6);
        assert_relative_eq!(life(Cracked::Fifth), own, max_relative = 1e-12);
        assert_relative_eq!(life(Cracked::Half) / own, 2.132_901, max_relative = 1e-5);
        assert_relative_eq!(life(Cracked::NinetyFifth) / own, 4.549_267, max_relative = 1e-5);
    }

    #[test]
    fn knee_and_cut_off_keep_their_cycles() {
        let of_code = Detail::named("attachment-tapered").unwrap().curve().unwrap();
        let median = LifeScatter::USUAL.curve(&of_code, Cracked::Half).unwrap();
        for cycles in [5e6, 1e8] {
            let factor = median.range(cycles) / of_code.range(cycles);
            assert_relative_eq!(factor, 10f64.powf(0.2 * 1.644_853_627 / 3.0), max_relative = 1e-9);
        }
    }

    #[test]
    fn no_scatter_leaves_the_curve_and_a_wild_one_is_refused() {
        let of_code = Detail::named("throat-shear").unwrap().curve().unwrap();
        let none = LifeScatter::new(0.0).unwrap();
        assert_eq!(none.curve(&of_code, Cracked::Half).unwrap(), of_code);
        assert!(LifeScatter::new(-0.1).is_err() && LifeScatter::new(f64::NAN).is_err());
        assert!(Cracked::Fifth.share() < Cracked::Half.share());
    }
}
