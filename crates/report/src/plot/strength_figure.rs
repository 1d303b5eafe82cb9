//! Bars: how much of its limit each check uses, stretch by stretch along the axle.

use axlebow_axle::{Axle, PlacedCheck, Side, StrengthOutcome};
use axlebow_strength::Verdict;

use super::not_made::draw_not_made;
use crate::answer::plain;
use crate::number::fixed;
use crate::panels::finite;
use crate::panels::layout::{FIRST_LINE, NOTE, TITLE, TITLE_LINES};
use crate::panels::{Panel, Ticks, draw_axis};
use crate::svg::palette::{BLUE, INK, MUTED, ORANGE, VERMILLION};
use crate::svg::{Canvas, Label};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Left edge.
const LEFT: f64 = 50.0;
/// Room for what is checked and where.
const NAMES: f64 = 430.0;
/// Width of the area inside the axes.
const AREA: f64 = 460.0;
/// Room to the right for numbers and cases.
const RIGHT: f64 = 230.0;
/// Height of a row.
const ROW: f64 = 22.0;
/// Most checks of one stretch that are drawn.
const MOST: usize = 5;
/// Least and greatest share of a limit at the right end of the axis, %: a longer bar is cut there.
const AXIS: [f64; 2] = [110.0, 250.0];
/// Letters of a name.
const LETTERS: usize = 64;
/// A station at the edge of a seat or at the end of the tube is one of it, m.
const EDGE: f64 = 1e-6;

/// Draws, for each stretch of the axle from left to right, a bar for each of the checks that use most of their limits, the
/// worst first, each in the load case that uses most; the limit at 100 %; what was not made under it.
///
/// # Errors
/// A value that is not finite.
pub fn strength_figure(
    (outcome, axle): (&StrengthOutcome, &Axle),
    card: &ModelCard,
) -> Result<Svg, ReportError> {
    let bars = bars(outcome);
    finite("use of a limit", bars.iter().map(|bar| bar.used))?;
    let mut canvas = Canvas::default();
    let title = wrapped(&card.name, 72, TITLE_LINES);
    let level = TITLE.draw(&mut canvas, title, [LEFT, FIRST_LINE]) - TITLE.step;
    canvas.label(NOTE.label(said(&bars), [LEFT, level + 22.0]));
    let rows = rows(&bars, axle);
    let most = bars.iter().map(|bar| 1.04 * bar.used).fold(AXIS[0], f64::max).min(AXIS[1]);
    let corner = [LEFT + NAMES, level + 84.0];
    let size = [AREA, ROW * rows.len() as f64];
    let panel = Panel { corner, size, x: [0.0, most], y: [0.0, 1.0], ticks: Ticks::Grid };
    canvas.label(Label::new("share of the limit that is used, %", [corner[0], corner[1] - 28.0]).bold());
    canvas.label(Label::new("worst case", [corner[0] + AREA + 62.0, corner[1] - 28.0]).color(MUTED));
    draw_axis(&mut canvas, &panel);
    for (number, row) in rows.iter().enumerate() {
        row.draw(&mut canvas, &panel, corner[1] + ROW * (number as f64 + 0.5));
    }
    draw_limit(&mut canvas, &panel);
    let foot = corner[1] + size[1] + 46.0;
    let level = draw_foot(&mut canvas, (outcome, card), foot);
    let title = format!("{}: strength", card.name);
    let words = "Bars of how much of its limit each check uses, by place along the axle.";
    Ok(canvas.finish([LEFT + NAMES + AREA + RIGHT, level], &title, words))
}

/// A check in the load case that uses most of its limit.
struct Bar<'a> {
    placed: &'a PlacedCheck,
    case: Option<&'a str>,
    /// %.
    used: f64,
    /// Whether no other check uses more of its limit.
    worst: bool,
}

/// Each check once, the worst first.
fn bars(outcome: &StrengthOutcome) -> Vec<Bar<'_>> {
    let free = outcome.walls.iter().chain(&outcome.bearings).map(|placed| (placed, None));
    let cases = outcome.cases.iter();
    let under = cases.flat_map(|case| case.checks.iter().map(|placed| (placed, Some(case.name.as_str()))));
    let mut bars: Vec<Bar<'_>> = Vec::new();
    for (placed, case) in free.chain(under) {
        let bar = Bar { placed, case, used: 100.0 * placed.check.utilization(), worst: false };
        let same = |own: &&mut Bar<'_>| {
            own.placed.place == placed.place && own.placed.check.what == placed.check.what
        };
        match bars.iter_mut().find(same) {
            Some(own) if bar.used > own.used => *own = bar,
            Some(_) => {}
            None => bars.push(bar),
        }
    }
    bars.sort_by(|a, b| b.used.total_cmp(&a.used));
    if let Some(first) = bars.first_mut() {
        first.worst = true;
    }
    bars
}

fn said(bars: &[Bar<'_>]) -> String {
    let Some(worst) = bars.first() else { return "Nothing could be checked.".to_owned() };
    format!(
        "How much of its limit each check uses, from the left end of the axle to the right; most, {} %, by the {}.",
        fixed(worst.used, 0),
        worst.name()
    )
}

/// A line of the figure.
enum Row<'a> {
    Heading(String),
    Bar(&'a Bar<'a>),
}

