//! The steel that a weld's heat has softened.

use crate::StrengthError;
use crate::error::within;

/// Yield strength (Pa) up to which steel is taken to keep its strength beside a weld: that of S460, the highest grade
/// for which EN 1993-1-8:2005 states no reduction (from memory).
const KEEPS_STRENGTH: f64 = 460e6;

/// Share of strength left beside a weld in stronger, heat-treated or cold-worked tube where nothing better is known.
/// Common practice, no source: tempered steel can fall back to about its strength as rolled.
const CAUTIOUS: f64 = 0.60;

/// The steel that a weld's heat has softened, as a share of the strength that it had.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeatAffectedZone {
    factor: f64,
    assumed: bool,
}

impl HeatAffectedZone {
    /// A zone whose share of strength is known, from the axle maker or a procedure test.
    ///
    /// - `factor`: strength beside the weld over that of the tube, 0.1 to 1
    ///
    /// Errors: [`StrengthError::Range`].
    pub fn stated(factor: f64) -> Result<Self, StrengthError> {
        Ok(Self {
            factor: within("share of strength beside the weld", factor, "", 0.1..=1.0)?,
            assumed: false,
        })
    }

    /// A cautious share where nothing is known: 1 up to a yield strength of 460 MPa, 0.60 above.
    ///
    /// - `yield_strength`: of the tube (Pa)
    ///
    /// Source: common practice, no source; the axle maker's data decides.
    pub fn assumed(yield_strength: f64) -> Self {
        Self { factor: if yield_strength <= KEEPS_STRENGTH { 1.0 } else { CAUTIOUS }, assumed: true }
    }

    /// Share of strength left.
    pub fn factor(&self) -> f64 {
        self.factor
    }

    /// What was assumed, in words to list with a result; none where the share was stated.
    pub fn assumption(&self) -> Option<String> {
        self.assumed.then(|| {
            format!(
                "strength beside the weld is {} of the tube's (common practice, no source; ask the axle maker)",
                self.factor
            )
        })
    }

    /// A strength (Pa) beside the weld.
    pub fn weakened(&self, strength: f64) -> f64 {
        self.factor * strength
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_assumed_is_said_and_what_is_stated_is_not() {
        assert!(HeatAffectedZone::stated(0.8).unwrap().assumption().is_none());
        let zone = HeatAffectedZone::assumed(700e6);
        assert_eq!(zone.weakened(700e6), 0.6 * 700e6);
        assert!(zone.assumption().unwrap().contains("0.6 of the tube's"));
        assert_eq!(HeatAffectedZone::assumed(460e6).factor(), 1.0);
    }

    #[test]
    fn shares_out_of_range_are_refused() {
        for bad in [0.0, 0.099, 1.001, f64::NAN] {
            assert!(HeatAffectedZone::stated(bad).is_err());
        }
    }
}
