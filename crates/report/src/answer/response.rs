//! What a run in the frequency domain answers.

use axlebow_axle::{RandomOutcome, Resonance, ResponseOutcome, Side};
use axlebow_units::{Kind, show};

use super::first;
use super::phrases::{hertz, per_length, percent, plain, size};
use crate::ModelCard;
use crate::number::{Numbers, fixed, significant};
use crate::words::response::road_words;

/// The resonance at which camber answers most; over a random road what camber and load vary by, and the cups.
pub fn response_answer(outcome: &ResponseOutcome, card: &ModelCard) -> Vec<String> {
    let n = Numbers { system: card.system };
    let side = leaning_side(outcome);
    let random = outcome.random.as_ref();
    first([
        Some(resonance(outcome, side, n)),
        random.map(|random| varies(outcome, random, n)),
        random.and_then(cups),
    ])
}

/// The resonance of camber of largest gain.
fn largest(outcome: &ResponseOutcome, side: Side) -> Option<&Resonance> {
    outcome.camber.of(side).resonances.iter().max_by(|a, b| a.gain.total_cmp(&b.gain))
}

/// The side whose camber answers more; the left one of two alike.
fn leaning_side(outcome: &ResponseOutcome) -> Side {
    let [left, right] = Side::BOTH.map(|side| largest(outcome, side).map_or(0.0, |own| own.gain));
    if right > left * (1.0 + 1e-5) { Side::Right } else { Side::Left }
}

fn resonance(outcome: &ResponseOutcome, side: Side, n: Numbers) -> String {
    let road = road_words(outcome.input);
    let Some(own) = largest(outcome, side) else {
        let ends = [outcome.frequencies.first(), outcome.frequencies.last()];
        let [from, to] = ends.map(|end| significant(end.copied().unwrap_or(0.0), 3));
        return format!("Where {road}, camber has no resonance from {from} to {to} Hz.");
    };
    let mode = own.mode.as_ref().map_or(String::new(), |(name, frequency)| {
        format!(", nearest to the mode {name} at {}", hertz(*frequency))
    });
    format!(
        "Where {road}, camber of the {} wheel answers most at {}{mode}: {} of road.",
        side.word(),
        hertz(own.frequency),
        per_length(own.gain, Kind::Angle, n)
    )
}

/// Root mean squares of the wheel that varies more.
fn varies(outcome: &ResponseOutcome, random: &RandomOutcome, n: Numbers) -> String {
    let camber = random.camber.left.rms.max(random.camber.right.rms);
    let coefficient = |side| random.dynamic_load_coefficient(side, *outcome.load_at_rest.of(side));
    let [left, right] = Side::BOTH.map(coefficient);
    let side = if right > left { Side::Right } else { Side::Left };
    format!(
        "Over {} at {} camber varies by {} rms and wheel load by {} rms, {} of the load at rest.",
        plain(&random.name),
        show(random.speed, Kind::Speed, n.system),
        size(camber, Kind::Angle, n),
        size(random.load.of(side).rms, Kind::Force, n),
        percent(left.max(right))
    )
}

fn cups(random: &RandomOutcome) -> Option<String> {
    let side = if random.camber.right.rms > random.camber.left.rms { Side::Right } else { Side::Left };
    let frequency = random.camber.of(side).dominant_frequency?;
    Some(match random.cups(side) {
        Some(cups) => format!(
            "The strongest frequency of camber, {}, would print {} cups per turn.",
            hertz(frequency),
            fixed(cups.per_turn, 1)
        ),
        None => format!(
            "The strongest frequency of camber, {}, is slower than the wheel turns and prints no cups.",
            hertz(frequency)
        ),
    })
}
