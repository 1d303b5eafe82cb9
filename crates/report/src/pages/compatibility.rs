//! The table of tires on axles.

use axlebow_study::{CompatibilityOutcome, TireCell};
use axlebow_units::Kind;

use super::notes::warnings;
use crate::ModelCard;
use crate::answer::compatibility_answer;
use crate::number::Numbers;
use crate::page::{Block, Column, Page, Table};
use crate::words::compatibility::{AGAINST_UPRIGHT, RATE, column_name, heading};
use crate::words::tire::index;

/// Columns that stand side by side.
const BESIDE: usize = 6;

/// How fast each axle's inner shoulder goes on each tire at each offset; then how unevenly, and the camber; and which tire
/// forgives which axle.
pub fn compatibility(outcome: &CompatibilityOutcome, card: &ModelCard) -> Page {
    let n = Numbers { system: card.system };
    let mut page = Page::titled(heading(outcome), card, compatibility_answer(outcome, card));
    let axles = outcome.axles.iter().enumerate();
    page.add(Block::heading("Axles"));
    page.add(Block::List(axles.map(|(i, axle)| format!("({}) {axle}", i + 1)).collect()));
    let rate = |cell: &TireCell| index(cell.rate);
    let upright = |cell: &TireCell| index(cell.against_upright);
    let camber = |cell: &TireCell| n.bare(cell.camber, Kind::Angle);
    let angle = format!("Camber, {} (negative: tops lean in)", n.unit(Kind::Angle));
    page.extend(grids(outcome, AGAINST_UPRIGHT, n, &upright));
    page.extend(grids(outcome, RATE, n, &rate));
    page.extend(grids(outcome, &angle, n, &camber));
    page.extend(warnings(&outcome.warnings));
    page
}

fn grids(
    outcome: &CompatibilityOutcome,
    title: &str,
    n: Numbers,
    cell: &dyn Fn(&TireCell) -> String,
) -> Vec<Block> {
    let mut blocks = Vec::new();
    let columns: Vec<usize> = (0..outcome.columns.len()).collect();
    for columns in columns.chunks(BESIDE) {
        let names = columns.iter().map(|column| Column::plain(column_name(&outcome.columns[*column], n)));
        let mut table = Table::new([Column::words("Axle")].into_iter().chain(names));
        for (i, row) in outcome.cells.iter().enumerate() {
            let cells = columns.iter().map(|column| cell(&row[*column]));
            table.add_row([format!("({})", i + 1)].into_iter().chain(cells));
        }
        let is_first = blocks.is_empty();
        blocks.push(Block::Table(if is_first { table.with_caption(title) } else { table }));
    }
    blocks
}
