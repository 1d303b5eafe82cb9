//! How small, large and short a fillet may be.

use axlebow_units::Kind;

use super::Fillet;
use crate::check::ROUNDING;
use crate::error::positive;
use crate::{Check, StrengthError};

const LEAST_LEG: &str = "ANSI/AISC 360-22, Table J2.4, thinner part joined (from memory)";
const EDGE_LEG: &str =
    "ANSI/AISC 360-22, J2.2b: along an edge of 1/4 in or more, 1/16 in less than it (from memory)";
const GREATEST_LEG: &str =
    "common practice, no source: a leg beyond the thickness of the thinner part adds heat and no strength";
const LEAST_THROAT: &str = "EN 1993-1-8:2005, 4.5.2: throat of 3 mm or more (from memory)";
const LEAST_LENGTH_EN: &str = "EN 1993-1-8:2005, 4.5.1: 30 mm and 6 throats or more (from memory)";
const LEAST_LENGTH_AISC: &str = "ANSI/AISC 360-22, J2.2b: 4 legs or more (from memory)";

const INCH: f64 = 0.0254;

/// Least leg for a thickness of the thinner part (m), by steps: to 1/4 in 1/8 in, to 1/2 in 3/16 in, to 3/4 in 1/4 in,
/// above 5/16 in.
///
/// Smaller welds cool too fast beside thick steel. AWS D1.1 takes the thicker part where hydrogen is not controlled.
///
/// Source: ANSI/AISC 360-22, Table J2.4 (from memory).
pub fn least_aisc_leg(thinner: f64) -> f64 {
    const STEPS: [(f64, f64); 3] = [(0.25, 0.125), (0.5, 0.1875), (0.75, 0.25)];
    let step = STEPS.iter().find(|(thickness, _)| thinner <= thickness * INCH * (1.0 + ROUNDING));
    step.map_or(0.3125, |(_, leg)| *leg) * INCH
}

/// Greatest leg along the edge of a part of a thickness (m): the thickness below 1/4 in, else 1/16 in less.
///
/// Source: ANSI/AISC 360-22, J2.2b (from memory).
pub fn greatest_edge_leg(thickness: f64) -> f64 {
    if thickness < 0.25 * INCH { thickness } else { thickness - 0.0625 * INCH }
}

/// One run of a fillet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WeldRun {
    fillet: Fillet,
    length: f64,
    thinner: f64,
    edge: Option<f64>,
}

impl WeldRun {
    /// A run of a fillet.
    ///
    /// - `length`: (m), above 0
    /// - `thinner`: thickness of the thinner part joined (m), above 0
    ///
    /// Errors: [`StrengthError::NotPositive`].
    pub fn new(fillet: Fillet, length: f64, thinner: f64) -> Result<Self, StrengthError> {
        let length = positive("length of the weld", length, "m")?;
        let thinner = positive("thickness of the thinner part", thinner, "m")?;
        Ok(Self { fillet, length, thinner, edge: None })
    }

    /// The same run along the edge of a part of a thickness (m), above 0.
    ///
    /// Errors: [`StrengthError::NotPositive`].
    pub fn along_edge(self, thickness: f64) -> Result<Self, StrengthError> {
        Ok(Self { edge: Some(positive("thickness of the edge", thickness, "m")?), ..self })
    }

    /// Size and length against ANSI/AISC 360-22.
    pub fn aisc_checks(&self) -> Vec<Check> {
        let leg = self.fillet.leg();
        let mut checks = vec![
            Check::at_least("weld leg", Kind::Length, leg, least_aisc_leg(self.thinner))
                .sourced(LEAST_LEG)
                .advising("enlarge the weld, or preheat by a qualified procedure"),
            Check::at_least("weld length", Kind::Length, self.length, 4.0 * leg)
                .sourced(LEAST_LENGTH_AISC)
                .advising("lengthen the weld, or count its leg as a quarter of its length"),
            self.greatest_leg_check(),
        ];
        checks.extend(self.edge.map(|thickness| {
            Check::at_most("weld leg along the edge", Kind::Length, leg, greatest_edge_leg(thickness))
                .sourced(EDGE_LEG)
                .advising(
                    "use a smaller leg, so that the edge is not melted away and the size can be measured",
                )
        }));
        checks
    }

    fn greatest_leg_check(&self) -> Check {
        Check::at_most("greatest weld leg", Kind::Length, self.fillet.leg(), self.thinner)
            .sourced(GREATEST_LEG)
            .advising("use a smaller leg and more length of weld, or a thicker part")
    }

    /// Size and length against EN 1993-1-8:2005.
    pub fn en_checks(&self) -> [Check; 3] {
        let throat = self.fillet.throat();
        [
            Check::at_least("weld throat", Kind::Length, throat, 0.003)
                .sourced(LEAST_THROAT)
                .advising("enlarge the weld"),
            Check::at_least("weld length", Kind::Length, self.length, (6.0 * throat).max(0.030))
                .sourced(LEAST_LENGTH_EN)
                .advising("lengthen the weld: a shorter one may not carry load"),
            self.greatest_leg_check(),
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Verdict;

    #[test]
    fn the_least_leg_steps_just_past_each_thickness() {
        let legs = [0.25, 0.2501, 0.5, 0.5001, 0.75, 0.7501].map(|t| least_aisc_leg(t * INCH));
        assert_eq!(legs, [0.125, 0.1875, 0.1875, 0.25, 0.25, 0.3125].map(|leg| leg * INCH));
    }

    #[test]
    fn a_leg_just_at_the_least_one_passes_however_it_was_rounded() {
        for thickness in [0.25, 0.5, 0.75, 1.0].map(|t| t * INCH) {
            let fillet = Fillet::with_leg(least_aisc_leg(thickness)).unwrap();
            let checks = WeldRun::new(fillet, 4.0 * fillet.leg(), thickness).unwrap().aisc_checks();
            assert!(checks.iter().all(Check::passed), "{thickness}");
        }
    }

    /// A leg of 2 1/2 in on a part of 1/4 in.
    #[test]
    fn a_leg_thicker_than_the_thinner_part_fails_both_codes() {
        let run = |leg: f64| WeldRun::new(Fillet::with_leg(leg * INCH).unwrap(), 1.0, 0.25 * INCH).unwrap();
        let passes = |leg: f64| {
            [run(leg).aisc_checks(), run(leg).en_checks().to_vec()].map(|all| all.iter().all(Check::passed))
        };
        assert_eq!((passes(0.25), passes(0.2501), passes(2.5)), ([true; 2], [false; 2], [false; 2]));
    }

    #[test]
    fn a_thin_edge_may_be_filled_and_a_thick_one_not_quite() {
        assert_eq!(greatest_edge_leg(0.006), 0.006);
        assert!((greatest_edge_leg(0.375 * INCH) / INCH - 0.3125).abs() < 1e-12);
    }

    #[test]
    fn a_short_thin_run_fails_both_codes() {
        let run = WeldRun::new(Fillet::with_leg(0.004).unwrap(), 0.012, 0.0127).unwrap();
        let run = run.along_edge(0.003).unwrap();
        let failed = |checks: &[Check]| {
            let failed = checks.iter().filter(|check| check.verdict() == Verdict::Fails);
            failed.map(|check| check.what.clone()).collect::<Vec<_>>()
        };
        assert_eq!(failed(&run.aisc_checks()), ["weld leg", "weld length", "weld leg along the edge"]);
        assert_eq!(failed(&run.en_checks()), ["weld throat", "weld length"]);
        assert!(WeldRun::new(Fillet::with_leg(0.004).unwrap(), 0.0, 0.01).is_err());
    }
}
