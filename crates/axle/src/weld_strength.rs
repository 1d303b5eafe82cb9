//! The weld of a stiffener against its limits, from the forces with which it ties the stiffener to the axle.

use axlebow_sections::{Material, Profile};
use axlebow_strength::{
    AiscBasis, AiscWeld, BaseMetal, Check, EnWeld, Fillet, StitchedPart, Stitches, WeldLoad, WeldRun,
    correlation_factor,
};

use crate::frame::piece_at;
use crate::outcome::CaseOutcome;
use crate::stiffening_outcome::WeldForce;
use crate::strength::{PlacedCheck, StrengthAsk, StrengthRules};
use crate::{Axle, AxleError, Stiffener, WeldPattern};

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
        let mut checks = throat_checks(axle, stiffener, (&fillet, &peak), ask)?;
        checks.extend(size_checks(axle, stiffener, &fillet, ask.rules)?);
        found.extend(checks.into_iter().map(|check| PlacedCheck {
            place: format!("{}, {} foot", stiffener.name, peak.foot),
            y: Some(peak.y),
            check,
        }));
    }
    Ok(found)
}

/// The throat where the force peaks, and by AISC the wall beside it: by AISC at working loads, by EN with the safety
/// factor on the loads.
fn throat_checks(
    axle: &Axle,
    stiffener: &Stiffener,
    (fillet, peak): (&Fillet, &WeldForce),
    ask: StrengthAsk,
) -> Result<Vec<Check>, AxleError> {
    let load = WeldLoad { along: peak.along, across: peak.across, away: peak.outward };
    let material = axle.body.material(piece_at(axle, peak.y).part);
    if ask.rules == StrengthRules::Aisc {
        let weld = AiscWeld::new(ask.electrode_strength, AiscBasis::WorkingLoads)?;
        let mut checks = vec![weld.check(fillet, &load)];
        if let Some(wall) = wall_beside(material, wall_under(axle, peak.y), ask)? {
            checks.extend(weld.base_metal_checks(&wall, &load));
        }
        return Ok(checks);
    }
    let known = [material, &stiffener.material].into_iter().filter_map(strengths);
    let weaker = known.min_by(|a, b| a[1].total_cmp(&b[1]));
    let Some([yield_strength, ultimate_strength]) = weaker else { return Ok(Vec::new()) };
    let weld = EnWeld::new(ultimate_strength, correlation_factor(yield_strength))?;
    Ok(weld.directional_checks(fillet, &load.times(ask.safety_factor)).to_vec())
}

/// Yield and ultimate strength, Pa; the latter is at least the former, where the file knows no more.
fn strengths(material: &Material) -> Option<[f64; 2]> {
    let yield_strength = material.yield_strength()?;
    Some([yield_strength, material.ultimate_strength().unwrap_or(yield_strength)])
}

/// The wall of the axle beside a weld, as its heat leaves it.
fn wall_beside(
    material: &Material,
    thickness: Option<f64>,
    ask: StrengthAsk,
) -> Result<Option<BaseMetal>, AxleError> {
    let (Some(thickness), Some([yielding, ultimate])) = (thickness, strengths(material)) else {
        return Ok(None);
    };
    let zone = ask.beside_weld(yielding)?;
    Ok(Some(BaseMetal::new(thickness, zone.weakened(yielding), zone.weakened(ultimate))?))
}

fn size_checks(
    axle: &Axle,
    stiffener: &Stiffener,
    fillet: &Fillet,
    rules: StrengthRules,
) -> Result<Vec<Check>, AxleError> {
    let middle = 0.5 * (stiffener.from + stiffener.to);
    let Some(wall) = wall_under(axle, middle) else { return Ok(Vec::new()) };
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

/// Wall of the axle at a position, m.
fn wall_under(axle: &Axle, y: f64) -> Option<f64> {
    match piece_at(axle, y).profile_at(y.abs()) {
        Profile::RoundTube(tube) => Some(tube.wall()),
        Profile::RectangularTube(tube) => Some(tube.wall()),
        Profile::RoundBar(_) => None,
    }
}
