//! The tables of answers in the frequency domain.

use axlebow_axle::{RandomOutcome, Resonance, ResponseOutcome, Side};
use axlebow_units::{Kind, show};

use super::flex::WIDTH;
use super::flex_brief::assumed;
use super::grid::{Grid, paragraph};
use crate::ModelCard;
use crate::number::{Numbers, Shown, fixed, significant};
use crate::response_words::{Answered, answered, height_unit, per_height, road_words};

/// Resonances of one result in the table.
const MOST: usize = 4;

/// The largest resonances of each result with the mode nearest to each; over a random road the root mean
/// squares too.
///
/// Plain text in the units of `card.system`; camber is positive with the tire's top outward. Wheels that answer
/// alike share their rows.
pub fn response(outcome: &ResponseOutcome, card: &ModelCard) -> String {
    let n = Numbers { system: card.system };
    let random = outcome.random.as_ref().map_or(String::new(), |random| rms_part(outcome, random, n));
    format!(
        "{}\n{}{random}{}{}",
        heading(outcome, card, n),
        resonances(outcome, n),
        warnings(outcome),
        assumed(card)
    )
}

fn heading(outcome: &ResponseOutcome, card: &ModelCard, n: Numbers) -> String {
    let invented = &card.invented_line();
    let ends = [outcome.frequencies.first(), outcome.frequencies.last()].map(|f| f.copied().unwrap_or(0.0));
    let text = format!(
        "Resonances from {} to {} Hz where {}, per height that the tires feel. Load at rest: left {}, right {}.",
        significant(ends[0], 3),
        significant(ends[1], 3),
        road_words(outcome.input),
        n.full(outcome.load_at_rest.left, Shown::Force),
        n.full(outcome.load_at_rest.right, Shown::Force),
    );
    paragraph(&card.name, WIDTH, 0) + invented + &paragraph(&text, WIDTH, 2)
}

fn resonances(outcome: &ResponseOutcome, n: Numbers) -> String {
    let heading = ["Result", "", "peak at\nHz", "per height of road\n", "nearest mode\n", "its own\nHz"];
    let mut grid = Grid::new(2, heading);
    let mut left_out = false;
    for answer in answered(outcome) {
        let shown = largest(&answer.transfer.resonances);
        left_out |= shown.len() < answer.transfer.resonances.len();
        for (row, resonance) in shown.iter().enumerate() {
            grid.row(cells(&answer, resonance, row == 0, n));
        }
        if shown.is_empty() {
            grid.row([answer.what, answer.whose, "none", "-", "-", "-"]);
        }
    }
    let note = if left_out { "Smaller resonances are left out; --json has them.\n" } else { "" };
    grid.text() + note
}

fn cells(answer: &Answered, resonance: &Resonance, first: bool, n: Numbers) -> [String; 6] {
    let once = |text: &str| if first { text.to_owned() } else { String::new() };
    let gain = significant(per_height(n, resonance.gain, answer.shown), 3);
    let (mode, own) = match &resonance.mode {
        Some((name, frequency)) => (name.clone(), significant(*frequency, 4)),
        None => ("-".to_owned(), "-".to_owned()),
    };
    let gain = format!("{gain} {}", height_unit(n, answer.shown));
    [once(answer.what), once(answer.whose), significant(resonance.frequency, 4), gain, mode, own]
}

/// The resonances of largest gain, by rising frequency.
fn largest(resonances: &[Resonance]) -> Vec<&Resonance> {
    let mut shown: Vec<&Resonance> = resonances.iter().collect();
    shown.sort_by(|a, b| b.gain.total_cmp(&a.gain));
    shown.truncate(MOST);
    shown.sort_by(|a, b| a.frequency.total_cmp(&b.frequency));
    shown
}

fn rms_part(outcome: &ResponseOutcome, random: &RandomOutcome, n: Numbers) -> String {
    let speed = show(random.speed, Kind::Speed, n.system);
    let heading = format!("Over {} at {speed}, about the values at rest:", random.name);
    let mut grid = Grid::new(2, ["Result", "", "rms", "crossings\na second", "strongest\nat Hz"]);
    for answer in answered(outcome) {
        let Some(random) = answer.random else { continue };
        let rms = format!("{} {}", significant(n.scaled(random.rms, answer.shown), 3), n.unit(answer.shown));
        let strongest =
            random.dominant_frequency.map_or("-".to_owned(), |frequency| significant(frequency, 3));
        let crossings = significant(random.crossing_rate, 3);
        grid.row([answer.what, answer.whose, &rms, &crossings, &strongest]);
    }
    let [left, right] = Side::BOTH
        .map(|side| fixed(random.dynamic_load_coefficient(side, *outcome.load_at_rest.of(side)), 3));
    let load = format!("Dynamic load coefficient (rms over load at rest): left {left}, right {right}.");
    format!(
        "\n{}{}{}{}",
        paragraph(&heading, WIDTH, 2),
        grid.text(),
        paragraph(&load, WIDTH, 2),
        paragraph(&cups(random, n), WIDTH, 2)
    )
}

fn cups(random: &RandomOutcome, n: Numbers) -> String {
    let [left, right] = Side::BOTH.map(|side| match random.cups(side) {
        Some(cups) => {
            format!("{} a turn, {} apart", fixed(cups.per_turn, 1), n.full(cups.spacing, Shown::Place))
        }
        None => "none, it is slower than the wheel turns".to_owned(),
    });
    let text = "Cups that the strongest frequency of camber would print";
    if left == right { format!("{text}: {left}.") } else { format!("{text}: left {left}; right {right}.") }
}

fn warnings(outcome: &ResponseOutcome) -> String {
    let lines = outcome
        .warnings
        .iter()
        .map(|warning| paragraph(&format!("Warning: {}; {}.", warning.text, warning.advice), WIDTH, 2));
    let text: String = lines.collect();
    if text.is_empty() { text } else { format!("\n{text}") }
}
