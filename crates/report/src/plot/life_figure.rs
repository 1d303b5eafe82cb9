//! Points with bands: years until each detail of an axle cracks, and until its bearings wear out.

use axlebow_axle::LifeOutcome;

use super::not_made::draw_not_made;
use crate::answer::{plain, years_words};
use crate::number::tick;
use crate::panels::LogAxis;
use crate::panels::layout::{FIRST_LINE, NOTE, TITLE, TITLE_LINES, TO_NUMBERS};
use crate::svg::palette::{BLUE, GRID, INK, MUTED, VERMILLION};
use crate::svg::{Canvas, Label};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Left edge.
const LEFT: f64 = 50.0;
/// Room for the names of details.
const NAMES: f64 = 400.0;
/// Width of the area inside the axes.
const AREA: f64 = 480.0;
/// Room to the right for years.
const RIGHT: f64 = 240.0;
/// Height of a row.
const ROW: f64 = 26.0;
/// Letters of a name.
const LETTERS: usize = 58;
/// Longest and shortest life on the axis, years: beyond, a number would only pretend to know.
const AXIS: [f64; 2] = [0.01, 1000.0];

/// Draws for each detail the years until half of such details have cracked, with the band from 5 to 95 %, on a logarithmic
/// axis, the first to crack first; for each wheel bearing its life; what was not made under it.
///
/// # Errors
/// A life that is no number.
pub fn life_figure(outcome: &LifeOutcome, card: &ModelCard) -> Result<Svg, ReportError> {
    let rows = rows(outcome);
    if rows.iter().any(|row| row.years.iter().any(|years| years.is_nan())) {
        return Err(ReportError::Drawing("a life is no number".to_owned()));
    }
    let mut canvas = Canvas::default();
    let title = wrapped(&card.name, 72, TITLE_LINES);
    let level = TITLE.draw(&mut canvas, title, [LEFT, FIRST_LINE]) - TITLE.step;
    let level = NOTE.draw(&mut canvas, wrapped(&said(outcome), 165, 2), [LEFT, level + 22.0]);
    let top = level + 38.0;
    let bottom = top + ROW * rows.len() as f64;
    let axis = LogAxis { values: ends(&rows), ends: [LEFT + NAMES, LEFT + NAMES + AREA] };
    draw_grid(&mut canvas, axis, [top, bottom]);
    for (number, row) in rows.iter().enumerate() {
        row.draw(&mut canvas, axis, top + ROW * (number as f64 + 0.5));
    }
    let mut level = bottom + 46.0;
    for note in [SPREAD.to_owned()].into_iter().chain(card.invented_note()) {
        canvas.label(NOTE.label(note, [LEFT, level]));
        level += NOTE.step;
    }
    let level = draw_not_made(&mut canvas, &outcome.not_made, [LEFT, level + 6.0]);
    let title = format!("{}: life", card.name);
    let words = "Years until each detail cracks, with their spread, on a logarithmic axis.";
    Ok(canvas.finish([LEFT + NAMES + AREA + RIGHT, level], &title, words))
}

const SPREAD: &str = "Disc: half of such details have cracked. Band: from 5 to 95 % of them, by the scatter of the S-N curve alone. \
     Ring: life of a wheel bearing (ISO 281).";

fn said(outcome: &LifeOutcome) -> String {
    let first = match outcome.first_to_crack() {
        Some(own) => format!(
            "First to crack is the {}: half of such details after {}",
            plain(&own.name),
            years_words(own.years[1])
        ),
        None => "No detail is expected to crack".to_owned(),
    };
    format!("{first}. Duty: {}.", outcome.duty)
}

/// What lasts so long.
struct Row {
    name: String,
    /// Shortest, usual and longest, years; one for a bearing.
    years: Vec<f64>,
    first: bool,
}

