//! The table of sensitivities.

use axlebow_axle::CaseReadings;
use axlebow_study::{KeySensitivity, SensitivityOutcome, SlopeBy};

use super::flex::{WIDTH, warnings};
use super::flex_brief::assumed;
use super::grid::{Grid, paragraph};
use crate::ModelCard;
use crate::number::{Numbers, Shown, significant};

/// Keys that a table shows: those of largest effect.
const ROWS: usize = 16;
/// Letters of a key that fit on one line.
const LONGEST_KEY: usize = 36;

/// For each load case what a step of each of the keys of largest effect does to camber, bow and peak stress.
pub fn sensitivities(outcomes: &[SensitivityOutcome], card: &ModelCard) -> String {
    let n = Numbers { system: card.system };
    let invented = &card.invented_line();
    let mut text = paragraph(&card.name, WIDTH, 0) + invented;
    for outcome in outcomes {
        text += &format!("\n{}\n{}{}", heading(outcome, n), rows(outcome, n), notes(outcome));
        text += &warnings(&outcome.warnings);
    }
    let how = "Each line: what one step of that key alone adds, to first order; largest effect on camber first. \
               A negative camber change leans the top inward: what adds a positive number then takes lean \
               off. Camber per mass stands where the key changes the axle's mass. Stress is that at the place of the peak.";
    text + "\n" + &paragraph(how, WIDTH, 2) + &assumed(card)
}

fn heading(outcome: &SensitivityOutcome, n: Numbers) -> String {
    let CaseReadings { camber_change, bow, peak_stress, axle_mass } = outcome.own;
    let side = outcome.own.leaning_side();
    let text = format!(
        "{}: camber change of the {} wheel {}, bow {}, peak stress {} at {}, axle mass {}.",
        outcome.case,
        side.word(),
        n.full(*camber_change.of(side), Shown::Angle),
        n.full(bow, Shown::Deflection),
        n.full(peak_stress, Shown::Stress),
        n.full(outcome.peak_stress_y, Shown::Place),
        n.full(axle_mass, Shown::Mass),
    );
    paragraph(&text, WIDTH, 2)
}

fn rows(outcome: &SensitivityOutcome, n: Numbers) -> String {
    let units = [Shown::Angle, Shown::Deflection, Shown::Stress, Shown::AnglePerMass];
    let names = ["camber", "bow", "stress", "camber\nper mass"];
    let head = names.iter().zip(units).map(|(name, shown)| {
        let floor = if name.contains('\n') { "" } else { "\n" };
        format!("{floor}{name}\n{}", n.unit(shown))
    });
    let words = ["\n\nKey", "\n\nit is", "\n\nstep"].map(str::to_owned);
    let mut grid = Grid::new(1, words.into_iter().chain(head));
    for key in outcome.most_telling(n.system).into_iter().take(ROWS) {
        grid.row(row(key, &outcome.own, n));
    }
    grid.text()
}

fn row(key: &KeySensitivity, own: &CaseReadings, n: Numbers) -> Vec<String> {
    let change = key.change(n.system);
    let mark = if key.by == SlopeBy::Adjoint { "" } else { " *" };
    let value = |value: f64, shown: Shown| {
        if value == 0.0 { "-".to_owned() } else { significant(n.scaled(value, shown), 3) }
    };
    let per_mass = key.camber_per_mass(own).unwrap_or(0.0);
    vec![
        format!("{}{mark}", in_lines(&key.key.path)),
        n.significant(key.key.value, key.key.kind),
        key.step_in_words(n.system).to_owned(),
        value(*change.camber_change.of(own.leaning_side()), Shown::Angle),
        value(change.bow, Shown::Deflection),
        value(change.peak_stress, Shown::Stress),
        value(per_mass, Shown::AnglePerMass),
    ]
}

/// A key's path, its last part on a line of its own where it is long.
fn in_lines(path: &str) -> String {
    match path.rsplit_once('.') {
        Some((table, key)) if path.chars().count() > LONGEST_KEY => format!("{table}.\n  {key}"),
        _ => path.to_owned(),
    }
}

fn notes(outcome: &SensitivityOutcome) -> String {
    let mut text = String::new();
    if let Some(rest) = outcome.keys.len().checked_sub(ROWS).filter(|rest| *rest > 0) {
        text += &format!("{rest} more keys tell less; --json has them.\n");
    }
    if outcome.keys.iter().any(|key| key.by == SlopeBy::Solutions) {
        let why = "* by finite differences of full solutions, because bearings have endplay or places along the axle fall \
                   together or part there; good to about three digits.";
        text += &paragraph(why, WIDTH, 2);
    }
    text
}
