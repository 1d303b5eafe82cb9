//! A map of tires on axles.

use axlebow_study::{CompatibilityOutcome, TireCell};

use crate::answer::plain;
use crate::number::{Numbers, fixed, with_sign};
use crate::panels::layout::{NOTE, PART_TITLE, TITLE};
use crate::panels::{color, draw_color_bar, finite, range_of};
use crate::svg::palette::{GREEN, INK};
use crate::svg::{Canvas, Label, Point};
use crate::words::compatibility::{EXCESS, column_name, heading};
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
/// Least width of what stands over the cells.
const LEAST_WIDTH: f64 = 760.0;
/// Color of a cell without a value.
const NOTHING: &str = "#c9ced6";

/// Draws how much more the inner shoulder of each axle wears than upright on each tire at each offset, a colored cell
/// each, the least of them outlined; the colors begin at what wears as upright.
///
/// # Errors
/// No cell with a value, or one that is not finite.
pub fn compatibility_figure(outcome: &CompatibilityOutcome, card: &ModelCard) -> Result<Svg, ReportError> {
    let values = || outcome.cells.iter().flatten().filter_map(excess);
    if values().next().is_none() {
        return Err(ReportError::Empty { thing: "map of tires on axles" });
    }
    finite("wear in a map", values())?;
    let range = range_of(values().chain([0.0]), 0.0);
    let numbers = Numbers { system: card.system };
    let mut canvas = Canvas::default();
    let width = (LEFT + NAMES + CELL[0] * outcome.columns.len() as f64).max(LEAST_WIDTH);
    let letters = (width / 8.0) as usize;
    let [message, pairs] = message(outcome, numbers);
    let mut level =
        TITLE.draw(&mut canvas, wrapped(&message, (width / 13.0) as usize, 2), [LEFT, 46.0]) - 6.0;
    level = PART_TITLE.draw(&mut canvas, wrapped(&pairs, (width / 9.0) as usize, 3), [LEFT, level]) - 15.0;
    for line in wrapped(&format!("{EXCESS}. {}.", heading(outcome)), letters, 4) {
        level += 19.0;
        canvas.label(Label::new(line, [LEFT, level]));
    }
    let corner = [LEFT + NAMES, level + ABOVE];
    draw_names(&mut canvas, outcome, (corner, numbers));
    draw_cells(&mut canvas, outcome, (corner, range));
    let height = CELL[1] * outcome.axles.len() as f64;
    let right = corner[0] + CELL[0] * outcome.columns.len() as f64;
    draw_color_bar(&mut canvas, ([right + 24.0, corner[1]], height), range, &levels(range));
    let mut bottom = corner[1] + height + 26.0;
    if let Some(note) = card.invented_note() {
        bottom = NOTE.draw(&mut canvas, wrapped(&note, (width / 6.6) as usize, 3), [LEFT, bottom]);
    }
    Ok(canvas.finish([width + 110.0, bottom], &message, EXCESS))
}

/// What the map says: how far wear ranges, and the pairs that wear least and most.
fn message(outcome: &CompatibilityOutcome, numbers: Numbers) -> [String; 2] {
    let mut pairs: Vec<(String, f64)> = Vec::new();
    for (axle, cells) in outcome.axles.iter().zip(&outcome.cells) {
        for (column, cell) in outcome.columns.iter().zip(cells) {
            let name = match outcome.columns.len() {
                1 => plain(axle),
                _ => format!("{} with {}", plain(axle), column_name(column, numbers)),
            };
            pairs.extend(excess(cell).map(|own| (name, own)));
        }
    }
    pairs.sort_by(|a, b| a.1.total_cmp(&b.1));
    let percent = |own: &(String, f64)| excess_words(Some(own.1));
    match pairs.as_slice() {
        [] => Default::default(),
        [only] => [format!("The inner shoulder wears {} against upright", percent(only)), only.0.clone()],
        [least, .., most] => [
            format!("Inner shoulders wear {} to {} against upright", percent(least), percent(most)),
            format!("Least: {}. Most: {}.", least.0, most.0),
        ],
    }
}

/// How much more than upright the inner shoulder wears, %.
fn excess(cell: &TireCell) -> Option<f64> {
    cell.against_upright.map(|wear| 100.0 * (wear - 1.0))
}

/// Such a number with its sign, such as "+14 %".
fn excess_words(excess: Option<f64>) -> String {
    let text = |own: f64| format!("{} %", with_sign(&fixed(own, if own.abs() < 10.0 { 1 } else { 0 })));
    excess.map_or("-".to_owned(), text)
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
    let corner_of =
        |row: usize, column: usize| [corner[0] + CELL[0] * column as f64, corner[1] + CELL[1] * row as f64];
    let mut best: Option<(f64, Point)> = None;
    for (row, cells) in outcome.cells.iter().enumerate() {
        for (column, cell) in cells.iter().enumerate() {
            let (at, excess) = (corner_of(row, column), excess(cell));
            let fill = excess.map_or(NOTHING.to_owned(), |wear| color(wear, range));
            canvas.rectangle(at, CELL, &format!(r##"fill="{fill}" stroke="#ffffff" stroke-width="2""##));
            let dark = excess.is_some_and(|wear| wear < range[0] + 0.55 * (range[1] - range[0]));
            let middle = [at[0] + 0.5 * CELL[0], at[1] + 0.5 * CELL[1] + 5.0];
            let label = Label::new(excess_words(excess), middle).middle().bold();
            canvas.label(label.color(if dark { "#ffffff" } else { INK }));
            best = excess.map(|own| (own, at)).into_iter().chain(best).min_by(|a, b| a.0.total_cmp(&b.0));
        }
    }
    if let Some((_, at)) = best.filter(|_| outcome.cells.iter().flatten().count() > 1) {
        let [x, y] = [at[0] + 2.0, at[1] + 2.0];
        let style = format!(r#"fill="none" stroke="{GREEN}" stroke-width="5""#);
        canvas.rectangle([x, y], [CELL[0] - 4.0, CELL[1] - 4.0], &style);
    }
}

/// The ends of the colors, and what wears as upright.
fn levels([low, high]: [f64; 2]) -> Vec<f64> {
    let mut levels = vec![low.ceil(), 0.0, high.floor()];
    levels.dedup();
    levels.into_iter().filter(|level| (low..=high).contains(level)).collect()
}
