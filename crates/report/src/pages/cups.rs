//! A cup count in words.

use axlebow_axle::tread::{Cups, Explanation};
use axlebow_units::{Kind, UnitSystem, show};

use crate::answer::cups_answer;
use crate::number::fixed;
use crate::page::{Block, Column, Page, Table};
use crate::words::growth::amplified;

/// What is added to how sources are ranked where their waves are known to grow or not.
const GROWN: &str = " Amplification: of the wave of the whole count that it would print, for each millimeter of tread worn at this \
    speed and rated load; sources whose waves the tires level (1 or less) come last, whatever their score.";

/// Explanations whose reasons are given.
const REASONS: usize = 3;

/// What a cup count says: the frequency, what a misread of one cup would do, and what may explain it, ranked.
///
/// `has_model` tells "no mode is near" from "no model was given".
pub fn cups(outcome: &Cups, has_model: bool, system: UnitSystem) -> Page {
    let mut page = Page { answer: cups_answer(outcome, has_model, system), ..Page::default() };
    page.add(Block::Paragraph(reading(outcome, system)));
    let misread: Vec<String> = outcome.misread.iter().flatten().map(|value| hertz(*value)).collect();
    let sentence = format!("Had one cup been missed or counted twice, it would be {}.", misread.join(" or "));
    page.add(Block::Note(sentence));
    page.extend(explanations(&outcome.explanations));
    page
}

fn hertz(value: f64) -> String {
    format!("{} Hz", fixed(value, 2))
}

/// What was counted and what it makes.
fn reading(outcome: &Cups, system: UnitSystem) -> String {
    let shown = |value, kind| show(value, kind, system);
    format!(
        "{} cups round a tire of {} rolling radius at {}: {} from cup to cup, {}; the wheel turns at {}.",
        outcome.count,
        shown(outcome.radius, Kind::Length),
        shown(outcome.speed, Kind::Speed),
        shown(outcome.spacing, Kind::Length),
        hertz(outcome.frequency),
        hertz(outcome.wheel_frequency)
    )
}

/// What may have printed cups, the likeliest first, with reasons.
pub(super) fn explanations(all: &[Explanation]) -> Vec<Block> {
    let is_grown = all.iter().any(|one| one.growth.is_some());
    let growth = is_grown.then(|| Column::plain("amplification per mm"));
    let columns = [
        Column::words("Possible sources"),
        Column::number("frequency", "Hz"),
        Column::number("off by", "%"),
        Column::plain("cups it would print"),
        Column::plain("score"),
    ];
    let mut table = Table::new(columns.into_iter().chain(growth));
    for one in all {
        let growth = is_grown.then(|| one.growth.map_or("-".to_owned(), |rate| amplified(rate, 1e-3)));
        let cells = [
            one.suspect.name.clone(),
            fixed(one.suspect.frequency, 2),
            format!("{:+.1}", 100.0 * one.off_by),
            fixed(one.cups, 1),
            fixed(one.score, 2),
        ];
        table.add_row(cells.into_iter().chain(growth));
    }
    let reason = |one: &Explanation| format!("{}: {}.", one.suspect.name, one.suspect.why);
    let reasons = all.iter().take(REASONS).map(reason).collect();
    let how = "Score: 1 at the same frequency, 0 at the edge of what a misread could be, by how much of it moves the \
               tire face.";
    let grown = if is_grown { GROWN } else { "" };
    vec![Block::Table(table), Block::List(reasons), Block::note(format!("{how}{grown}"))]
}
