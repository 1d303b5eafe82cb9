//! The tables of answers in the frequency domain.

use axlebow_axle::{RandomOutcome, Resonance, ResponseOutcome, Side};
use axlebow_units::{Kind, show};

use super::notes::{JSON, defaults, warnings};
use crate::ModelCard;
use crate::answer::response_answer;
use crate::number::{Numbers, Shown, fixed, significant};
use crate::page::{Block, Column, Page, Table};
use crate::words::response::{Answered, answered, height_unit, per_height, road_words};

/// Resonances of one result in the table.
const MOST: usize = 4;

/// The largest resonances of each result with the mode nearest to each; over a random road the root mean
/// squares too.
///
/// In the units of `card.system`; camber is positive with the tire's top outward. Wheels that answer
/// alike share their rows.
pub fn response(outcome: &ResponseOutcome, card: &ModelCard) -> Page {
    let n = Numbers { system: card.system };
    let mut page = Page::of_model(card, response_answer(outcome, card));
    page.add(Block::Paragraph(heading(outcome, n)));
    page.extend(resonances(outcome, n));
    page.extend(outcome.random.iter().flat_map(|random| rms_part(outcome, random, n)));
    page.extend(warnings(&outcome.warnings));
    page.extend(defaults(card, JSON));
    page
}

fn heading(outcome: &ResponseOutcome, n: Numbers) -> String {
    let ends = [outcome.frequencies.first(), outcome.frequencies.last()].map(|f| f.copied().unwrap_or(0.0));
    format!(
        "Resonances from {} to {} Hz where {}, per height that the tires feel. Load at rest: left {}, right {}.",
        significant(ends[0], 3),
        significant(ends[1], 3),
        road_words(outcome.input),
        n.full(outcome.load_at_rest.left, Kind::Force),
        n.full(outcome.load_at_rest.right, Kind::Force),
    )
}

fn resonances(outcome: &ResponseOutcome, n: Numbers) -> Vec<Block> {
    let mut table = Table::new([
        Column::words("Result"),
        Column::words(""),
        Column::number("peak at", "Hz"),
        Column::plain("per height of road"),
        Column::plain("nearest mode"),
        Column::number("its own", "Hz"),
    ]);
    let mut left_out = false;
    for answer in answered(outcome) {
        let shown = largest(&answer.transfer.resonances);
        left_out |= shown.len() < answer.transfer.resonances.len();
        for (row, resonance) in shown.iter().enumerate() {
            table.add_row(cells(&answer, resonance, row == 0, n));
        }
        if shown.is_empty() {
            table.add_row([answer.what, answer.whose, "none", "-", "-", "-"]);
        }
    }
    let note = left_out.then(|| Block::note("Smaller resonances are left out; --json has them."));
    [Block::Table(table)].into_iter().chain(note).collect()
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

fn rms_part(outcome: &ResponseOutcome, random: &RandomOutcome, n: Numbers) -> Vec<Block> {
    let speed = show(random.speed, Kind::Speed, n.system);
    let heading = format!("Over {} at {speed}, about the values at rest:", random.name);
    let mut table = Table::new([
        Column::words("Result"),
        Column::words(""),
        Column::plain("rms"),
        Column::number("crossings", "1/s"),
        Column::number("strongest at", "Hz"),
    ])
    .with_caption(heading);
    for answer in answered(outcome) {
        let Some(random) = answer.random else { continue };
        let rms = format!("{} {}", significant(n.scaled(random.rms, answer.shown), 3), n.unit(answer.shown));
        let strongest =
            random.dominant_frequency.map_or("-".to_owned(), |frequency| significant(frequency, 3));
        let crossings = significant(random.crossing_rate, 3);
        table.add_row([answer.what, answer.whose, &rms, &crossings, &strongest]);
    }
    let [left, right] = Side::BOTH
        .map(|side| fixed(random.dynamic_load_coefficient(side, *outcome.load_at_rest.of(side)), 3));
    let load = format!("Dynamic load coefficient (rms over load at rest): left {left}, right {right}.");
    vec![Block::Table(table), Block::Note(load), Block::Note(cups(random, n))]
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
