//! A cup count in words.

use axlebow_axle::tread::{Cups, Explanation, SuspectKind};
use axlebow_units::{Kind, UnitSystem, show};

use super::flex::WIDTH;
use super::grid::{Grid, paragraph};
use crate::number::fixed;

/// Explanations whose reasons are given.
const REASONS: usize = 3;

/// What a cup count says: the frequency, what a misread of one cup would do, and what may explain it, ranked.
///
/// `has_model` tells "no mode is near" from "no model was given".
pub fn cups(outcome: &Cups, has_model: bool, system: UnitSystem) -> String {
    let hertz = |value: f64| format!("{} Hz", fixed(value, 2));
    let shown = |value, kind| show(value, kind, system);
    let mut text = paragraph(
        &format!(
            "{} cups round a tire of {} rolling radius at {}: {} from cup to cup, {}; the wheel turns at {}.",
            outcome.count,
            shown(outcome.radius, Kind::Length),
            shown(outcome.speed, Kind::Speed),
            shown(outcome.spacing, Kind::Length),
            hertz(outcome.frequency),
            hertz(outcome.wheel_frequency)
        ),
        WIDTH,
        2,
    );
    let misread: Vec<String> = outcome.misread.iter().flatten().map(|value| hertz(*value)).collect();
    let sentence = format!("Had one cup been missed or counted twice, it would be {}.", misread.join(" or "));
    text += &paragraph(&sentence, WIDTH, 2);
    let no_mode = outcome.explanations.iter().all(|one| one.suspect.kind != SuspectKind::Mode);
    if no_mode {
        text += "\n";
        text += match has_model {
            true => "No mode of this axle lies within a quarter of that frequency.\n",
            false => "Give a model file to compare the frequency with the axle's modes.\n",
        };
    }
    text + "\n" + &explanations(&outcome.explanations)
}

/// What may have printed cups, the likeliest first, with reasons.
pub(super) fn explanations(all: &[Explanation]) -> String {
    let heading = ["Possible sources", "frequency, Hz", "off by, %", "cups it would print", "score"];
    let mut grid = Grid::new(1, heading);
    for one in all {
        grid.row([
            one.suspect.name.clone(),
            fixed(one.suspect.frequency, 2),
            format!("{:+.1}", 100.0 * one.off_by),
            fixed(one.cups, 1),
            fixed(one.score, 2),
        ]);
    }
    let reason =
        |one: &Explanation| paragraph(&format!("- {}: {}.", one.suspect.name, one.suspect.why), WIDTH, 2);
    let reasons: String = all.iter().take(REASONS).map(reason).collect();
    let how = "Score: 1 at the same frequency, 0 at the edge of what a misread could be, by how much of it moves the \
               tire face.";
    grid.text() + &reasons + &paragraph(how, WIDTH, 2)
}
