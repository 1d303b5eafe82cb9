//! Readings with their error bars beside the model, before and after the fit.

use axlebow_model::ReadQuantity;
use axlebow_study::{FitOutcome, FittedReading};

use crate::number::{Numbers, Shown, typographic, with_sign};
use crate::panels::draw_axis;
use crate::panels::finite;
use crate::panels::layout::{FIRST_LINE, NOTE, TITLE, TITLE_LINES};
use crate::panels::{Panel, Ticks, range_of};
use crate::svg::palette::{BLUE, FAINT, INK, MUTED, VERMILLION};
use crate::svg::{Canvas, Label, Point};
use crate::words::fit::{full, shown, thing};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Left edge.
const LEFT: f64 = 50.0;
/// Room for the names of readings.
const NAMES: f64 = 330.0;
/// Width of the area inside the axes.
const AREA: f64 = 520.0;
/// Height of a row.
const ROW: f64 = 28.0;
/// Room to the right for values.
const RIGHT: f64 = 130.0;
/// Standard errors to each end of an error bar: 95 % of the normal distribution.
const BAR: f64 = 1.96;

/// Draws every reading in a row, quantities under one another: a disc for what was read with a bar of 1.96 standard errors
/// to each side, a stroke for the fitted model, a faint ring for the model before.
///
/// # Errors
/// A value that is not finite.
pub fn fit_figure(outcome: &FitOutcome, card: &ModelCard) -> Result<Svg, ReportError> {
    let numbers = outcome.readings.iter().flat_map(|own| [own.reading.value, own.first, own.fitted]);
    finite("reading", numbers)?;
    let mut canvas = Canvas::default();
    let mut level = draw_heading(&mut canvas, outcome, card) + 18.0;
    let n = Numbers { system: card.system };
    for rows in alike(&outcome.readings) {
        level = Rows { kind: shown(&rows[0].reading.quantity), rows, n }.draw(&mut canvas, level);
    }
    if let Some(note) = card.invented_note() {
        level += 20.0;
        canvas.label(NOTE.label(note, [LEFT, level]));
    }
    let size = [LEFT + NAMES + AREA + RIGHT, level + 18.0];
    let title = format!("{}: fit", card.name);
    Ok(canvas.finish(size, &title, "Readings with error bars beside the model, before and after its fit."))
}

/// Readings that share an axis, in the order in which they come; each mode has its own, because frequencies lie far apart.
fn alike(readings: &[FittedReading]) -> Vec<Vec<&FittedReading>> {
    let mut groups: Vec<Vec<&FittedReading>> = Vec::new();
    for own in readings {
        match groups.iter_mut().find(|group| title(group[0]) == title(own)) {
            Some(group) => group.push(own),
            None => groups.push(vec![own]),
        }
    }
    groups
}

/// What an axis carries.
fn title(own: &FittedReading) -> String {
    match &own.reading.quantity {
        ReadQuantity::NaturalFrequency(_) => thing(&own.reading.quantity),
        other => other.word().replace('-', " "),
    }
}

fn draw_heading(canvas: &mut Canvas, outcome: &FitOutcome, card: &ModelCard) -> f64 {
    let n = Numbers { system: card.system };
    let title = wrapped(&card.name, 66, TITLE_LINES);
    let mut level = TITLE.draw(canvas, title, [LEFT, FIRST_LINE]) - TITLE.step;
    level += 8.0;
    for own in &outcome.unknowns {
        let show = |value: f64| typographic(&n.full(value, Shown::Free(own.unknown.kind)));
        let interval = match own.interval {
            Some([low, high]) => format!("95 % from {} to {}", show(low), show(high)),
            None => "not identifiable from these readings".to_owned(),
        };
        level += 18.0;
        let line = format!(
            "{}: {} ({interval}), initial value {}",
            own.unknown.path,
            show(own.value),
            show(own.unknown.start)
        );
        canvas.label(Label::new(line, [LEFT, level]));
    }
    level += 26.0;
    draw_legend(canvas, level);
    level
}

