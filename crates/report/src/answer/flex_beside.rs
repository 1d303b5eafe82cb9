//! What a comparison of axles answers.

use axlebow_axle::{FlexOutcome, Side};

use super::phrases::{is_nothing, leans, percent, plain};
use crate::ModelCard;
use crate::number::Numbers;

/// Which axle leans least and which most in the first case, and by how much against the first axle; of the left wheel.
pub fn flex_beside_answer(axles: &[(String, FlexOutcome)], card: &ModelCard) -> Vec<String> {
    let n = Numbers { system: card.system };
    let lean = |(_, outcome): &(String, FlexOutcome)| {
        outcome.cases.first().map(|case| case.wheels.of(Side::Left).camber_change)
    };
    let mut leans_of: Vec<(usize, f64)> =
        axles.iter().enumerate().filter_map(|(place, axle)| Some((place, lean(axle)?))).collect();
    leans_of.sort_by(|a, b| a.1.abs().total_cmp(&b.1.abs()));
    let (Some(least), Some(most)) = (leans_of.first(), leans_of.last()) else { return Vec::new() };
    let own = axles.first().and_then(lean).unwrap_or(0.0);
    let name = |place: usize| format!("({}), {},", place + 1, plain(&axles[place].0));
    let mut answer = Vec::new();
    if least.0 == most.0 || least.1 == most.1 {
        answer.push(format!("The left wheel's top {} on every axle.", leans(own, n)));
        return answer;
    }
    answer.push(format!(
        "Of {} axles {} leans least: the left wheel's top {}{}.",
        leans_of.len(),
        name(least.0),
        leans(least.1, n),
        against_first(*least, own)
    ));
    let most_leans = leans(most.1, n);
    answer.push(format!("{} leans most: its top {most_leans}{}.", name(most.0), against_first(*most, own)));
    answer
}

/// How much more or less than the first axle leans.
fn against_first((place, lean): (usize, f64), own: f64) -> String {
    if place == 0 || is_nothing(own) {
        return String::new();
    }
    let more = lean.abs() / own.abs() - 1.0;
    let words = if more < 0.0 { "less" } else { "more" };
    format!(", {} {words} than (1)", percent(more.abs()))
}
