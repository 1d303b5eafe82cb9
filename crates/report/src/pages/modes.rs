//! The table of natural modes.

use axlebow_axle::{ModeMesh, ModeOutcome, ModesOutcome};
use axlebow_units::Kind;

use super::notes::{JSON, defaults, next};
use crate::ModelCard;
use crate::answer::modes_answer;
use crate::number::{Numbers, Shown, fixed, significant};
use crate::page::{Block, Column, Page, Table};

/// Above this rotation about its own line for 1 m of displacement, rad, the axle turns and nothing else.
const TURNS_ONLY: f64 = 1e3;

/// Least share of strain that is not zero in the table.
const LEAST_SHOWN: f64 = 5e-4;

/// What to do with the modes.
const NEXT: &str =
    "`axlebow cups` compares a cup count with these modes, `axlebow ride` shakes them over a road.";

/// One line for each natural mode: frequency, damping, modal mass, strain energy by part, and camber for the
/// largest displacement; then whether any mode was missed, and what was assumed.
///
/// In the units of `card.system`; camber is positive with the tire's top outward, and the sign of a
/// whole mode is free. Modal mass and camber of a mode that displaces nothing are left out.
pub fn modes(outcome: &ModesOutcome, card: &ModelCard) -> Page {
    let n = Numbers { system: card.system };
    let mut page = Page::of_model(card, modes_answer(outcome, card));
    let carried = n.full(outcome.sprung_mass, Kind::Mass);
    page.add(Block::paragraph(format!("The axle carries {carried} of vehicle body.")));
    page.add_table(mode_table(outcome, n));
    page.add(Block::note(
        "Camber for the largest displacement: positive, tops lean out; the sign of a whole mode is free.",
    ));
    page.extend(rest_of_vehicle(outcome));
    page.extend([count(outcome), mesh(&outcome.mesh, n)]);
    page.add(Block::note(accuracy(outcome)));
    page.extend(defaults(card, JSON));
    page.add(next(NEXT));
    page
}

fn mode_table(outcome: &ModesOutcome, n: Numbers) -> Table {
    let camber = format!("{}/{}", n.unit(Kind::Angle), n.unit(Shown::Deflection));
    let mut table = Table::new([
        Column::words("Mode"),
        Column::number("frequency", "Hz"),
        Column::number("damping", "%"),
        Column::shown("modal mass", Kind::Mass, n),
        Column::number("strain in beam", "%"),
        Column::number("seats", "%"),
        Column::number("bearings", "%"),
        Column::number("tires", "%"),
        Column::number("camber left", camber.clone()),
        Column::number("right", camber),
    ]);
    for mode in &outcome.modes {
        table.add_row(cells(mode, n));
    }
    table
}

fn cells(mode: &ModeOutcome, n: Numbers) -> [String; 10] {
    let percent = |share: f64| fixed(100.0 * share, 1);
    let strain = &mode.strain;
    let turn = mode.shape.iter().map(|point| point.motion[4].abs()).fold(0.0, f64::max);
    let moved = |text: String| if turn > TURNS_ONLY { "-".to_owned() } else { text };
    let per_length = n.scaled(1.0, Shown::Deflection);
    let camber = |value: f64| moved(fixed(n.scaled(value, Kind::Angle) / per_length, 4));
    [
        mode.name.clone(),
        significant(mode.frequency, 4),
        percent(mode.damping_ratio),
        moved(n.bare(mode.modal_mass, Kind::Mass)),
        percent(strain.beam),
        percent(strain.seats),
        percent(strain.bearings),
        percent(strain.tires),
        camber(mode.camber.left),
        camber(mode.camber.right),
    ]
}

/// The modes whose strain is in part where the table has no column.
fn rest_of_vehicle(outcome: &ModesOutcome) -> Option<Block> {
    let shares: Vec<_> = outcome
        .modes
        .iter()
        .filter(|mode| mode.strain.rest_of_vehicle.abs() >= LEAST_SHOWN)
        .map(|mode| format!("{} {} %", mode.name, fixed(100.0 * mode.strain.rest_of_vehicle, 1)))
        .collect();
    let sentence = format!(
        "The remaining strain is in the rest of the vehicle, which resists roll, less what the sprung weight gives back: {}.",
        shares.join(", ")
    );
    (!shares.is_empty()).then_some(Block::Note(sentence))
}

/// Whether a mode was missed.
fn count(outcome: &ModesOutcome) -> Block {
    let (found, counted) = (outcome.found_below, outcome.counted_below);
    let limit = significant(outcome.limit, 4);
    if found == counted {
        let modes = if counted == 1 { "mode" } else { "modes" };
        return Block::paragraph(format!(
            "Sturm check: no missing modes; {counted} {modes} below {limit} Hz, all found."
        ));
    }
    let fault = match counted.checked_sub(found) {
        Some(missed) => format!("{missed} missed"),
        None => format!("{} too many", found - counted),
    };
    Block::Warning(format!(
        "Sturm check: {counted} modes below {limit} Hz, {found} found, {fault}; do not rely on this table, ask for \
         another number of modes."
    ))
}

fn accuracy(outcome: &ModesOutcome) -> String {
    let worst = outcome.modes.iter().map(|mode| mode.residual).fold(0.0, f64::max);
    format!("Residual over inertia forces, worst mode: {worst:.0e}.")
}

/// How fine the elements are, and what that leaves open.
fn mesh(mesh: &ModeMesh, n: Numbers) -> Block {
    let longest = n.full(mesh.longest_element, Shown::Place);
    let change = significant(100.0 * mesh.change, 2);
    match mesh.is_settled() {
        true => Block::note(format!(
            "Elements were halved until no frequency moved by more than 0.1 %: the longest is {longest}, the last \
             halving moved none by more than {change} %."
        )),
        false => Block::Warning(format!(
            "with elements of {longest} the last halving still moved a frequency by {change} %, more than \
             0.1 %; do not rely on the highest modes, ask for fewer."
        )),
    }
}
