//! Words of causes of worn tires that answers, pages and pictures share.

use axlebow_study::{Evidence, ExplainOutcome, RankedCause, SizeOf, WearCause, Whereabouts};
use axlebow_units::{Kind, UnitSystem};

use crate::number::{Numbers, fixed, significant};

/// Logarithms of ratios from which readings speak for or against a cause, and strongly so: ratios of 2 and 10.
const SPEAKS: f64 = 0.693;
const STRONGLY: f64 = 2.303;

/// What a cause is.
pub(crate) fn cause(cause: WearCause) -> &'static str {
    match cause {
        WearCause::Normal => "normal wear",
        WearCause::AxleBow => "axle bow near rated load",
        WearCause::Overload => "overload",
        WearCause::ThinWall => "thin wall",
        WearCause::LooseSeat => "loose seats",
        WearCause::LooseBearings => "loose wheel bearings",
        WearCause::Outset => "wheels too far outboard",
        WearCause::Toe => "toe",
        WearCause::Skew => "axle out of square",
        WearCause::BuiltInCamber => "built-in camber",
        WearCause::LowInflation => "low inflation",
        WearCause::HighInflation => "high inflation",
        WearCause::UnequalDuals => "unequal duals",
        WearCause::WornDamper => "worn dampers",
        WearCause::Runout => "runout or imbalance",
    }
}

/// A cause in the words of pages.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct CauseInWords {
    /// What it is.
    pub name: &'static str,
    /// Its probability, of 1.
    pub probability: f64,
    /// How large it would be and where; none where it has no size.
    pub size: Option<String>,
    /// What is done about it.
    pub remedy: &'static str,
}

impl CauseInWords {
    /// The causes of a worn axle, the most probable first, in a system's units.
    pub fn all(outcome: &ExplainOutcome, system: UnitSystem) -> Vec<CauseInWords> {
        let words = |own: &RankedCause| CauseInWords {
            name: cause(own.cause),
            probability: own.posterior,
            size: size(own, Numbers { system }),
            remedy: remedy(own.cause),
        };
        outcome.causes.iter().map(words).collect()
    }
}

/// What to check next in the words of pages, and how to make it.
pub fn next_checks(outcome: &ExplainOutcome) -> Vec<String> {
    outcome.checks.iter().map(|own| format!("{}: {}", own.evidence.words(), how(own.evidence))).collect()
}

/// What is done about a cause.
pub(crate) fn remedy(cause: WearCause) -> &'static str {
    match cause {
        WearCause::Normal => "Nothing to mend: rotate tires and keep pressures.",
        WearCause::AxleBow => {
            "`axlebow remedies` tries stiffeners, housings and wheel positions on this axle; load within the rating."
        }
        WearCause::Overload => "Weigh the axle loaded; load it within its rating.",
        WearCause::ThinWall => {
            "Compare with the maker's drawing; the maker decides whether the axle stays in service."
        }
        WearCause::LooseSeat => {
            "Inspect brackets, bushes and U-bolts; a shop that knows the suspension tightens or replaces them by its maker's torque."
        }
        WearCause::LooseBearings => {
            "Inspect the bearings and set them by the maker's torque procedure to 0.025 to 0.127 mm (TMC RP 618)."
        }
        WearCause::Outset => "Zeroset wheels, or wheels reversed where their maker allows it.",
        WearCause::Toe => {
            "Have the axle maker or an alignment shop correct it; never bend a spindle with heat."
        }
        WearCause::Skew => "Align the axle square to the vehicle.",
        WearCause::BuiltInCamber => {
            "Have the axle maker or an alignment shop correct it; never bend a spindle with heat."
        }
        WearCause::LowInflation => "Inflate to the load's pressure, find the leak.",
        WearCause::HighInflation => "Set the pressure that the tire maker's table gives for the load.",
        WearCause::UnequalDuals => "Match the duals within 3 mm of radius (common practice, no source).",
        WearCause::WornDamper => "Replace the dampers of the axle in pairs.",
        WearCause::Runout => {
            "Measure runout at tire and rim, turn the tire on its rim or replace what is out of round; balance."
        }
    }
}

