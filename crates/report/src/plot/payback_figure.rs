//! The figure of a payback: what each input does alone, and what has come in over the years.

use axlebow_study::{PaybackOutcome, Swing};

use crate::answer::payback_verdict;
use crate::number::{Numbers, tick, typographic};
use crate::panels::layout::{NOTE, PART_TITLE, STUDY_FIRST_LINE, STUDY_TITLE, TITLE_LINES};
use crate::panels::{Panel, Ticks, draw_axis, finite, levels, range_of};
use crate::svg::palette::{BLUE, FAINT, GRID, INK, MUTED, VERMILLION};
use crate::svg::{Canvas, Label, Point};
use crate::words::payback::{PaybackWords, input};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Left edge.
const LEFT: f64 = 50.0;
/// Room for the names of inputs.
const NAMES: f64 = 200.0;
/// Width of the bars' axis.
const BARS: f64 = 430.0;
/// Room beside each end of the bars for its value.
const VALUES: f64 = 96.0;
/// Height of a row of the bars.
const ROW: f64 = 30.0;
/// Inputs that are drawn at most.
const DRAWN: usize = 10;
/// From the bars to the curves, their axis numbers counted in.
const BETWEEN: f64 = 90.0;
/// Width of the curves.
const YEARS: f64 = 330.0;

/// Draws, left, a bar for each input from what its low to what its high value makes of the net present value, and right what
/// has come in less what was spent, plain and discounted.
///
/// # Errors
/// A value that is not finite.
pub fn payback_figure(outcome: &PaybackOutcome, card: &ModelCard) -> Result<Svg, ReportError> {
    let amounts = outcome.swings.iter().flat_map(|swing| swing.worth);
    let balances = outcome.cash_flow.balances.iter().flat_map(|own| [own.years, own.plain, own.discounted]);
    finite("amount of a payback", amounts.chain(balances))?;
    let words = PaybackWords { outcome, numbers: Numbers { system: card.system } };
    let mut canvas = Canvas::default();
    let top = draw_heading(&mut canvas, &words) + 34.0;
    let swings = &outcome.swings[..outcome.swings.len().min(DRAWN)];
    let high = ROW * swings.len().max(6) as f64;
    let left = [LEFT + NAMES + VALUES, top + 34.0];
    Tornado { words: &words, swings, corner: left, high }.draw(&mut canvas);
    draw_balances(&mut canvas, &words, [left[0] + BARS + VALUES + BETWEEN, left[1]], high);
    let bottom = left[1] + high + 66.0;
    let note = "Bars: the 5 % and 95 % points of an input's range, or, paler, a tenth less and more where it has none; all \
                others as in the file.";
    canvas.label(NOTE.label(note, [LEFT, bottom]));
    canvas.label(NOTE.label(card.invented_note().unwrap_or_default(), [LEFT, bottom + 18.0]));
    let size = [left[0] + BARS + VALUES + BETWEEN + YEARS + LEFT, bottom + 36.0];
    let description =
        "Bars of what each input does to the net present value, and curves of the balance over the years.";
    Ok(canvas.finish(size, &outcome.name, description).with_warnings(&outcome.warnings))
}

fn draw_heading(canvas: &mut Canvas, words: &PaybackWords<'_>) -> f64 {
    let title = wrapped(&words.outcome.name, 90, TITLE_LINES);
    let mut level = STUDY_TITLE.draw(canvas, title, [LEFT, STUDY_FIRST_LINE]) - STUDY_TITLE.step;
    for line in wrapped(&payback_verdict(words), 140, 2) {
        level += 21.0;
        canvas.label(Label::new(line, [LEFT, level]).size(14.0));
    }
    level
}

/// Bars of the inputs under one another.
struct Tornado<'a> {
    words: &'a PaybackWords<'a>,
    swings: &'a [Swing],
    corner: Point,
    high: f64,
}

