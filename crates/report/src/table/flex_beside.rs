//! Several axles side by side under one load case.

use axlebow_axle::{FlexOutcome, Side, Warning};

use super::flex::{WIDTH, warnings};
use super::grid::{Grid, paragraph};
use crate::ModelCard;
use crate::number::{Numbers, Shown};

/// The first case of each outcome, one axle a column: masses, camber change of both wheels with its parts, bow
/// and stress.
///
/// - `axles`: name and outcome; the first is the one that the others are compared with
pub fn flex_beside(axles: &[(String, FlexOutcome)], card: &ModelCard) -> String {
    let n = Numbers { system: card.system };
    let case = axles.first().and_then(|(_, outcome)| outcome.cases.first());
    let name = case.map_or_else(String::new, |case| format!("CASE {}: {}", case.name, case.description));
    let mut text = paragraph(&name, WIDTH, 2);
    text.push_str(&card.invented_line());
    for (number, (name, _)) in axles.iter().enumerate() {
        text.push_str(&paragraph(&format!("({}) {name}", number + 1), WIDTH, 4));
    }
    let columns = (1..=axles.len()).map(|number| format!("({number})"));
    let mut grid = Grid::new(1, ["Axle".to_owned()].into_iter().chain(columns));
    let tight = axles.iter().all(|(_, outcome)| left(outcome).split.clearance == 0.0);
    for (label, shown, value) in ROWS.into_iter().filter(|(label, ..)| !(tight && *label == CLEARANCE)) {
        let cells = axles.iter().map(|(_, outcome)| n.bare(value(outcome), shown));
        grid.row([n.heading(label, shown)].into_iter().chain(cells));
    }
    let first = axles.first().map_or(0.0, |(_, outcome)| left(outcome).camber_change);
    let ratio =
        axles.iter().map(|(_, outcome)| format!("{:.0}", 100.0 * left(outcome).camber_change / first));
    grid.row(["camber change, % of (1)".to_owned()].into_iter().chain(ratio));
    let named = |(number, own): (usize, &Warning)| Warning {
        text: format!("({}) {}", number + 1, own.text),
        ..own.clone()
    };
    let each = axles.iter().enumerate();
    let doubts =
        each.flat_map(|(number, (_, outcome))| outcome.warnings.iter().map(move |own| (number, own)));
    text + "\n" + &grid.text() + &warnings(&doubts.map(named).collect::<Vec<_>>())
}

/// Row that only bearings with play have.
const CLEARANCE: &str = "  bearing clearance";

type Value = fn(&FlexOutcome) -> f64;

const ROWS: [(&str, Shown, Value); 12] = [
    ("bare axle", Shown::Mass, |outcome| outcome.axle_mass),
    ("camber change, left", Shown::Angle, |outcome| left(outcome).camber_change),
    ("camber change, right", Shown::Angle, |outcome| outcome.cases[0].wheels.of(Side::Right).camber_change),
    ("  of the left: bending", Shown::Angle, |outcome| left(outcome).split.bending),
    ("  shear", Shown::Angle, |outcome| left(outcome).split.shear),
    ("  seats", Shown::Angle, |outcome| left(outcome).split.seat),
    ("  of the seats: wall", Shown::Angle, |outcome| left(outcome).split.wall),
    ("  bearings", Shown::Angle, |outcome| left(outcome).split.bearing),
    ("  wheel disc and hub flange", Shown::Angle, |outcome| left(outcome).split.disc),
    (CLEARANCE, Shown::Angle, |outcome| left(outcome).split.clearance),
    ("bow of the middle", Shown::Deflection, |outcome| outcome.cases[0].bow),
    ("peak bending stress", Shown::Stress, |outcome| outcome.cases[0].peak_stress),
];

fn left(outcome: &FlexOutcome) -> &axlebow_axle::WheelOutcome {
    outcome.cases[0].wheels.of(Side::Left)
}