/// How a check is made.
pub(crate) fn how(evidence: Evidence) -> &'static str {
    match evidence {
        Evidence::Depths(..) => {
            "Measure the tread depth of each rib in three places round the tire; take the mean."
        }
        Evidence::Feathering => {
            "Wheels chocked, stroke the tread by hand across its ribs both ways: sharp edges point where it catches. Wear a glove."
        }
        Evidence::Cups => {
            "Wheel raised on a stand, turn it by hand and count the hollows round each shoulder."
        }
        Evidence::Inflation => "Read every tire's pressure cold, before it has run.",
        Evidence::Circumference => {
            "Wheel raised on a stand, lay a steel tape round the middle rib of both duals at the same pressure."
        }
        Evidence::Endplay => {
            "One wheel end at a time: chock the other wheels, raise the axle and set it on a stand, release this brake, take the wheel \
             off, put a dial indicator on the hub against the spindle's end, push and pull while the hub turns."
        }
        Evidence::Camber => {
            "Empty, on a level floor, brakes released after a short roll: gauge on the hub or rim of both wheels."
        }
        Evidence::Toe => "The same with toe bars or targets, against the axle's own square.",
        Evidence::Skew => "Measure from the king pin or frame center line to both spindle ends (tracking).",
        Evidence::Offset => {
            "Measure from the hub's mounting face to the tire's middle, or read the stamp on the wheel."
        }
        Evidence::Wall => {
            "Read the number stamped or plated on tube or housing and the maker's drawing; or clean a spot and use an ultrasonic \
             thickness gauge beside the seat, away from welds."
        }
        Evidence::Load => "Weigh the loaded axle on a certified scale on several trips.",
        Evidence::Runout => {
            "Wheel raised on a stand, dial indicator or feeler over the middle rib, turn the wheel once by hand."
        }
        Evidence::Damper => {
            "After a run, compare how warm the dampers are by an infrared thermometer; look for oil and loose bushes with the vehicle \
             chocked."
        }
    }
}

/// How large a cause would be, such as "-0.35 ± 0.05 deg at the left wheel end", where it is unsaid for the axle as a whole;
/// none where nothing is measured by it.
pub(crate) fn size(own: &RankedCause, n: Numbers) -> Option<String> {
    let at = |before: &str| match own.place {
        Whereabouts::Axle => String::new(),
        place => format!("{before} {}", place.words()),
    };
    let pair = |kind: Kind| {
        let [mean, deviation] = [own.size.mean, own.size.deviation].map(|value| n.scaled(value, kind));
        format!("{} ± {} {}{}", significant(mean, 2), significant(deviation, 1), n.unit(kind), at(" at"))
    };
    match own.size.of {
        SizeOf::Angle => Some(pair(Kind::Angle)),
        SizeOf::Length => Some(pair(Kind::Length)),
        SizeOf::LogRatio => {
            let mean = own.size.mean.exp();
            let [mean, deviation] = [mean, mean * own.size.deviation].map(|ratio| fixed(100.0 * ratio, 0));
            Some(format!("{mean} ± {deviation} % of {}{}", ratio_of(own.cause), at(",")))
        }
        SizeOf::Nothing => None,
    }
}

fn ratio_of(cause: WearCause) -> &'static str {
    match cause {
        WearCause::ThinWall => "the file's wall",
        WearCause::LooseSeat => "the file's seat stiffness",
        WearCause::LowInflation | WearCause::HighInflation => "the file's pressure",
        _ => "the rated load",
    }
}

/// What a logarithm of a ratio says in words.
pub(crate) fn weight(log_ratio: f64) -> &'static str {
    match log_ratio {
        large if large >= STRONGLY => "strongly for",
        some if some >= SPEAKS => "for",
        little if little > -SPEAKS => "says little",
        some if some > -STRONGLY => "against",
        _ => "strongly against",
    }
}

#[cfg(test)]
mod tests {
    use super::weight;

    #[test]
    fn ratios_of_two_and_ten_are_the_words_bounds() {
        let words = [10.1_f64, 9.9, 2.1, 1.9, 0.52, 0.48, 0.11, 0.09].map(|ratio| weight(ratio.ln()));
        let expected = [
            "strongly for",
            "for",
            "for",
            "says little",
            "says little",
            "against",
            "against",
            "strongly against",
        ];
        assert_eq!(words, expected);
    }
}