/// A stretch of the axle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Stretch {
    Spindle(Side),
    Outside(Side),
    Seat(Side),
    Between,
    Whole,
}

impl Stretch {
    /// From left to right, what has no place last.
    const ALL: [Stretch; 8] = [
        Stretch::Spindle(Side::Left),
        Stretch::Outside(Side::Left),
        Stretch::Seat(Side::Left),
        Stretch::Between,
        Stretch::Seat(Side::Right),
        Stretch::Outside(Side::Right),
        Stretch::Spindle(Side::Right),
        Stretch::Whole,
    ];

    /// Where a position (m, left positive) lies.
    fn at(y: Option<f64>, axle: &Axle) -> Self {
        let Some(y) = y else { return Stretch::Whole };
        let side = if y >= 0.0 { Side::Left } else { Side::Right };
        let (out, seat) = (y.abs() + EDGE, axle.seats.of(side));
        match out {
            out if out >= axle.body.tube_end() => Stretch::Spindle(side),
            out if out > seat.outer_edge() + 2.0 * EDGE => Stretch::Outside(side),
            out if out >= seat.inner_edge() => Stretch::Seat(side),
            _ => Stretch::Between,
        }
    }

    fn words(self) -> String {
        match self {
            Stretch::Spindle(side) => format!("{} spindle and its bearings", side.word()),
            Stretch::Outside(side) => format!("outside the {} seat", side.word()),
            Stretch::Seat(side) => format!("{} seat", side.word()),
            Stretch::Between => "between the seats".to_owned(),
            Stretch::Whole => "parts as a whole".to_owned(),
        }
    }
}

fn rows<'a>(bars: &'a [Bar<'a>], axle: &Axle) -> Vec<Row<'a>> {
    let stretch = |stretch: Stretch| {
        let own = || bars.iter().filter(|bar| Stretch::at(bar.placed.y, axle) == stretch);
        let left_out = own().count().saturating_sub(MOST);
        let more = if left_out > 0 { format!(" ({left_out} more use less)") } else { String::new() };
        let heading = own().next().map(|_| Row::Heading(stretch.words() + &more));
        heading.into_iter().chain(own().take(MOST).map(Row::Bar)).collect::<Vec<_>>()
    };
    Stretch::ALL.into_iter().flat_map(stretch).collect()
}

impl Row<'_> {
    fn draw(&self, canvas: &mut Canvas, panel: &Panel, middle: f64) {
        match self {
            Row::Heading(words) => canvas.label(Label::new(words, [LEFT, middle + 5.5]).bold()),
            Row::Bar(bar) => bar.draw(canvas, panel, middle),
        }
    }
}

impl Bar<'_> {
    fn name(&self) -> String {
        format!("{} at {}", self.placed.check.what, plain(&self.placed.place))
    }

    fn color(&self) -> &'static str {
        match self.placed.check.verdict() {
            Verdict::Passes => BLUE,
            Verdict::Watch => ORANGE,
            Verdict::Fails => VERMILLION,
        }
    }

    fn draw(&self, canvas: &mut Canvas, panel: &Panel, middle: f64) {
        let [from, to] = [0.0, self.used.min(panel.x[1])].map(|value| panel.at(value, 0.0)[0]);
        let style = format!(r#"fill="{}" fill-opacity="0.85""#, self.color());
        canvas.rectangle([from, middle - 7.0], [(to - from).max(1.0), 14.0], &style);
        let bold = |label: Label| if self.worst { label.bold() } else { label };
        let name = wrapped(&self.name(), LETTERS, 1).concat();
        canvas.label(bold(Label::new(name, [LEFT + NAMES - 12.0, middle + 4.5]).size(12.0).end()));
        let right = LEFT + NAMES + AREA;
        canvas.label(bold(Label::new(fixed(self.used, 0), [right + 44.0, middle + 4.5]).end()));
        let case = self.case.unwrap_or("-");
        canvas.label(Label::new(case, [right + 62.0, middle + 4.5]).size(12.0).color(MUTED));
    }
}

/// The limit, across all rows.
fn draw_limit(canvas: &mut Canvas, panel: &Panel) {
    let [x, _] = panel.at(100.0, 0.0);
    let [top, bottom] = [panel.corner[1], panel.corner[1] + panel.size[1]];
    canvas.line([x, top - 6.0], [x, bottom], &format!(r#"stroke="{INK}" stroke-width="1.6""#));
    canvas.label(Label::new("limit", [x, top - 10.0]).size(12.0).middle().color(INK));
}

/// What the colors mean, what was not made, and whether the input is invented; gives back where the next line would be.
fn draw_foot(canvas: &mut Canvas, (outcome, card): (&StrengthOutcome, &ModelCard), mut level: f64) -> f64 {
    let colors = "Blue: within the limit. Yellow: past a limit that only advises. Orange: past a binding limit, so that the axle fails.";
    for note in [colors.to_owned()].into_iter().chain(card.invented_note()) {
        canvas.label(NOTE.label(note, [LEFT, level]));
        level += NOTE.step;
    }
    draw_not_made(canvas, &outcome.not_made, [LEFT, level + 6.0])
}
