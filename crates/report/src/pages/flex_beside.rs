//! Several axles side by side under one load case.

use axlebow_axle::{FlexOutcome, Side, Warning};
use axlebow_units::Kind;

use super::notes::{CAMBER_SIGN, warnings};
use crate::ModelCard;
use crate::answer::flex_beside_answer;
use crate::number::{Numbers, Shown, fixed};
use crate::page::{Block, Column, Page, Table};

/// The first case of each outcome, one axle a column: masses, camber change of both wheels with its parts, bow
/// and stress.
///
/// - `axles`: name and outcome; the first is the one that the others are compared with
pub fn flex_beside(axles: &[(String, FlexOutcome)], card: &ModelCard) -> Page {
    let case = axles.first().and_then(|(_, outcome)| outcome.cases.first());
    let title = case.map_or_else(String::new, |case| format!("CASE {}: {}", case.name, case.description));
    let mut page = Page::titled(title, card, flex_beside_answer(axles, card));
    let names = axles.iter().enumerate().map(|(number, (name, _))| format!("({}) {name}", number + 1));
    page.add(Block::heading("Axles"));
    page.add(Block::List(names.collect()));
    page.add_table(table(axles, Numbers { system: card.system }));
    page.add(Block::note(CAMBER_SIGN));
    page.extend(warnings(&doubts(axles)));
    page
}

fn table(axles: &[(String, FlexOutcome)], n: Numbers) -> Table {
    let columns = (1..=axles.len()).map(|number| Column::plain(format!("({number})")));
    let mut table = Table::new([Column::words("Axle")].into_iter().chain(columns));
    let tight = axles.iter().all(|(_, outcome)| left(outcome).split.clearance == 0.0);
    for (label, shown, value) in ROWS.into_iter().filter(|(label, ..)| !(tight && *label == CLEARANCE)) {
        let cells = axles.iter().map(|(_, outcome)| n.bare(value(outcome), shown));
        table.add_row([n.heading(label, shown)].into_iter().chain(cells));
    }
    let first = axles.first().map_or(0.0, |(_, outcome)| left(outcome).camber_change);
    let share = |own: f64| if first == 0.0 { "-".to_owned() } else { fixed(100.0 * own / first, 0) };
    let ratio = axles.iter().map(|(_, outcome)| share(left(outcome).camber_change));
    table.add_row(["camber change, % of (1)".to_owned()].into_iter().chain(ratio));
    table
}

/// Warnings of all axles, each with the number of its axle.
fn doubts(axles: &[(String, FlexOutcome)]) -> Vec<Warning> {
    let numbered = |(number, own): (usize, &Warning)| Warning {
        text: format!("({}) {}", number + 1, own.text),
        ..own.clone()
    };
    let each = axles.iter().enumerate();
    let all = each.flat_map(|(number, (_, outcome))| outcome.warnings.iter().map(move |own| (number, own)));
    all.map(numbered).collect()
}

/// Row that only bearings with play have.
const CLEARANCE: &str = "  bearing clearance";

type Value = fn(&FlexOutcome) -> f64;

const ROWS: [(&str, Shown, Value); 12] = [
    ("bare axle", Shown::Usual(Kind::Mass), |outcome| outcome.axle_mass),
    ("camber change, left", Shown::Usual(Kind::Angle), |outcome| left(outcome).camber_change),
    ("camber change, right", Shown::Usual(Kind::Angle), |outcome| {
        outcome.cases[0].wheels.of(Side::Right).camber_change
    }),
    ("  of the left: bending", Shown::Usual(Kind::Angle), |outcome| left(outcome).split.bending),
    ("  shear", Shown::Usual(Kind::Angle), |outcome| left(outcome).split.shear),
    ("  seats", Shown::Usual(Kind::Angle), |outcome| left(outcome).split.seat),
    ("  of the seats: wall", Shown::Usual(Kind::Angle), |outcome| left(outcome).split.wall),
    ("  bearings", Shown::Usual(Kind::Angle), |outcome| left(outcome).split.bearing),
    ("  wheel disc and hub flange", Shown::Usual(Kind::Angle), |outcome| left(outcome).split.disc),
    (CLEARANCE, Shown::Usual(Kind::Angle), |outcome| left(outcome).split.clearance),
    ("bow of the middle", Shown::Deflection, |outcome| outcome.cases[0].bow),
    ("peak bending stress", Shown::Usual(Kind::Stress), |outcome| outcome.cases[0].peak_stress),
];

fn left(outcome: &FlexOutcome) -> &axlebow_axle::WheelOutcome {
    outcome.cases[0].wheels.of(Side::Left)
}