fn draw_legend(canvas: &mut Canvas, level: f64) {
    let entries: [(Mark, &str, f64); 3] = [
        (Mark::Read, "read, with 1.96 standard errors to each side", 0.0),
        (Mark::Fitted, "fitted model", 330.0),
        (Mark::First, "initial value", 470.0),
    ];
    for (mark, words, along) in entries {
        let x = LEFT + 16.0 + along;
        mark.draw(canvas, [x, level - 4.5], 14.0);
        canvas.label(NOTE.label(words, [x + 22.0, level]));
    }
}

/// What stands in a row.
#[derive(Debug, Clone, Copy)]
enum Mark {
    Read,
    Fitted,
    First,
}

impl Mark {
    /// Draws the mark; `half` is half of the length of a bar.
    fn draw(self, canvas: &mut Canvas, [x, y]: Point, half: f64) {
        match self {
            Mark::Read => {
                let style = format!(r#"stroke="{INK}" stroke-width="1.4""#);
                canvas.line([x - half, y], [x + half, y], &style);
                for end in [x - half, x + half] {
                    canvas.line([end, y - 4.0], [end, y + 4.0], &style);
                }
                canvas.disc([x, y], 4.0, &format!(r#"fill="{BLUE}""#));
            }
            Mark::Fitted => {
                let style = format!(r#"stroke="{VERMILLION}" stroke-width="2.6""#);
                canvas.line([x, y - 9.0], [x, y + 9.0], &style);
            }
            Mark::First => {
                canvas.disc([x, y], 4.5, &format!(r##"fill="#ffffff" stroke="{FAINT}" stroke-width="1.8""##));
            }
        }
    }
}

/// Readings of one unit.
struct Rows<'a> {
    rows: Vec<&'a FittedReading>,
    kind: Shown,
    n: Numbers,
}

impl Rows<'_> {
    fn draw(&self, canvas: &mut Canvas, top: f64) -> f64 {
        let scaled = |value: f64| self.n.scaled(value, self.kind);
        let reach = self.rows.iter().flat_map(|own| {
            let bar = BAR * own.reading.standard_error;
            [own.reading.value - bar, own.reading.value + bar, own.first, own.fitted]
        });
        let corner = [LEFT + NAMES, top + 30.0];
        let panel = Panel {
            corner,
            size: [AREA, ROW * self.rows.len() as f64],
            x: range_of(reach.map(scaled), 0.05),
            y: [0.0, 1.0],
            ticks: Ticks::Grid,
        };
        canvas.label(Label::new(self.n.heading(&title(self.rows[0]), self.kind), [LEFT, top + 16.0]).bold());
        let right = corner[0] + AREA + RIGHT - 20.0;
        canvas.label(Label::new("read less fitted", [right, top + 16.0]).size(12.0).end().color(MUTED));
        draw_axis(canvas, &panel);
        for (row, own) in self.rows.iter().enumerate() {
            self.draw_row(canvas, &panel, (own, corner[1] + ROW * (row as f64 + 0.5)));
        }
        corner[1] + panel.size[1] + 34.0
    }

    fn draw_row(&self, canvas: &mut Canvas, panel: &Panel, (own, middle): (&FittedReading, f64)) {
        let x = |value: f64| panel.at(self.n.scaled(value, self.kind), 0.0)[0];
        let read = x(own.reading.value);
        Mark::First.draw(canvas, [x(own.first), middle], 0.0);
        Mark::Read.draw(
            canvas,
            [read, middle],
            x(own.reading.value + BAR * own.reading.standard_error) - read,
        );
        Mark::Fitted.draw(canvas, [x(own.fitted), middle], 0.0);
        let reading = &own.reading;
        let name = wrapped(&full(reading), 48, 1).concat();
        canvas.label(Label::new(name, [LEFT + NAMES - 12.0, middle + 4.5]).end());
        let residual = with_sign(&self.n.full(own.residual(), self.kind));
        let right = panel.corner[0] + AREA + RIGHT - 20.0;
        canvas.label(Label::new(residual, [right, middle + 4.5]).end().color(MUTED));
    }
}
