//! What a split into causes answers.

use axlebow_axle::Side;
use axlebow_study::{CauseShare, CausesOutcome, Contribution, Subject};

use super::first;
use super::phrases::{angle, is_nothing, percent, plain, way};
use crate::ModelCard;
use crate::number::Numbers;

/// The causes that contribute most to the camber of the first subject, what would remove the largest, and what one over a road
/// is.
pub fn causes_answer(outcomes: &[CausesOutcome], card: &ModelCard) -> Vec<String> {
    let n = Numbers { system: card.system };
    let Some(outcome) = outcomes.first() else { return Vec::new() };
    let (side, camber) = leaning(outcome);
    let ride = outcomes.get(1).and_then(|outcome| {
        let (side, camber) = leaning(outcome);
        split(outcome, side, camber, n)
    });
    let nothing = format!("Nothing leans {}.", subject(outcome));
    let share = split(outcome, side, camber, n).unwrap_or(nothing);
    first([Some(share), remedy(camber, n), ride])
}

/// The wheel of larger camber; the left one of two alike.
fn leaning(outcome: &CausesOutcome) -> (Side, &Contribution) {
    let of = |side| &outcome.wheels.of(side).camber;
    let more = of(Side::Right).total.abs() > of(Side::Left).total.abs() * (1.0 + 1e-9);
    let side = if more { Side::Right } else { Side::Left };
    (side, of(side))
}

/// Shares by falling magnitude.
fn by_size(camber: &Contribution) -> Vec<&CauseShare> {
    let mut shares: Vec<&CauseShare> = camber.shares.iter().collect();
    shares.sort_by(|a, b| b.share.abs().total_cmp(&a.share.abs()));
    shares
}

fn subject(outcome: &CausesOutcome) -> String {
    match &outcome.subject {
        Subject::Standing { case, .. } => format!("in case {case}"),
        Subject::Ride { name, .. } => format!("over {}", plain(name)),
    }
}

fn split(outcome: &CausesOutcome, side: Side, camber: &Contribution, n: Numbers) -> Option<String> {
    if is_nothing(camber.total) {
        return None;
    }
    let what = match outcome.subject {
        Subject::Standing { .. } => {
            format!("the {} wheel's top leans {} {}", side.word(), way(camber.total), angle(camber.total, n))
        }
        Subject::Ride { .. } => {
            format!("camber of the {} wheel swings {}", side.word(), angle(camber.total, n))
        }
    };
    let shares = by_size(camber);
    let largest = shares.first()?;
    let part = |own: &CauseShare| percent(own.share / camber.total);
    let next = shares.get(1).filter(|own| !is_nothing(own.share));
    let next = next.map_or(String::new(), |own| format!(", then {}, {}", own.cause.words(), part(own)));
    let (subject, cause) = (capital(&subject(outcome)), largest.cause.words());
    Some(format!("{subject} {what}; most of it comes from {cause}, {}{next}.", part(largest)))
}

/// What would remove the largest cause.
fn remedy(camber: &Contribution, n: Numbers) -> Option<String> {
    let shares = by_size(camber);
    let largest = shares.first().filter(|own| !is_nothing(own.removing))?;
    let does = if (largest.removing < 0.0) == (camber.total < 0.0) { "takes off" } else { "adds" };
    Some(format!(
        "Removing {} {does} {} (share known within {}): {}.",
        largest.cause.words(),
        angle(largest.removing, n),
        angle(largest.uncertainty, n),
        largest.cause.remedy()
    ))
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or(String::new(), |letter| letter.to_uppercase().chain(letters).collect())
}
