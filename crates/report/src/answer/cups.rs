//! What a cup count answers.

use axlebow_axle::tread::{Cups, Explanation, SuspectKind};
use axlebow_units::{Kind, UnitSystem, show};

use super::first;
use super::phrases::plain;
use crate::number::fixed;
use crate::words::growth::amplified;

/// The frequency of the cups, the likeliest source, and whether a mode is near.
///
/// `has_model` tells "no mode is near" from "no model was given".
pub fn cups_answer(outcome: &Cups, has_model: bool, system: UnitSystem) -> Vec<String> {
    first([Some(frequency(outcome, system)), Some(source(outcome)), no_mode(outcome, has_model)])
}

fn frequency(outcome: &Cups, system: UnitSystem) -> String {
    let cups = if outcome.count == 1 { "1 cup".to_owned() } else { format!("{} cups", outcome.count) };
    format!(
        "{cups} at {} mean something that shakes the tire {} times a second.",
        show(outcome.speed, Kind::Speed, system),
        fixed(outcome.frequency, 1)
    )
}

fn source(outcome: &Cups) -> String {
    match outcome.explanations.iter().find(|own| own.score > 0.0) {
        Some(own) => named(own) + &grown(own),
        None => "Nothing that is known here shakes it so.".to_owned(),
    }
}

fn named(own: &Explanation) -> String {
    let off = match (100.0 * own.off_by).abs() {
        same if same < 0.05 => "at the same frequency".to_owned(),
        off => format!("{} % {}", fixed(off, 1), if own.off_by > 0.0 { "higher" } else { "lower" }),
    };
    format!(
        "The likeliest source is {}, {off} (score {} of 1).",
        plain(&own.suspect.name),
        fixed(own.score, 2)
    )
}

/// Whether the waves that a source prints go on by themselves.
fn grown(own: &Explanation) -> String {
    let cups = if own.count() == 1 { "1 cup".to_owned() } else { format!("{} cups", own.count()) };
    match own.growth {
        None => String::new(),
        Some(rate) if rate > 0.0 => format!(
            " Once there, a wave of {cups} grows by itself, {} times for each millimeter of tread worn.",
            amplified(rate, 1e-3)
        ),
        Some(_) => format!(" The tires level a wave of {cups}: it lasts only while its source does."),
    }
}

fn no_mode(outcome: &Cups, has_model: bool) -> Option<String> {
    let is_mode = |own: &Explanation| own.suspect.kind == SuspectKind::Mode;
    let text = match has_model {
        true => "No mode of this axle lies within a quarter of that frequency.",
        false => "Give a model file to compare the frequency with the axle's modes.",
    };
    (!outcome.explanations.iter().any(is_mode)).then(|| text.to_owned())
}
