//! What a run of natural modes answers.

use axlebow_axle::{ModeOutcome, ModesOutcome};
use axlebow_units::Kind;

use super::first;
use super::phrases::{hertz, is_nothing, per_length};
use crate::ModelCard;
use crate::number::{Numbers, significant};

/// Above this rotation about its own line for 1 m of displacement, rad, the axle turns and nothing else.
const TURNS_ONLY: f64 = 1e3;

/// The range of the modes, the one that moves camber most, and whether the list is sound.
pub fn modes_answer(outcome: &ModesOutcome, card: &ModelCard) -> Vec<String> {
    let n = Numbers { system: card.system };
    first([Some(range(outcome)), leaning(outcome, n), doubt(outcome)])
}

fn range(outcome: &ModesOutcome) -> String {
    let modes = &outcome.modes;
    match (modes.first(), modes.last()) {
        (Some(low), Some(high)) if modes.len() > 1 => format!(
            "The axle has {} modes from {} ({}) to {} ({}).",
            modes.len(),
            hertz(low.frequency),
            low.name,
            hertz(high.frequency),
            high.name
        ),
        (Some(only), _) => format!("The lowest mode is {} at {}.", only.name, hertz(only.frequency)),
        _ => "No mode was found.".to_owned(),
    }
}

/// The mode of largest camber for its largest displacement.
fn leaning(outcome: &ModesOutcome, n: Numbers) -> Option<String> {
    let camber = |mode: &&ModeOutcome| mode.camber.left.abs().max(mode.camber.right.abs());
    let moves = |mode: &&ModeOutcome| mode.shape.iter().all(|point| point.motion[4].abs() <= TURNS_ONLY);
    let most = outcome.modes.iter().filter(moves).max_by(|a, b| camber(a).total_cmp(&camber(b)))?;
    (!is_nothing(camber(&most))).then(|| {
        format!(
            "For its displacement {} at {} moves camber most, {}, and is damped by {} %.",
            most.name,
            hertz(most.frequency),
            per_length(camber(&most), Kind::Angle, n),
            significant(100.0 * most.damping_ratio, 2)
        )
    })
}

fn doubt(outcome: &ModesOutcome) -> Option<String> {
    if outcome.found_below != outcome.counted_below {
        return Some("The Sturm check does not agree: do not rely on this list.".to_owned());
    }
    let text = "The mesh is not settled: do not rely on the highest modes.";
    (!outcome.mesh.is_settled()).then(|| text.to_owned())
}
