//! How many cycles of a stress range a detail lasts.

use crate::StrengthError;
use crate::error::{positive, within};

/// How many cycles of a stress range a detail lasts: straight branches in logarithms, from the greatest range down.
#[derive(Debug, Clone, PartialEq)]
pub struct LifeCurve {
    branches: Vec<Branch>,
}

/// A branch N = K / S^m down to a least range.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Branch {
    /// m.
    pub slope: f64,
    /// K = N S^m.
    pub constant: f64,
    /// Least range of the branch; 0 where it has no end.
    pub least: f64,
}

impl LifeCurve {
    /// One branch without end, through a point.
    ///
    /// - `range`: S (Pa), above 0
    /// - `cycles`: N at that range, above 0
    /// - `slope`: m, 1 to 30
    ///
    /// Errors: [`StrengthError::NotPositive`], [`StrengthError::Range`].
    pub fn through(range: f64, cycles: f64, slope: f64) -> Result<Self, StrengthError> {
        let range = positive("stress range of the detail", range, "Pa")?;
        let cycles = positive("cycles of the detail", cycles, "")?;
        let slope = within("slope of the life curve", slope, "", 1.0..=30.0)?;
        Ok(Self { branches: vec![Branch { slope, constant: cycles * range.powf(slope), least: 0.0 }] })
    }

    /// The same curve with another slope from a number of cycles on.
    ///
    /// - `knee`: cycles at the knee, beyond the knees before
    /// - `slope`: m after it, 1 to 30
    ///
    /// Errors: [`StrengthError::Range`].
    pub fn then(self, slope: f64, knee: f64) -> Result<Self, StrengthError> {
        let slope = within("slope of the life curve", slope, "", 1.0..=30.0)?;
        let mut ended = self.ending_at(knee)?;
        let range = ended.last().least;
        ended.branches.push(Branch { slope, constant: knee * range.powf(slope), least: 0.0 });
        Ok(ended)
    }

    /// The same curve without damage below the range that it reaches at a number of cycles.
    ///
    /// - `cycles`: at the cut-off, beyond the knees before
    ///
    /// Errors: [`StrengthError::Range`].
    pub fn ending_at(mut self, cycles: f64) -> Result<Self, StrengthError> {
        let before = self.branches.iter().rev().nth(1).map_or(f64::MIN_POSITIVE, |b| b.cycles(b.least));
        let cycles = within("cycles at the end of a branch", cycles, "", before..=1e12)?;
        let end = self.branches.len() - 1;
        let Branch { slope, constant, .. } = self.branches[end];
        self.branches[end].least = (constant / cycles).powf(1.0 / slope);
        Ok(self)
    }

    /// The same curve without damage below a range (Pa), above 0, on its last branch.
    ///
    /// Errors: [`StrengthError::NotPositive`], [`StrengthError::Range`].
    pub fn ending_below(self, range: f64) -> Result<Self, StrengthError> {
        let range = positive("threshold of the stress range", range, "Pa")?;
        let cycles = self.last().cycles(range);
        self.ending_at(cycles)
    }

    /// The same curve with its ranges divided by a partial factor γ_Mf, 1 to 10.
    ///
    /// EN 1993-1-9:2005, Table 3.1: 1.00 to 1.35 by consequence and inspection (from memory).
    ///
    /// Errors: [`StrengthError::Range`].
    pub fn divided_by(self, factor: f64) -> Result<Self, StrengthError> {
        self.times(within("partial factor of fatigue", factor, "", 1.0..=10.0)?.recip())
    }

    /// The same curve with its ranges multiplied by a factor, 0.1 to 10; knees and cut-off keep their cycles.
    ///
    /// Errors: [`StrengthError::Range`].
    pub fn times(mut self, factor: f64) -> Result<Self, StrengthError> {
        let factor = within("factor on the ranges of a life curve", factor, "", 0.1..=10.0)?;
        for branch in &mut self.branches {
            branch.constant *= factor.powf(branch.slope);
            branch.least *= factor;
        }
        Ok(self)
    }

    /// Cycles of a stress range (Pa) to a crack; infinite below the cut-off.
    pub fn cycles(&self, range: f64) -> f64 {
        let branch = self.branches.iter().find(|branch| range >= branch.least && range > 0.0);
        branch.map_or(f64::INFINITY, |branch| branch.cycles(range))
    }

    /// Stress range (Pa) that lasts a number of cycles, above 0; from the cut-off on, that of the cut-off.
    pub fn range(&self, cycles: f64) -> f64 {
        let reaches = |branch: &&Branch| branch.least == 0.0 || cycles <= branch.cycles(branch.least);
        let branch = self.branches.iter().find(reaches);
        branch.map_or(self.last().least, |branch| branch.range(cycles))
    }

    /// Slope m of the branch of greatest ranges.
    pub fn first_slope(&self) -> f64 {
        self.branches[0].slope
    }

    /// The branches, from the greatest range down.
    pub(crate) fn branches(&self) -> &[Branch] {
        &self.branches
    }

    /// The branch of least range; a curve always has one.
    fn last(&self) -> &Branch {
        &self.branches[self.branches.len() - 1]
    }
}

impl Branch {
    fn cycles(&self, range: f64) -> f64 {
        self.constant / range.powf(self.slope)
    }

    fn range(&self, cycles: f64) -> f64 {
        (self.constant / cycles).powf(1.0 / self.slope)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    fn cut() -> LifeCurve {
        LifeCurve::through(71e6, 2e6, 3.0).unwrap().then(5.0, 5e6).unwrap().ending_at(1e8).unwrap()
    }

    #[test]
    fn a_range_at_the_cut_off_still_counts_and_just_below_it_does_not() {
        let least = cut().range(1e8);
        assert_relative_eq!(cut().cycles(least), 1e8, max_relative = 1e-9);
        assert_eq!(cut().cycles(least * 0.999_999), f64::INFINITY);
        assert_eq!(cut().range(1e9), least);
        assert_eq!(cut().cycles(0.0), f64::INFINITY);
    }

    #[test]
    fn a_partial_factor_divides_every_range() {
        let factored = cut().divided_by(1.35).unwrap();
        for cycles in [1e4, 2e6, 5e6, 3e7, 1e8, 1e10] {
            assert_relative_eq!(factored.range(cycles), cut().range(cycles) / 1.35, max_relative = 1e-9);
        }
    }

    #[test]
    fn knees_out_of_order_are_refused() {
        assert!(LifeCurve::through(71e6, 2e6, 3.0).unwrap().then(5.0, 5e6).unwrap().ending_at(4e6).is_err());
        assert!(LifeCurve::through(71e6, 2e6, 0.5).is_err());
        assert!(LifeCurve::through(-71e6, 2e6, 3.0).is_err());
        assert!(cut().divided_by(f64::NAN).is_err());
    }
}
