//! The table of sensitivities.

use axlebow_axle::CaseReadings;
use axlebow_study::{KeySensitivity, SensitivityOutcome, SlopeBy};
use axlebow_units::Kind;

use super::notes::{JSON, defaults, warnings};
use crate::ModelCard;
use crate::answer::sensitivities_answer;
use crate::number::{Numbers, Shown, significant};
use crate::page::{Block, Column, Page, Table};

/// Keys that a table shows: those of largest effect.
const ROWS: usize = 16;

/// For each load case what a step of each of the keys of largest effect does to camber, bow and peak stress.
pub fn sensitivities(outcomes: &[SensitivityOutcome], card: &ModelCard) -> Page {
    let n = Numbers { system: card.system };
    let mut page = Page::of_model(card, sensitivities_answer(outcomes, card));
    for outcome in outcomes {
        page.add(Block::Paragraph(heading(outcome, n)));
        page.add_table(rows(outcome, n));
        page.extend(notes(outcome));
        page.extend(warnings(&outcome.warnings));
    }
    let how = "Each line: what one step of that key alone adds, to first order; largest effect on camber first. \
               A negative camber change leans the top inward: what adds a positive number then takes lean \
               off. Camber per mass stands where the key changes the axle's mass. Stress is that at the place of the peak.";
    page.add(Block::paragraph(how));
    page.extend(defaults(card, JSON));
    page
}

fn heading(outcome: &SensitivityOutcome, n: Numbers) -> String {
    let CaseReadings { camber_change, bow, peak_stress, axle_mass } = outcome.own;
    let side = outcome.own.leaning_side();
    format!(
        "{}: camber change of the {} wheel {}, bow {}, peak stress {} at {}, axle mass {}.",
        outcome.case,
        side.word(),
        n.full(*camber_change.of(side), Kind::Angle),
        n.full(bow, Shown::Deflection),
        n.full(peak_stress, Kind::Stress),
        n.full(outcome.peak_stress_y, Shown::Place),
        n.full(axle_mass, Kind::Mass),
    )
}

fn rows(outcome: &SensitivityOutcome, n: Numbers) -> Table {
    let mut table = Table::new([
        Column::words("Key"),
        Column::plain("it is"),
        Column::plain("step"),
        Column::shown("camber", Kind::Angle, n),
        Column::shown("bow", Shown::Deflection, n),
        Column::shown("stress", Kind::Stress, n),
        Column::shown("camber per mass", Kind::AnglePerMass, n),
    ]);
    for key in outcome.most_telling(n.system).into_iter().take(ROWS) {
        table.add_row(row(key, &outcome.own, n));
    }
    table
}

fn row(key: &KeySensitivity, own: &CaseReadings, n: Numbers) -> Vec<String> {
    let change = key.change(n.system);
    let mark = if key.by == SlopeBy::Adjoint { "" } else { " *" };
    let value = |value: f64, shown: Shown| {
        if value == 0.0 { "-".to_owned() } else { significant(n.scaled(value, shown), 3) }
    };
    let per_mass = key.camber_per_mass(own).unwrap_or(0.0);
    vec![
        format!("{}{mark}", key.key.path),
        n.full(key.key.value, Shown::Free(key.key.kind)),
        key.step_in_words(n.system).to_owned(),
        value(*change.camber_change.of(own.leaning_side()), Shown::Usual(Kind::Angle)),
        value(change.bow, Shown::Deflection),
        value(change.peak_stress, Shown::Usual(Kind::Stress)),
        value(per_mass, Shown::Usual(Kind::AnglePerMass)),
    ]
}

fn notes(outcome: &SensitivityOutcome) -> Vec<Block> {
    let mut notes = Vec::new();
    if let Some(rest) = outcome.keys.len().checked_sub(ROWS).filter(|rest| *rest > 0) {
        notes.push(Block::note(format!("{rest} more keys have less effect; --json has them.")));
    }
    if outcome.keys.iter().any(|key| key.by == SlopeBy::Solutions) {
        let why = "* by finite differences of full solutions, because bearings have endplay or places along the axle fall \
                   together or part there; good to about three digits.";
        notes.push(Block::note(why));
    }
    notes
}
