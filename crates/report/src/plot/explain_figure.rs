//! Bars of how probable each cause of a worn tire is, and its ribs as seen and predicted.

use axlebow_axle::{Side, TireSlot};
use axlebow_study::{ExplainOutcome, SeenRib, Verdict};
use axlebow_units::Kind;

use crate::answer::explain_answer;
use crate::number::{Numbers, fixed};
use crate::panels::layout::{FIRST_LINE, NOTE, PART_TITLE, SUBTITLE, TITLE, TITLE_LINES};
use crate::panels::{Panel, Ticks, draw_axis, finite, levels, range_of};
use crate::svg::palette::{BLUE, GRID, INK, MUTED, VERMILLION};
use crate::svg::{Canvas, Label, Point};
use crate::words::explain::cause;
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Left edge, room for the names of causes, width of the bars.
const LEFT: f64 = 50.0;
const NAMES: f64 = 200.0;
const AREA: f64 = 300.0;
/// Height of a row.
const ROW: f64 = 26.0;
/// Most causes that are drawn.
const MOST: usize = 10;
/// Left edge of the ribs, width and height of a tire's panel, room between two.
const RIBS: f64 = 690.0;
const TIRE: [f64; 2] = [210.0, 150.0];
const BETWEEN: [f64; 2] = [66.0, 74.0];
/// Width of the figure.
const WIDTH: f64 = 1200.0;

/// Draws the probability of each cause beside the ribs of each tire that was measured.
///
/// # Errors
/// A value that is not finite.
pub fn explain_figure(outcome: &ExplainOutcome, card: &ModelCard) -> Result<Svg, ReportError> {
    finite("probability", outcome.causes.iter().map(|own| own.posterior))?;
    finite("depth", outcome.ribs.iter().flat_map(|own| [own.seen, own.predicted]))?;
    let mut canvas = Canvas::default();
    let title = wrapped(&card.name, 72, TITLE_LINES);
    let level = TITLE.draw(&mut canvas, title, [LEFT, FIRST_LINE]);
    let said = explain_answer(outcome, card).into_iter().next().unwrap_or_default();
    let top = SUBTITLE.draw(&mut canvas, wrapped(&said, 140, 3), [LEFT, level]) + 22.0;
    let bars = draw_causes(&mut canvas, outcome, top);
    let ribs = draw_tires(&mut canvas, outcome, (top, Numbers { system: card.system }));
    let mut level = bars.max(ribs) + 24.0;
    for note in foot(outcome).into_iter().chain(card.invented_note()) {
        level = NOTE.draw(&mut canvas, wrapped(&note, 170, 3), [LEFT, level]);
    }
    let about = "Bars of the probability of causes, and tread depths as seen and as the most probable cause predicts.";
    Ok(canvas.finish([WIDTH, level + 6.0], &format!("{}: causes", card.name), about))
}

fn foot(outcome: &ExplainOutcome) -> [String; 1] {
    let told = match outcome.verdict {
        Verdict::Leads => "",
        _ => " No cause leads: the predicted depths are those of the first.",
    };
    let leader = cause(outcome.leader().cause);
    [format!(
        "Vertical tick: probability before the readings. Dots: measured; line: as {leader} predicts.{told}"
    )]
}

