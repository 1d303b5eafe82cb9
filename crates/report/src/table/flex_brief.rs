//! One line for each load case: what somebody wants to see first.

use axlebow_axle::{CaseOutcome, FlexOutcome, Side, WheelOutcome};

use super::flex::{heading, warnings};
use super::grid::Grid;
use super::stiffening::stiffening;
use super::walls::walls;
use crate::ModelCard;
use crate::number::{Numbers, Shown};

/// One line for each load case and side: camber change with its parts, camber, toe change, load, bow and
/// peak stress; then what was assumed and warnings.
pub fn flex_brief(outcome: &FlexOutcome, card: &ModelCard) -> String {
    let numbers = Numbers { system: card.system };
    let text = heading(outcome, card);
    let tables = camber_table(outcome, numbers) + "\n" + &axle_table(outcome, numbers);
    let camber = "Camber, against the line through the two hubs: negative, tops lean in. Toe: positive, toe-in.\n\
                  The axle's roll on the road comes on top.\n";
    let stiffening = stiffening(outcome, numbers);
    let walls = walls(outcome, &numbers);
    format!("{text}\n{tables}{camber}{walls}{stiffening}{}{}", assumed(card), warnings(&outcome.warnings))
}

/// How many defaults are in use: a brief table leaves their list to `--detail` and JSON.
pub(super) fn assumed(card: &ModelCard) -> String {
    match card.assumed.len() {
        0 => String::new(),
        count => format!("\n{count} values are defaults; --json lists them.\n"),
    }
}

/// Column that only bearings with play have.
const CLEARANCE: &str = "bearing\nclearance";

fn camber_table(outcome: &FlexOutcome, n: Numbers) -> String {
    type Value = fn(&WheelOutcome) -> f64;
    let columns: [(&str, Shown, Value); 9] = [
        ("camber\nchange", Shown::Angle, |wheel| wheel.camber_change),
        ("of it\nbending", Shown::Angle, |wheel| wheel.split.bending),
        ("\nshear", Shown::Angle, |wheel| wheel.split.shear),
        ("\nseats", Shown::Angle, |wheel| wheel.split.seat),
        ("\nwheel end", Shown::Angle, |wheel| wheel.split.bearing + wheel.split.disc),
        (CLEARANCE, Shown::Angle, |wheel| wheel.split.clearance),
        ("\ncamber", Shown::Angle, |wheel| wheel.camber),
        ("toe\nchange", Shown::Angle, |wheel| wheel.toe_change),
        ("vertical\nload", Shown::Force, |wheel| wheel.vertical_load),
    ];
    let tight = !has_clearance(outcome);
    let columns: Vec<_> = columns.into_iter().filter(|(name, ..)| !(tight && *name == CLEARANCE)).collect();
    let names = columns.iter().map(|(name, shown, _)| format!("{name}\n{}", n.unit(*shown)));
    let mut grid = Grid::new(2, ["Load case".to_owned(), "wheel".to_owned()].into_iter().chain(names));
    for case in &outcome.cases {
        for side in Side::BOTH {
            let name = if side == Side::Left { case.name.as_str() } else { "" };
            let cells = columns.iter().map(|(_, shown, value)| n.bare(value(case.wheels.of(side)), *shown));
            grid.row([name.to_owned(), side.word().to_owned()].into_iter().chain(cells));
        }
    }
    grid.text()
}

/// Whether a clearance of the bearings has a part in any camber change.
fn has_clearance(outcome: &FlexOutcome) -> bool {
    let mut wheels = outcome.cases.iter().flat_map(|case| Side::BOTH.map(|side| case.wheels.of(side)));
    wheels.any(|wheel| wheel.split.clearance != 0.0)
}

fn axle_table(outcome: &FlexOutcome, n: Numbers) -> String {
    type Value = fn(&CaseOutcome) -> f64;
    let columns: [(&str, Shown, Value); 4] = [
        ("bow of\nthe middle", Shown::Deflection, |case| case.bow),
        ("peak bending\nstress", Shown::Stress, |case| case.peak_stress),
        ("at\ny", Shown::Place, |case| case.peak_stress_y),
        ("roll on\nthe road", Shown::Angle, |case| case.axle_roll),
    ];
    let names = columns.iter().map(|(name, shown, _)| format!("{name}\n{}", n.unit(*shown)));
    let last = "equilibrium\nresidual".to_owned();
    let mut grid = Grid::new(1, ["Load case".to_owned()].into_iter().chain(names).chain([last]));
    for case in &outcome.cases {
        let cells = columns.iter().map(|(_, shown, value)| n.bare(value(case), *shown));
        let residual = format!("{:.0e}", case.equilibrium_residual);
        grid.row([case.name.clone()].into_iter().chain(cells).chain([residual]));
    }
    grid.text()
}