fn rows(outcome: &LifeOutcome) -> Vec<Row> {
    let first = outcome.first_to_crack();
    let detail = outcome.details.iter().map(|own| Row {
        name: plain(&own.name),
        years: own.years.to_vec(),
        first: first.is_some_and(|first| std::ptr::eq(first, own)),
    });
    let bearing = outcome.bearings.iter().map(|own| Row {
        name: format!("{}, {} last", plain(&own.place), outcome.reliability.word()),
        years: vec![own.years],
        first: false,
    });
    detail.chain(bearing).collect()
}

/// Ends of the axis: 1, 2 or 5 times a power of ten around all that is on it.
fn ends(rows: &[Row]) -> [f64; 2] {
    let all = || rows.iter().flat_map(|row| &row.years).copied().filter(|years| years.is_finite());
    let least = all().fold(1.0, f64::min).max(AXIS[0]);
    let most = all().fold(10.0, f64::max).min(AXIS[1]);
    let rounds = LogAxis { values: [0.1 * AXIS[0], 10.0 * AXIS[1]], ends: [0.0, 1.0] }.rounds(&[1, 2, 5]);
    let low = rounds.iter().copied().rfind(|own| *own <= least).unwrap_or(AXIS[0]);
    let high = rounds.iter().copied().find(|own| *own >= most).unwrap_or(AXIS[1]);
    [low, high]
}

fn draw_grid(canvas: &mut Canvas, axis: LogAxis, [top, bottom]: [f64; 2]) {
    for value in axis.rounds(&[1, 2, 5]) {
        let x = axis.at(value);
        canvas.line([x, top], [x, bottom], &format!(r#"stroke="{GRID}" stroke-width="1""#));
        canvas.label(Label::new(tick(value), [x, bottom + TO_NUMBERS]).size(12.0).middle().color(MUTED));
    }
    let title = "years under this duty";
    canvas.label(Label::new(title, [axis.ends[0], top - 12.0]).bold());
    let right = axis.ends[1];
    canvas.label(Label::new("median", [right + 84.0, top - 12.0]).end().color(MUTED));
    canvas.label(Label::new("5 to 95 %", [right + 214.0, top - 12.0]).end().color(MUTED));
}

impl Row {
    fn draw(&self, canvas: &mut Canvas, axis: LogAxis, middle: f64) {
        let color = if self.first { VERMILLION } else { BLUE };
        let bold = |label: Label| if self.first { label.bold() } else { label };
        let name = wrapped(&self.name, LETTERS, 1).concat();
        canvas.label(bold(Label::new(name, [axis.ends[0] - 12.0, middle + 4.5]).size(12.0).end().color(INK)));
        let right = axis.ends[1];
        let label = |words: String, x: f64| Label::new(words, [x, middle + 4.5]).size(12.0).end();
        match self.years[..] {
            [low, usual, high] => {
                draw_band(canvas, axis, ([low, high], middle, color));
                if axis.holds(usual) {
                    canvas.disc(
                        [axis.at(usual), middle],
                        5.0,
                        &format!(r##"fill="{color}" stroke="#ffffff""##),
                    );
                }
                canvas.label(bold(label(cell(usual), right + 84.0)));
                let range = format!("{} to {}", cell(low), cell(high));
                canvas.label(label(range, right + 214.0).color(MUTED));
            }
            _ => {
                let life = self.years[0];
                if axis.holds(life) {
                    let style = format!(r##"fill="#ffffff" stroke="{color}" stroke-width="2""##);
                    canvas.disc([axis.at(life), middle], 4.5, &style);
                }
                canvas.label(label(cell(life), right + 84.0));
            }
        }
    }
}

/// The band of a life, as far as the axis goes.
fn draw_band(canvas: &mut Canvas, axis: LogAxis, ([low, high], middle, color): ([f64; 2], f64, &str)) {
    if low > axis.values[1] || high < axis.values[0] {
        return;
    }
    let [from, to] = [low, high].map(|years| axis.at(years));
    let style = format!(r#"fill="{color}" fill-opacity="0.28""#);
    canvas.rectangle([from, middle - 6.0], [to - from, 12.0], &style);
}

/// Years in a cell.
fn cell(years: f64) -> String {
    years_words(years).trim_end_matches(" years").replace("more than ", "> ").replace("less than ", "< ")
}
