//! The table of tires on axles.

use axlebow_study::{CompatibilityOutcome, TireCell};

use super::flex::{WIDTH, warnings};
use super::grid::{Grid, paragraph};
use crate::ModelCard;
use crate::compatibility_words::{AGAINST_UPRIGHT, COLUMN, RATE, column_name, heading};
use crate::number::{Numbers, Shown};
use crate::tire_words::index;

/// Columns that stand side by side.
const BESIDE: usize = 6;

/// How fast each axle's inner shoulder goes on each tire at each offset; then how unevenly, and the camber; and which tire
/// forgives which axle.
pub fn compatibility(outcome: &CompatibilityOutcome, card: &ModelCard) -> String {
    let n = Numbers { system: card.system };
    let invented = &card.invented_line();
    let axles = outcome.axles.iter().enumerate();
    let axles: String = axles.map(|(i, axle)| paragraph(&format!("({}) {axle}", i + 1), WIDTH, 4)).collect();
    let head = paragraph(&heading(outcome), WIDTH, 2) + invented + &axles;
    let rate = |cell: &TireCell| index(cell.rate);
    let upright = |cell: &TireCell| index(cell.against_upright);
    let camber = |cell: &TireCell| n.bare(cell.camber, Shown::Angle);
    let unit = n.unit(Shown::Angle);
    let parts = [
        grids(outcome, AGAINST_UPRIGHT, n, &upright),
        grids(outcome, RATE, n, &rate),
        grids(outcome, &format!("Camber, {unit}"), n, &camber),
    ];
    head + &parts.concat() + "\n" + &paragraph(&verdict(outcome, n), WIDTH, 2) + &warnings(&outcome.warnings)
}

fn grids(
    outcome: &CompatibilityOutcome,
    title: &str,
    n: Numbers,
    cell: &dyn Fn(&TireCell) -> String,
) -> String {
    let mut text = format!("\n{}", paragraph(title, WIDTH, 2));
    let columns: Vec<usize> = (0..outcome.columns.len()).collect();
    for columns in columns.chunks(BESIDE) {
        let names = columns.iter().map(|column| stacked(&column_name(&outcome.columns[*column], n)));
        let names: Vec<String> = ["Axle".to_owned()].into_iter().chain(names).collect();
        let mut grid = Grid::new(1, super::grid::on_one_floor(&names));
        for (i, row) in outcome.cells.iter().enumerate() {
            grid.row(
                [format!("({})", i + 1)].into_iter().chain(columns.iter().map(|column| cell(&row[*column]))),
            );
        }
        text += &grid.text();
    }
    text
}

/// A name in lines as wide as a column.
fn stacked(name: &str) -> String {
    crate::plot::wrapped(name, COLUMN, 4).join("\n")
}

/// The pairs that wear most and least evenly against upright.
fn verdict(outcome: &CompatibilityOutcome, n: Numbers) -> String {
    let mut cells: Vec<(String, f64)> = Vec::new();
    for (i, row) in outcome.cells.iter().enumerate() {
        for (column, cell) in outcome.columns.iter().zip(row) {
            let name = format!("axle ({}) with {}", i + 1, column_name(column, n));
            cells.extend(cell.against_upright.map(|wear| (name, wear)));
        }
    }
    cells.sort_by(|a, b| a.1.total_cmp(&b.1));
    match (cells.first(), cells.last()) {
        (Some(best), Some(worst)) => format!(
            "Most forgiving: {} ({}). Least: {} ({}). Relative numbers, no promise of mileage.",
            best.0,
            index(Some(best.1)),
            worst.0,
            index(Some(worst.1))
        ),
        _ => "No tire wears upright, so that nothing can be compared with it; give a usual_side_force."
            .to_owned(),
    }
}
