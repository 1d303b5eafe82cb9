//! Table of the wall at the seats.

use axlebow_axle::{FlexOutcome, Side, WallBy};
use axlebow_units::Kind;

use crate::number::{Numbers, fixed};
use crate::page::{Block, Column, Table};

/// What the wall does at each seat, where it is not simply given; else nothing.
pub(super) fn walls(outcome: &FlexOutcome, n: Numbers) -> Option<Block> {
    if Side::BOTH.iter().all(|&side| outcome.walls.of(side).by == WallBy::Given) {
        return None;
    }
    let mut table = Table::new([
        Column::words("Wall at the seat"),
        Column::words("by"),
        Column::shown("turns about X", Kind::RotationalFlexibility, n),
        Column::number("of the flexibility under the seat is taken away", "%"),
        Column::plain("unknowns"),
    ]);
    for side in Side::BOTH {
        let wall = outcome.walls.of(side);
        table.add_row([
            side.word().to_owned(),
            wall.by.word().to_owned(),
            n.bare(wall.rotational_flexibility(), Kind::RotationalFlexibility),
            fixed(100.0 * wall.composite_fraction, 0),
            wall.unknowns.map_or("-".to_owned(), |unknowns| unknowns.to_string()),
        ]);
    }
    Some(Block::Table(table))
}
