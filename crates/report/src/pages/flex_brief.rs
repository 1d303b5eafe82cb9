//! One line for each load case: what somebody wants to see first.

use axlebow_axle::{CaseOutcome, FlexOutcome, Side, WheelOutcome};
use axlebow_units::Kind;

use super::flex::heading;
use super::notes::{defaults, next, warnings};
use super::stiffening::stiffening;
use super::walls::walls;
use crate::ModelCard;
use crate::number::{Numbers, Shown};
use crate::page::{Block, Column, Page, Table};

/// One line for each load case and side: camber change with its parts, camber, toe change, load, bow and
/// peak stress; then how many defaults there are, and warnings.
pub fn flex_brief(outcome: &FlexOutcome, card: &ModelCard) -> Page {
    let n = Numbers { system: card.system };
    let mut page = heading(outcome, card);
    page.add_table(camber_table(outcome, n));
    page.add(Block::note(SIGNS));
    page.add_table(axle_table(outcome, n));
    page.extend(walls(outcome, n));
    page.extend(stiffening(outcome, n));
    page.extend(defaults(card, "--detail"));
    page.extend(warnings(&outcome.warnings));
    page.add(next(NEXT));
    page
}

/// What to do with the lean.
const NEXT: &str =
    "`axlebow tire` for wear, `axlebow remedies` for what helps, `axlebow strength` for stress.";

/// What the signs mean.
const SIGNS: &str = "Camber, against the line through the two hubs: negative, tops lean in. Toe: positive, toe-in. The axle's \
    roll on the road comes on top.";

/// Column that only bearings with play have.
const CLEARANCE: &str = "bearing clearance";

fn camber_table(outcome: &FlexOutcome, n: Numbers) -> Table {
    type Value = fn(&WheelOutcome) -> f64;
    let columns: [(&str, Shown, Value); 9] = [
        ("camber change", Shown::Usual(Kind::Angle), |wheel| wheel.camber_change),
        ("of it bending", Shown::Usual(Kind::Angle), |wheel| wheel.split.bending),
        ("shear", Shown::Usual(Kind::Angle), |wheel| wheel.split.shear),
        ("seats", Shown::Usual(Kind::Angle), |wheel| wheel.split.seat),
        ("wheel end", Shown::Usual(Kind::Angle), |wheel| wheel.split.bearing + wheel.split.disc),
        (CLEARANCE, Shown::Usual(Kind::Angle), |wheel| wheel.split.clearance),
        ("camber", Shown::Usual(Kind::Angle), |wheel| wheel.camber),
        ("toe change", Shown::Usual(Kind::Angle), |wheel| wheel.toe_change),
        ("vertical load", Shown::Usual(Kind::Force), |wheel| wheel.vertical_load),
    ];
    let tight = !has_clearance(outcome);
    let columns: Vec<_> = columns.into_iter().filter(|(name, ..)| !(tight && *name == CLEARANCE)).collect();
    let names = columns.iter().map(|(name, shown, _)| Column::shown(*name, *shown, n));
    let mut table = Table::new([Column::words("Load case"), Column::words("wheel")].into_iter().chain(names));
    for case in &outcome.cases {
        for side in Side::BOTH {
            let name = if side == Side::Left { case.name.as_str() } else { "" };
            let cells = columns.iter().map(|(_, shown, value)| n.bare(value(case.wheels.of(side)), *shown));
            table.add_row([name.to_owned(), side.word().to_owned()].into_iter().chain(cells));
        }
    }
    table
}

/// Whether a clearance of the bearings has a part in any camber change.
fn has_clearance(outcome: &FlexOutcome) -> bool {
    let mut wheels = outcome.cases.iter().flat_map(|case| Side::BOTH.map(|side| case.wheels.of(side)));
    wheels.any(|wheel| wheel.split.clearance != 0.0)
}

fn axle_table(outcome: &FlexOutcome, n: Numbers) -> Table {
    type Value = fn(&CaseOutcome) -> f64;
    let columns: [(&str, Shown, Value); 4] = [
        ("bow of the middle", Shown::Deflection, |case| case.bow),
        ("peak bending stress", Shown::Usual(Kind::Stress), |case| case.peak_stress),
        ("at y", Shown::Place, |case| case.peak_stress_y),
        ("roll on the road", Shown::Usual(Kind::Angle), |case| case.axle_roll),
    ];
    let names = columns.iter().map(|(name, shown, _)| Column::shown(*name, *shown, n));
    let mut table = Table::new([Column::words("Load case")].into_iter().chain(names));
    for case in &outcome.cases {
        let cells = columns.iter().map(|(_, shown, value)| n.bare(value(case), *shown));
        table.add_row([case.name.clone()].into_iter().chain(cells));
    }
    table
}
