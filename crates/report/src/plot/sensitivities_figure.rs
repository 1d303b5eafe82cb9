//! Bars: what a step of each key adds to camber, bow and peak stress.

use axlebow_axle::CaseReadings;
use axlebow_study::{KeySensitivity, SensitivityOutcome};
use axlebow_units::Kind;

use crate::number::{Numbers, Shown, significant, tick, with_power, with_sign};
use crate::panels::finite;
use crate::panels::layout::{FIRST_LINE, NOTE, TITLE, TITLE_LINES, TO_NUMBERS};
use crate::panels::levels;
use crate::panels::{Panel, Ticks, range_of};
use crate::svg::palette::{BLUE, GRID, INK, MUTED, VERMILLION};
use crate::svg::{Canvas, Label};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Keys that are drawn: those of largest effect.
const ROWS: usize = 14;
/// Left edge.
const LEFT: f64 = 40.0;
/// Room for names and steps of keys.
const NAMES: f64 = 380.0;
/// Width of the area inside each pair of axes.
const AREA: f64 = 230.0;
/// Room beside it for the bars' values.
const BESIDE: f64 = 86.0;
/// Most numbers along an axis.
const MOST_TICKS: usize = 5;
/// Height of a row.
const ROW: f64 = 27.0;

/// One column of bars.
struct Column {
    name: &'static str,
    shown: Shown,
    value: fn(&CaseReadings, &CaseReadings) -> f64,
}

const COLUMNS: [Column; 3] = [
    Column {
        name: "camber",
        shown: Shown::Usual(Kind::Angle),
        value: |change, own| *change.camber_change.of(own.leaning_side()),
    },
    Column { name: "bow", shown: Shown::Deflection, value: |change, _| change.bow },
    Column { name: "peak stress", shown: Shown::Usual(Kind::Stress), value: |change, _| change.peak_stress },
];

/// Draws for the keys of largest effect of a load case what one step adds to camber, bow and peak stress.
///
/// # Errors
/// No key that anything depends on, or a value that is not finite.
pub fn sensitivities_figure(outcome: &SensitivityOutcome, card: &ModelCard) -> Result<Svg, ReportError> {
    let mut keys = outcome.most_telling(card.system);
    keys.truncate(ROWS);
    if keys.is_empty() {
        return Err(ReportError::Empty { thing: "picture of sensitivities" });
    }
    let numbers = Numbers { system: card.system };
    let mut canvas = Canvas::default();
    let top = draw_heading(&mut canvas, (outcome, card), numbers) + 62.0;
    for (row, key) in keys.iter().enumerate() {
        let level = top + ROW * (row as f64 + 0.5) + 4.5;
        canvas.label(Label::new(key.key.path.as_str(), [LEFT, level]));
        let step = format!("+ {}", key.step_in_words(card.system));
        canvas.label(Label::new(step, [LEFT + NAMES - 24.0, level]).end().color(MUTED));
    }
    for (place, column) in COLUMNS.iter().enumerate() {
        let left = LEFT + NAMES + place as f64 * (AREA + BESIDE);
        draw_column(&mut canvas, (column, &keys, &outcome.own), ([left, top], numbers))?;
    }
    let mut level = top + ROW * keys.len() as f64 + 46.0;
    if let Some(note) = card.invented_note() {
        canvas.label(NOTE.label(note, [LEFT, level]));
        level += 18.0;
    }
    let title = format!("{}: sensitivities", card.name);
    let size = [LEFT + NAMES + 3.0 * (AREA + BESIDE) + 10.0, level];
    Ok(canvas.finish(size, &title, "Bars of what a step of each key adds to camber, bow and peak stress."))
}

fn draw_heading(
    canvas: &mut Canvas,
    (outcome, card): (&SensitivityOutcome, &ModelCard),
    numbers: Numbers,
) -> f64 {
    let title = wrapped(&card.name, 90, TITLE_LINES);
    let level = TITLE.draw(canvas, title, [LEFT, FIRST_LINE]) - TITLE.step;
    let own = &outcome.own;
    let side = own.leaning_side();
    let state = with_sign(&numbers.full(*own.camber_change.of(side), Kind::Angle));
    let line = format!(
        "{}: what one step of a key alone adds, to first order. The {} wheel leans by {state}; bars to the right lean its top outward.",
        outcome.case,
        side.word(),
    );
    canvas.label(Label::new(line, [LEFT, level + 24.0]).size(13.0).color(MUTED));
    level + 24.0
}

fn draw_column(
    canvas: &mut Canvas,
    (column, keys, own): (&Column, &[&KeySensitivity], &CaseReadings),
    (corner, numbers): ([f64; 2], Numbers),
) -> Result<(), ReportError> {
    let value =
        |key: &KeySensitivity| numbers.scaled((column.value)(&key.change(numbers.system), own), column.shown);
    let values: Vec<f64> = keys.iter().copied().map(value).collect();
    finite("sensitivity", values.iter().copied())?;
    let size = [AREA, ROW * keys.len() as f64];
    let x = range_of(values.iter().copied().chain([0.0]), 0.06);
    let panel = Panel { corner, size, x, y: [0.0, 1.0], ticks: Ticks::Grid };
    let heading = numbers.heading(column.name, column.shown);
    canvas.label(Label::new(heading, [corner[0], corner[1] - 14.0]).bold());
    draw_axis(canvas, &panel);
    let zero = panel.at(0.0, 0.0)[0];
    for (row, value) in values.iter().enumerate() {
        let (x, middle) = (panel.at(*value, 0.0)[0], corner[1] + ROW * (row as f64 + 0.5));
        let color = if *value < 0.0 { VERMILLION } else { BLUE };
        let style = format!(r#"fill="{color}" fill-opacity="0.85""#);
        canvas.rectangle([x.min(zero), middle - 8.0], [(x - zero).abs().max(0.6), 16.0], &style);
        let plus = if *value > 0.0 { "+" } else { "" };
        let text = format!("{plus}{}", with_power(&significant(*value, 2)));
        let at = [corner[0] + AREA + 8.0, middle + 4.0];
        canvas.label(NOTE.label(text, at));
    }
    Ok(())
}

/// The line of zero, and grid lines of which few enough have numbers that these stand apart.
fn draw_axis(canvas: &mut Canvas, panel: &Panel) {
    let values = levels(panel.x);
    let zero = values.iter().position(|value| value.abs() < 1e-12).unwrap_or(0);
    let stride = values.len().div_ceil(MOST_TICKS);
    let [top, bottom] = [panel.corner[1], panel.corner[1] + panel.size[1]];
    for (place, value) in values.iter().enumerate() {
        let x = panel.at(*value, 0.0)[0];
        let color = if place == zero { INK } else { GRID };
        canvas.line([x, top], [x, bottom], &format!(r#"stroke="{color}" stroke-width="1""#));
        if place.abs_diff(zero).is_multiple_of(stride) {
            canvas.label(Label::new(tick(*value), [x, bottom + TO_NUMBERS]).size(12.0).middle().color(MUTED));
        }
    }
}
