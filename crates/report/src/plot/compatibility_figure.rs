//! A map of tires on axles.

use axlebow_study::CompatibilityOutcome;

use crate::number::Numbers;
use crate::panels::finite;
use crate::panels::layout::NOTE;
use crate::panels::range_of;
use crate::panels::{color, draw_color_bar};
use crate::svg::palette::INK;
use crate::svg::{Canvas, Label, Point};
use crate::words::compatibility::{AGAINST_UPRIGHT, column_name, heading};
use crate::words::tire::index;
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Left edge.
const LEFT: f64 = 50.0;
/// Room for the names of axles.
const NAMES: f64 = 330.0;
/// Size of a cell.
const CELL: Point = [112.0, 46.0];
/// Room over the cells for the names of tires.
const ABOVE: f64 = 76.0;
/// Color of a cell without a value.
const NOTHING: &str = "#c9ced6";

/// Draws how much more the inner shoulder of each axle wears than upright on each tire at each offset, a colored cell
/// each.
///
/// # Errors
/// No cell with a value, or one that is not finite.
pub fn compatibility_figure(outcome: &CompatibilityOutcome, card: &ModelCard) -> Result<Svg, ReportError> {
    let values = || outcome.cells.iter().flatten().filter_map(|cell| cell.against_upright);
    if values().next().is_none() {
        return Err(ReportError::Empty { thing: "map of tires on axles" });
    }
    finite("wear in a map", values())?;
    let range = range_of(values(), 0.0);
    let numbers = Numbers { system: card.system };
    let mut canvas = Canvas::default();
    let width = LEFT + NAMES + CELL[0] * outcome.columns.len() as f64;
    let letters = (width / 8.0) as usize;
    canvas.label(Label::new("Which tire forgives which axle", [LEFT, 46.0]).size(22.0).bold());
    let mut level = 46.0;
    for line in wrapped(&format!("{AGAINST_UPRIGHT}. {}.", heading(outcome)), letters, 4) {
        level += 19.0;
        canvas.label(Label::new(line, [LEFT, level]));
    }
    let corner = [LEFT + NAMES, level + ABOVE];
    draw_names(&mut canvas, outcome, (corner, numbers));
    draw_cells(&mut canvas, outcome, (corner, range));
    let height = CELL[1] * outcome.axles.len() as f64;
    draw_color_bar(&mut canvas, ([width + 24.0, corner[1]], height), range, &levels(range));
    let mut bottom = corner[1] + height + 26.0;
    if let Some(note) = card.invented_note() {
        canvas.label(NOTE.label(note, [LEFT, bottom]));
        bottom += 14.0;
    }
    Ok(canvas.finish([width + 110.0, bottom], "Which tire forgives which axle", AGAINST_UPRIGHT))
}

fn draw_names(canvas: &mut Canvas, outcome: &CompatibilityOutcome, (corner, numbers): (Point, Numbers)) {
    for (column, of) in outcome.columns.iter().enumerate() {
        let lines = wrapped(&column_name(of, numbers), 15, 4);
        let middle = corner[0] + CELL[0] * (column as f64 + 0.5);
        for (row, line) in lines.iter().rev().enumerate() {
            canvas.label(Label::new(line, [middle, corner[1] - 8.0 - 14.0 * row as f64]).size(12.0).middle());
        }
    }
    for (row, axle) in outcome.axles.iter().enumerate() {
        let middle = corner[1] + CELL[1] * (row as f64 + 0.5);
        let lines = wrapped(axle, 42, 2);
        for (line, text) in lines.iter().enumerate() {
            let y = middle + 4.5 + 15.0 * (line as f64 - 0.5 * (lines.len() - 1) as f64);
            canvas.label(Label::new(text, [corner[0] - 12.0, y]).end());
        }
    }
}

fn draw_cells(canvas: &mut Canvas, outcome: &CompatibilityOutcome, (corner, range): (Point, [f64; 2])) {
    for (row, cells) in outcome.cells.iter().enumerate() {
        for (column, cell) in cells.iter().enumerate() {
            let at = [corner[0] + CELL[0] * column as f64, corner[1] + CELL[1] * row as f64];
            let fill = cell.against_upright.map_or(NOTHING.to_owned(), |wear| color(wear, range));
            canvas.rectangle(at, CELL, &format!(r##"fill="{fill}" stroke="#ffffff" stroke-width="2""##));
            let dark =
                cell.against_upright.is_some_and(|wear| wear < range[0] + 0.55 * (range[1] - range[0]));
            let middle = [at[0] + 0.5 * CELL[0], at[1] + 0.5 * CELL[1] + 5.0];
            let label = Label::new(index(cell.against_upright), middle).middle().bold();
            canvas.label(label.color(if dark { "#ffffff" } else { INK }));
        }
    }
}

/// The ends of the colors and the middle.
fn levels([low, high]: [f64; 2]) -> Vec<f64> {
    let rounded = |value: f64| (value * 100.0).round() / 100.0;
    let all = [low, 0.5 * (low + high), high].map(rounded);
    all.into_iter().filter(|level| (low - 0.005..=high + 0.005).contains(level)).collect()
}
