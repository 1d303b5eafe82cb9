//! What sensitivities answer.

use axlebow_study::{KeySensitivity, SensitivityOutcome};
use axlebow_units::Kind;

use super::phrases::{angle, is_nothing, leans, several, way};
use crate::ModelCard;
use crate::number::{Numbers, significant};

/// How the wheel leans in the first case, and the keys whose step moves its camber most.
pub fn sensitivities_answer(outcomes: &[SensitivityOutcome], card: &ModelCard) -> Vec<String> {
    let n = Numbers { system: card.system };
    let Some(outcome) = outcomes.first() else { return Vec::new() };
    let side = outcome.own.leaning_side();
    let camber = *outcome.own.camber_change.of(side);
    let lean = format!("The {} wheel's top {} in case {}.", side.word(), leans(camber, n), outcome.case);
    let keys = outcome.most_telling(n.system);
    let moves = |key: &&KeySensitivity| change(key, outcome, n) != 0.0;
    let Some(most) = keys.first().copied().filter(moves) else {
        return vec![lean, "No key moves its camber.".to_owned()];
    };
    let next = keys.get(1).copied().filter(moves);
    let next = next.map(|key| format!("Next is {}: {}.", key.key.path, effect(key, outcome, n)));
    let of = several(keys.len(), "key");
    let first = format!("Of {of} {} has the largest effect: {}.", most.key.path, effect(most, outcome, n));
    [Some(lean), Some(first), next].into_iter().flatten().collect()
}

/// What a step of a key adds to the camber change, rad.
fn change(key: &KeySensitivity, outcome: &SensitivityOutcome, n: Numbers) -> f64 {
    *key.change(n.system).camber_change.of(outcome.own.leaning_side())
}

/// What a step of a key does to the lean, in words.
fn effect(key: &KeySensitivity, outcome: &SensitivityOutcome, n: Numbers) -> String {
    let own = change(key, outcome, n);
    let size = match is_nothing(own) {
        true => format!("{} {}", significant(n.scaled(own.abs(), Kind::Angle), 2), n.unit(Kind::Angle)),
        false => angle(own, n),
    };
    let camber = *outcome.own.camber_change.of(outcome.own.leaning_side());
    let does = match (is_nothing(camber), (own < 0.0) == (camber < 0.0)) {
        (true, _) => format!("leans the top {} by {size}", way(own)),
        (_, true) => format!("adds {size} to the lean"),
        (_, false) => format!("takes {size} off the lean"),
    };
    format!("{} more of it {does}", key.step_in_words(n.system))
}