/// The bars; gives back where they end.
fn draw_causes(canvas: &mut Canvas, outcome: &ExplainOutcome, top: f64) -> f64 {
    let shown = &outcome.causes[..outcome.causes.len().min(MOST)];
    let corner = [LEFT + NAMES, top + 40.0];
    let size = [AREA, ROW * shown.len() as f64];
    let panel = Panel { corner, size, x: [0.0, 100.0], y: [0.0, 1.0], ticks: Ticks::Grid };
    canvas.label(PART_TITLE.label("Probability of each cause, %", [LEFT, top]));
    draw_axis(canvas, &panel);
    for (number, own) in shown.iter().enumerate() {
        let middle = corner[1] + ROW * (number as f64 + 0.5);
        let at = |share: f64| panel.at(100.0 * share, 0.0)[0];
        let fill = if number == 0 && outcome.verdict == Verdict::Leads { VERMILLION } else { BLUE };
        let width = (at(own.posterior) - corner[0]).max(1.0);
        canvas.rectangle(
            [corner[0], middle - 8.0],
            [width, 16.0],
            &format!(r#"fill="{fill}" fill-opacity="0.85""#),
        );
        let prior = format!(r#"stroke="{INK}" stroke-width="1.5""#);
        canvas.line([at(own.prior), middle - 11.0], [at(own.prior), middle + 11.0], &prior);
        canvas.label(Label::new(cause(own.cause), [corner[0] - 12.0, middle + 4.5]).end());
        let right = [corner[0] + AREA + 52.0, middle + 4.5];
        canvas.label(Label::new(fixed(100.0 * own.posterior, 1), right).end());
    }
    corner[1] + size[1] + 34.0
}

/// The tires, two a row; gives back where they end.
fn draw_tires(canvas: &mut Canvas, outcome: &ExplainOutcome, (top, n): (f64, Numbers)) -> f64 {
    let mut tires: Vec<(Side, TireSlot)> = Vec::new();
    for own in &outcome.ribs {
        if !tires.contains(&(own.side, own.slot)) {
            tires.push((own.side, own.slot));
        }
    }
    canvas.label(PART_TITLE.label(format!("Tread depth, {}", n.unit(Kind::Length)), [RIBS, top]));
    let depths = outcome.ribs.iter().flat_map(|own| [own.seen, own.predicted]);
    let y = range_of(depths.map(|depth| n.scaled(depth, Kind::Length)).chain([0.0]), 0.06);
    let mut end = top;
    for (number, (side, slot)) in tires.into_iter().enumerate() {
        let (column, row) = ((number % 2) as f64, (number / 2) as f64);
        let corner = [RIBS + column * (TIRE[0] + BETWEEN[0]), top + 34.0 + row * (TIRE[1] + BETWEEN[1])];
        let own: Vec<&SeenRib> =
            outcome.ribs.iter().filter(|rib| (rib.side, rib.slot) == (side, slot)).collect();
        canvas.label(Label::new(slot.of_side(side.word()), [corner[0], corner[1] - 8.0]).bold());
        draw_tire(canvas, &own, (corner, y, n));
        end = corner[1] + TIRE[1] + 42.0;
    }
    end
}

fn draw_tire(canvas: &mut Canvas, ribs: &[&SeenRib], (corner, y, n): (Point, [f64; 2], Numbers)) {
    let last = ribs.iter().map(|own| own.rib).max().unwrap_or(1) as f64;
    let level = |depth: f64| corner[1] + TIRE[1] * (y[1] - depth) / (y[1] - y[0]);
    let place = |rib: usize| corner[0] + TIRE[0] * (rib as f64 - 0.5) / last;
    for depth in levels(y) {
        let at = level(depth);
        canvas.line([corner[0], at], [corner[0] + TIRE[0], at], &format!(r#"stroke="{GRID}""#));
        let decimals = if y[1] > 2.0 { 1 } else { 2 };
        let label = Label::new(fixed(depth, decimals), [corner[0] - 6.0, at + 4.0]);
        canvas.label(label.end().size(11.0).color(MUTED));
    }
    let depth = |own: f64| level(n.scaled(own, Kind::Length));
    let line: Vec<Point> = ribs.iter().map(|own| [place(own.rib), depth(own.predicted)]).collect();
    canvas.polyline(&line, &format!(r#"stroke="{VERMILLION}" stroke-width="2""#));
    for own in ribs {
        canvas.disc([place(own.rib), depth(own.seen)], 4.0, &format!(r#"fill="{INK}""#));
    }
    let under = corner[1] + TIRE[1] + 16.0;
    canvas.label(Label::new("inner shoulder", [corner[0], under]).size(11.0).color(MUTED));
    canvas.label(Label::new("outer", [corner[0] + TIRE[0], under]).end().size(11.0).color(MUTED));
}
