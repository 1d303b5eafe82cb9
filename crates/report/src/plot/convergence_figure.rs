//! How the errors of a beam's results fall with the number of elements.

use axlebow_beam::{Convergence, ConvergenceRow, Quantity};

use crate::number::{tick, with_power};
use crate::panels::layout::{FIRST_LINE, LEFT, NOTE, SUBTITLE, TITLE, TO_NUMBERS};
use crate::panels::{LogAxis, finite, spread};
use crate::svg::palette::{GRID, MUTED, SERIES};
use crate::svg::{Canvas, Label, Point};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Size of the area inside the axes.
const AREA: Point = [640.0, 380.0];
/// Room to the right for the names of the lines.
const NAMES: f64 = 300.0;
/// Smallest error that is drawn: below, it is rounding.
const LEAST: f64 = 1e-15;
/// Letters of a line of the title.
const LETTERS: usize = 60;
/// Height of a name.
const NAME: f64 = 18.0;

/// Draws the relative error of each result over the elements of a piece, on logarithmic axes, each line named with its
/// last observed order.
///
/// Returns none where every error is rounding.
///
/// # Errors
/// A value that is not finite.
pub fn convergence_figure(convergence: &Convergence, card: &ModelCard) -> Result<Option<Svg>, ReportError> {
    finite("error of a mesh", convergence.rows.iter().map(|row| row.error))?;
    let lines = lines(convergence);
    if lines.is_empty() {
        return Ok(None);
    }
    let mut canvas = Canvas::default();
    let message = wrapped(&message(convergence, &lines), LETTERS, 3);
    let level = TITLE.draw(&mut canvas, message, [LEFT, FIRST_LINE]);
    let level = SUBTITLE.draw(&mut canvas, wrapped(&card.name, 120, 2), [LEFT, level]);
    let axes = Axes::of(&lines, level + 30.0);
    axes.draw(&mut canvas);
    axes.draw_lines(&mut canvas, &lines);
    let bottom = axes.y.ends[0];
    if let Some(note) = card.invented_note() {
        canvas.label(NOTE.label(note, [LEFT, bottom + 66.0]));
    }
    let title = format!("{}: errors over elements", card.name);
    let words = "Relative error of each result over the number of elements, on logarithmic axes.";
    Ok(Some(canvas.finish([LEFT + AREA[0] + NAMES, bottom + 84.0], &title, words)))
}

/// A result with its errors, by rising number of elements.
struct ErrorLine {
    quantity: Quantity,
    points: Vec<[f64; 2]>,
    order: Option<f64>,
}

fn lines(convergence: &Convergence) -> Vec<ErrorLine> {
    let same = |a: &ConvergenceRow, b: &ConvergenceRow| a.quantity == b.quantity;
    let line = |rows: &[ConvergenceRow]| ErrorLine {
        quantity: rows[0].quantity,
        points: rows
            .iter()
            .filter(|row| row.error > LEAST)
            .map(|row| [row.elements as f64, row.error])
            .collect(),
        order: rows.iter().rev().find_map(|row| row.order),
    };
    let all = convergence.rows.chunk_by(same).map(line);
    all.filter(|line| line.points.len() > 1 && line.order.is_some()).collect()
}

fn message(convergence: &Convergence, lines: &[ErrorLine]) -> String {
    let orders: Vec<f64> = lines.iter().filter_map(|line| line.order).collect();
    let [low, high] =
        orders.iter().fold([f64::INFINITY, 0.0_f64], |[low, high], o| [low.min(*o), high.max(*o)]);
    let element = convergence.mesh.element.word();
    if high - low < 0.1 {
        return format!(
            "Errors of {element} elements fall with the power {:.2} of their number",
            0.5 * (low + high)
        );
    }
    format!("Errors of {element} elements fall with the powers {low:.2} to {high:.2} of their number")
}

struct Axes {
    x: LogAxis,
    y: LogAxis,
    /// Numbers of elements.
    counts: Vec<f64>,
}