impl Tornado<'_> {
    fn draw(&self, canvas: &mut Canvas) {
        let worth = self.words.outcome.cash_flow.net_present_value;
        let reach = self.swings.iter().flat_map(|swing| swing.worth).chain([0.0, worth]);
        let panel = Panel {
            corner: self.corner,
            size: [BARS, self.high],
            x: range_of(reach, 0.04),
            y: [0.0, 1.0],
            ticks: Ticks::Grid,
        };
        let title = format!("Net present value by each input alone, {}", self.words.outcome.currency);
        canvas.label(PART_TITLE.label(title, [LEFT, self.corner[1] - 20.0]));
        draw_axis(canvas, &panel);
        for (row, swing) in self.swings.iter().enumerate() {
            self.draw_bar(canvas, &panel, (swing, self.corner[1] + ROW * (row as f64 + 0.5)));
        }
        let x = panel.at(worth, 0.0)[0];
        let style = format!(r#"stroke="{INK}" stroke-width="1.4" stroke-dasharray="5 4""#);
        canvas.line([x, self.corner[1] - 6.0], [x, self.corner[1] + self.high], &style);
        let axis = format!("{} loses | brings in {}", '\u{2190}', '\u{2192}');
        let zero = panel.at(0.0, 0.0)[0];
        canvas.label(NOTE.label(axis, [zero, self.corner[1] + self.high + 36.0]).middle());
    }

    fn draw_bar(&self, canvas: &mut Canvas, panel: &Panel, (swing, middle): (&Swing, f64)) {
        let center = panel.at(self.words.outcome.cash_flow.net_present_value, 0.0)[0];
        let opacity = if swing.has_range { 0.85 } else { 0.35 };
        let ends = swing.worth.map(|worth| panel.at(worth, 0.0)[0]);
        for (x, color) in ends.into_iter().zip([BLUE, VERMILLION]) {
            let style = format!(r#"fill="{color}" fill-opacity="{opacity}""#);
            canvas.rectangle([x.min(center), middle - 9.0], [(x - center).abs().max(0.5), 18.0], &style);
        }
        canvas.label(Label::new(input(swing.input), [LEFT + NAMES - 12.0, middle + 4.5]).end());
        let value = |which: usize| typographic(&self.words.value(swing.input, swing.ends[which]));
        // The low value stands to the left where it makes less.
        let order = if swing.worth[0] <= swing.worth[1] { [0, 1] } else { [1, 0] };
        let colors = [BLUE, VERMILLION];
        let [left, right] = [self.corner[0] - 8.0, self.corner[0] + BARS + 8.0];
        canvas.label(
            Label::new(value(order[0]), [left, middle + 4.5]).size(12.0).end().color(colors[order[0]]),
        );
        canvas.label(Label::new(value(order[1]), [right, middle + 4.5]).size(12.0).color(colors[order[1]]));
    }
}

fn draw_balances(canvas: &mut Canvas, words: &PaybackWords<'_>, corner: Point, high: f64) {
    let balances = &words.outcome.cash_flow.balances;
    let last = balances.last().map_or(1.0, |own| own.years);
    let reach = balances.iter().flat_map(|own| [own.plain, own.discounted]).chain([0.0]);
    let panel = Panel {
        corner,
        size: [YEARS, high],
        x: [0.0, last.max(1e-9)],
        y: range_of(reach, 0.06),
        ticks: Ticks::Grid,
    };
    let title = format!("What has come in less what was spent, {}", words.outcome.currency);
    canvas.label(PART_TITLE.label(title, [corner[0] - 60.0, corner[1] - 20.0]));
    draw_axis(canvas, &panel);
    for value in levels(panel.y) {
        let y = panel.at(0.0, value)[1];
        let color = if value.abs() < 1e-9 { INK } else { GRID };
        canvas.line([corner[0], y], [corner[0] + YEARS, y], &format!(r#"stroke="{color}" stroke-width="1""#));
        canvas.label(Label::new(tick(value), [corner[0] - 8.0, y + 4.0]).size(12.0).end().color(MUTED));
    }
    let plain = balances.iter().map(|own| [own.years, own.plain]).collect();
    let discounted = balances.iter().map(|own| [own.years, own.discounted]).collect();
    let curves: [(Vec<Point>, &str, &str); 2] = [(plain, FAINT, "plain"), (discounted, BLUE, "discounted")];
    for (row, (curve, color, name)) in curves.into_iter().enumerate() {
        let points: Vec<Point> = curve.into_iter().map(|[years, amount]| panel.at(years, amount)).collect();
        canvas.polyline(&points, &format!(r#"stroke="{color}" stroke-width="2.4""#));
        let [x, y] = [corner[0] + 110.0 * row as f64, corner[1] + high + 52.0];
        canvas.line([x, y - 4.0], [x + 22.0, y - 4.0], &format!(r#"stroke="{color}" stroke-width="2.4""#));
        canvas.label(NOTE.label(name, [x + 28.0, y]));
    }
    let axis = [corner[0] + YEARS, corner[1] + high + 36.0];
    canvas.label(NOTE.label("years from today", axis).end());
}
