//! Table of the wall at the seats.

use axlebow_axle::{FlexOutcome, Side, WallBy};

use super::grid::Grid;
use crate::number::{Numbers, Shown, fixed};

/// What the wall does at each seat, where it is not simply given; else nothing.
pub(super) fn walls(outcome: &FlexOutcome, numbers: &Numbers) -> String {
    if Side::BOTH.iter().all(|&side| outcome.walls.of(side).by == WallBy::Given) {
        return String::new();
    }
    let heading = [
        "Wall at the seat".to_owned(),
        "by".to_owned(),
        numbers.heading("turns about X", Shown::RotationalFlexibility),
        "of the flexibility under the seat\nis taken away".to_owned(),
        "unknowns".to_owned(),
    ];
    let mut grid = Grid::new(1, heading);
    for side in Side::BOTH {
        let wall = outcome.walls.of(side);
        grid.row([
            side.word().to_owned(),
            wall.by.word().to_owned(),
            numbers.bare(wall.rotational_flexibility(), Shown::RotationalFlexibility),
            format!("{} %", fixed(100.0 * wall.composite_fraction, 0)),
            wall.unknowns.map_or("-".to_owned(), |unknowns| unknowns.to_string()),
        ]);
    }
    format!("\n{}", grid.text())
}
