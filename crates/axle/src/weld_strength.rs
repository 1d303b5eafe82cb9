//! The weld of a stiffener against its limits, from the forces with which it ties the stiffener to the axle.

use axlebow_sections::Profile;
use axlebow_strength::{
    AiscBasis, AiscWeld, Check, EnWeld, Fillet, StitchedPart, Stitches, WeldLoad, WeldRun, correlation_factor,
};

use crate::frame::piece_at;
use crate::outcome::CaseOutcome;
use crate::stiffening_outcome::WeldForce;
use crate::strength::{PlacedCheck, StrengthAsk, StrengthRules};
use crate::{Axle, AxleError, Stiffener, WeldPattern};

/// Tensile strength of the weld metal, Pa: electrodes of 70 ksi, the usual ones (common practice, no source).
pub(crate) const ELECTRODE_STRENGTH: f64 = 482.6e6;

/// Checks of every stiffener's weld in one case: its throat where the force peaks, its size, its stitches.
pub(crate) fn weld_checks(
    axle: &Axle,
    case: &CaseOutcome,
    ask: StrengthAsk,
) -> Result<Vec<PlacedCheck>, AxleError> {
    let Some(stiffening) = &case.stiffening else { return Ok(Vec::new()) };
    let mut found = Vec::new();
    for (stiffener, outcome) in axle.stiffeners.iter().zip(&stiffening.stiffeners) {
        let fillet = Fillet::with_leg(stiffener.weld.leg)?;
        let peak = outcome.peak;
        let mut checks = throat_checks(axle, (&fillet, &peak), ask)?;
        checks.extend(size_checks(axle, stiffener, &fillet, ask.rules)?);
        found.extend(checks.into_iter().map(|check| PlacedCheck {
            place: format!("{}, {} foot", stiffener.name, peak.foot),
            y: Some(peak.y),
            check,
        }));
    }
    Ok(found)
}

/// The throat where the force peaks: by AISC at working loads, by EN with the safety factor on the loads.
fn throat_checks(
    axle: &Axle,
    (fillet, peak): (&Fillet, &WeldForce),
    ask: StrengthAsk,
) -> Result<Vec<Check>, AxleError> {
    let load = WeldLoad { along: peak.along, across: peak.across, away: peak.outward };
    if ask.rules == StrengthRules::Aisc {
        let weld = AiscWeld::new(ELECTRODE_STRENGTH, AiscBasis::WorkingLoads)?;
        return Ok(vec![weld.check(fillet, &load)]);
    }
    let material = axle.body.material(piece_at(axle, peak.y).part);
    let Some(yield_strength) = material.yield_strength() else { return Ok(Vec::new()) };
    // Ultimate strength is at least yield strength; the file knows no more.
    let weld = EnWeld::new(yield_strength, correlation_factor(yield_strength))?;
    Ok(weld.directional_checks(fillet, &load.times(ask.safety_factor)).to_vec())
}

fn size_checks(
    axle: &Axle,
    stiffener: &Stiffener,
    fillet: &Fillet,
    rules: StrengthRules,
) -> Result<Vec<Check>, AxleError> {
    let Some(wall) = wall_under(axle, stiffener) else { return Ok(Vec::new()) };
    let (length, stitches) = match stiffener.weld.pattern {
        WeldPattern::Continuous => (stiffener.length(), None),
        WeldPattern::Stitched { length, pitch } => (length, Some(Stitches::new(*fillet, length, pitch)?)),
    };
    let run = WeldRun::new(*fillet, length, wall)?;
    let [[rear, front], _] = stiffener.form.outline().reach();
    let part = StitchedPart { thinner: wall, width: front - rear };
    Ok(match rules {
        StrengthRules::Aisc => {
            let more = stitches.into_iter().flat_map(|stitches| stitches.aisc_checks(&part));
            run.aisc_checks().into_iter().chain(more).collect()
        }
        StrengthRules::En => {
            let more = stitches.into_iter().flat_map(|stitches| stitches.en_checks(&part, true));
            run.en_checks().into_iter().chain(more).collect()
        }
    })
}

/// Wall of the axle under the middle of a stiffener, m.
fn wall_under(axle: &Axle, stiffener: &Stiffener) -> Option<f64> {
    let middle = 0.5 * (stiffener.from + stiffener.to);
    match piece_at(axle, middle).profile_at(middle.abs()) {
        Profile::RoundTube(tube) => Some(tube.wall()),
        Profile::RectangularTube(tube) => Some(tube.wall()),
        Profile::RoundBar(_) => None,
    }
}
