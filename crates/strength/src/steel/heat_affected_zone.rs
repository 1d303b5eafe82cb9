//! The steel that a weld's heat has softened.

use crate::StrengthError;
use crate::error::within;

/// Factors by yield strength (Pa) of the tube: up to each the factor beside it, above the last [`UNCOVERED`].
///
/// Welded joints of hollow sections: 1 to S355 and 0.9 to S460 by EN 1993-1-8:2005, 7.1.1(4), 0.8 to S700 by EN
/// 1993-1-12:2007 on that clause (from memory).
const JOINTS: [(f64, f64); 3] = [(355e6, 1.0), (460e6, 0.9), (700e6, 0.8)];

/// Factor above S700, which no standard that we know of covers: common practice, no source.
const UNCOVERED: f64 = 0.6;

const BASIS: &str =
    "EN 1993-1-8 and 1993-1-12, 7.1.1(4), for welded joints of hollow sections up to S700 (from memory)";

/// The steel that a weld's heat has softened, as a share of the strength that it had.
///
/// What standards say (all from memory but the first). Of a quenched and tempered steel of 550 MPa, H. G. Pisarski & R. E. Dolby, *Welding in the
/// World* 47 (2003) 32-40, found the softest place 45 HV 10 below the plate, about a fifth. AWS D1.1 and EN 1011-2
/// give no factor: they bound the heat input, and EN ISO 15614-1, which EN 1090-2 asks for, has a procedure prove that a
/// welded specimen reaches the plate's ultimate strength. EN 1993-1-8 and 1993-1-12 reduce joints welded to hollow
/// sections by 0.9 and 0.8, which is what is taken here. Cold-drawn tube can lose more: EN 10305-1 has E355 at 520 MPa
/// stress-relieved and at 355 MPa normalized, a factor of 0.68.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeatAffectedZone {
    factor: f64,
    assumed: bool,
}

impl HeatAffectedZone {
    /// A zone whose HAZ strength factor is known, from the axle maker or a procedure test.
    ///
    /// - `factor`: strength beside the weld over that of the tube, 0.1 to 1
    ///
    /// Errors: [`StrengthError::Range`].
    pub fn stated(factor: f64) -> Result<Self, StrengthError> {
        Ok(Self { factor: within("HAZ strength factor", factor, "", 0.1..=1.0)?, assumed: false })
    }

    /// The factor where nothing is known: 1 up to a yield strength of 355 MPa, 0.9 to 460, 0.8 to 700, 0.6 above.
    ///
    /// - `yield_strength`: of the tube (Pa)
    ///
    /// Validity: steel as rolled, or quenched and tempered, welded by a qualified procedure. The axle maker's data decides.
    ///
    /// Source: EN 1993-1-8:2005, 7.1.1(4), and EN 1993-1-12:2007 on it, for joints of hollow sections (from memory).
    pub fn assumed(yield_strength: f64) -> Self {
        let grade = JOINTS.iter().find(|(grade, _)| yield_strength <= *grade);
        Self { factor: grade.map_or(UNCOVERED, |(_, factor)| *factor), assumed: true }
    }

    /// HAZ strength factor: the share of strength left.
    pub fn factor(&self) -> f64 {
        self.factor
    }

    /// What was assumed, in words to list with a result; none where the factor was stated.
    pub fn assumption(&self) -> Option<String> {
        let basis = if self.factor == UNCOVERED { "no standard covers so strong a steel" } else { BASIS };
        self.assumed.then(|| {
            format!(
                "HAZ strength factor {} for steel as rolled, or quenched and tempered, welded by a qualified procedure: {basis}. \
                 Cold-drawn tube can fall to about 0.68 (EN 10305-1, E355 stress-relieved and normalized, from memory): ask \
                 the axle maker and give `haz_strength_factor`",
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
        let zone = HeatAffectedZone::assumed(520e6);
        assert_eq!(zone.weakened(520e6), 0.8 * 520e6);
        let said = zone.assumption().unwrap();
        assert!(said.contains("HAZ strength factor 0.8") && said.contains("EN 1993-1-8"), "{said}");
        let beyond = HeatAffectedZone::assumed(701e6).assumption().unwrap();
        assert!(beyond.contains("0.6") && beyond.contains("no standard"), "{beyond}");
    }

    #[test]
    fn the_assumed_factor_steps_just_past_each_grade() {
        let factors =
            [355e6, 356e6, 460e6, 461e6, 700e6, 701e6].map(|f| HeatAffectedZone::assumed(f).factor());
        assert_eq!(factors, [1.0, 0.9, 0.9, 0.8, 0.8, 0.6]);
    }

    #[test]
    fn factors_out_of_range_are_refused() {
        for bad in [0.0, 0.099, 1.001, f64::NAN] {
            assert!(HeatAffectedZone::stated(bad).is_err());
        }
    }
}