impl Axes {
    fn of(lines: &[ErrorLine], top: f64) -> Self {
        let points = lines.iter().flat_map(|line| &line.points);
        let mut counts: Vec<f64> = points.clone().map(|[n, _]| *n).collect();
        counts.sort_by(f64::total_cmp);
        counts.dedup();
        let start = [[f64::INFINITY, 0.0_f64]; 2];
        let wider = |[low, high]: [f64; 2], value: f64| [low.min(value), high.max(value)];
        let [x, y] = points.fold(start, |[x, y], [n, error]| [wider(x, *n), wider(y, *error)]);
        Self {
            x: LogAxis { values: [x[0] / 1.15, 1.15 * x[1]], ends: [LEFT, LEFT + AREA[0]] },
            y: LogAxis { values: [y[0] / 2.0, 2.0 * y[1]], ends: [top + AREA[1], top] },
            counts,
        }
    }

    fn draw(&self, canvas: &mut Canvas) {
        let ([left, right], [bottom, top]) = (self.x.ends, self.y.ends);
        let grid = format!(r#"stroke="{GRID}" stroke-width="1""#);
        let decades = (self.y.values[1] / self.y.values[0]).log10();
        let every = (decades / 9.0).ceil().max(1.0) as i32;
        for error in self.y.rounds(if decades < 1.5 { &[1, 2, 5] } else { &[1] }) {
            let y = self.y.at(error);
            canvas.line([left, y], [right, y], &grid);
            if decades < 1.5 || error.log10().round() as i32 % every == 0 {
                let text = if decades < 1.5 { tick(error) } else { with_power(&format!("{error:e}")) };
                let text = text.trim_start_matches("1\u{d7}").to_owned();
                canvas.label(Label::new(text, [left - 8.0, y + 4.0]).size(12.0).end().color(MUTED));
            }
        }
        for count in &self.counts {
            let x = self.x.at(*count);
            canvas.line([x, top], [x, bottom], &grid);
            canvas.label(Label::new(tick(*count), [x, bottom + TO_NUMBERS]).size(12.0).middle().color(MUTED));
        }
        let frame = format!(r#"fill="none" stroke="{MUTED}" stroke-width="1""#);
        canvas.rectangle([left, top], [right - left, bottom - top], &frame);
        let middle = [0.5 * (left + right), bottom + 42.0];
        canvas.label(Label::new("Elements in each piece of the beam", middle).middle());
        canvas.label(Label::new("Relative error", [left - 64.0, 0.5 * (top + bottom)]).middle().turn(-90.0));
    }

    fn draw_lines(&self, canvas: &mut Canvas, lines: &[ErrorLine]) {
        let end = |line: &ErrorLine| line.points.last().map_or(0.0, |point| self.y.at(point[1]));
        let mut order: Vec<usize> = (0..lines.len()).collect();
        order.sort_by(|a, b| end(&lines[*a]).total_cmp(&end(&lines[*b])));
        let wanted: Vec<f64> = order.iter().map(|number| end(&lines[*number])).collect();
        for (number, level) in order.into_iter().zip(spread(&wanted, NAME)) {
            let (line, color) = (&lines[number], SERIES[number % SERIES.len()]);
            let at: Vec<Point> =
                line.points.iter().map(|[n, error]| [self.x.at(*n), self.y.at(*error)]).collect();
            canvas.polyline(&at, &format!(r#"stroke="{color}" stroke-width="2""#));
            at.iter().for_each(|at| canvas.disc(*at, 4.0, &format!(r##"fill="{color}" stroke="#ffffff""##)));
            let edge = self.x.ends[1];
            let last = at.last().copied().unwrap_or([edge, level]);
            canvas.line(last, [edge + 10.0, level], &format!(r#"stroke="{color}" stroke-width="0.8""#));
            let order = line.order.map_or(String::new(), |order| format!(", order {order:.2}"));
            let text = format!("{}{order}", line.quantity.words());
            canvas.label(Label::new(text, [edge + 14.0, level + 4.5]).color(color));
        }
    }
}
