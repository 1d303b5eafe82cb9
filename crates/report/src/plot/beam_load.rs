//! Loads on the drawing of a beam.

use axlebow_beam::Load;
use axlebow_units::Kind;

use super::beam_drawing::BeamDrawing;
use crate::number::typographic;
use crate::panels::spread;
use crate::svg::palette::{MUTED, VERMILLION};
use crate::svg::{Canvas, Label, Point};

/// From the axis to the heads of arrows.
const HEAD: f64 = 17.0;
/// Length of a force's arrow.
const ARROW: f64 = 46.0;
/// Height of the largest load per length.
const HEIGHT: f64 = 34.0;
/// Distance of its arrows.
const APART: f64 = 46.0;
/// From the axis to the words over point loads, and to those over the others.
const WORDS: [f64; 2] = [82.0, 108.0];
/// Room that words take.
const WORD_WIDTH: f64 = 96.0;
/// Pieces of the line over them, so that it bends where the load changes its sign.
const PIECES: i32 = 40;
/// Shortest of them.
const SHORTEST: f64 = 11.0;
/// Radius of the arc of a moment.
const ARC: f64 = 20.0;

/// Words at a place along the canvas.
struct Words {
    at: f64,
    text: String,
}

/// Draws all loads with their sizes.
pub(super) fn draw_loads(canvas: &mut Canvas, beam: &BeamDrawing) {
    let loads = beam.line.loads();
    let largest = loads.iter().map(per_length).fold(0.0, f64::max);
    loads.iter().for_each(|load| draw_load(canvas, beam, (load, largest)));
    let is_point = |load: &&Load| matches!(load, Load::Force { .. } | Load::Moment { .. });
    for (level, of_points) in [(WORDS[0], true), (WORDS[1], false)] {
        let own = loads.iter().filter(|load| is_point(load) == of_points);
        let mut words: Vec<Words> = own.map(|load| words(beam, load)).collect();
        words.sort_by(|a, b| a.at.total_cmp(&b.at));
        let wanted: Vec<f64> = words.iter().map(|own| own.at).collect();
        for (own, x) in words.iter().zip(spread(&wanted, WORD_WIDTH)) {
            let label = Label::new(own.text.as_str(), [x, beam.axis - level]);
            canvas.label(label.middle().color(VERMILLION).halo());
        }
    }
}

/// The largest load per length of a load.
fn per_length(load: &Load) -> f64 {
    match load {
        Load::Distributed { start, end, .. } => start.abs().max(end.abs()),
        _ => 0.0,
    }
}

fn words(beam: &BeamDrawing, load: &Load) -> Words {
    let size = |value: f64, kind| typographic(&beam.n.short(value, kind));
    let line = |value: f64| size(value, Kind::Stiffness);
    let middle = |from: f64, to: f64| beam.across(0.5 * (from + to));
    let (at, text) = match *load {
        Load::Force { at, force } => (beam.across(at), size(force.abs(), Kind::Force)),
        Load::Moment { at, moment } => (beam.across(at), size(moment, Kind::Moment)),
        Load::Distributed { from, to, start, end } if start == end => (middle(from, to), line(start.abs())),
        Load::Distributed { from, to, start, end } => {
            (middle(from, to), format!("{} to {}", line(start), line(end)))
        }
        Load::Thermal { from, to, curvature } => {
            let hot = if curvature > 0.0 { "bottom" } else { "top" };
            (middle(from, to), format!("{hot} hotter"))
        }
        Load::Weight { .. } => (middle(0.0, beam.line.length()), "own weight".to_owned()),
    };
    Words { at, text }
}

fn draw_load(canvas: &mut Canvas, beam: &BeamDrawing, (load, largest): (&Load, f64)) {
    let head = beam.axis - HEAD;
    match *load {
        Load::Force { at, force } => {
            let (x, far) = (beam.across(at), head - ARROW);
            let (from, to) = if force < 0.0 { (far, head) } else { (head, far) };
            canvas.arrow([x, from], [x, to], VERMILLION);
        }
        Load::Moment { at, moment } => draw_moment(canvas, [beam.across(at), beam.axis], moment),
        Load::Distributed { from, to, start, end } => {
            let scale = HEIGHT / largest.max(f64::MIN_POSITIVE);
            draw_distributed(
                canvas,
                ([beam.across(from), beam.across(to)], head),
                [scale * start, scale * end],
            );
        }
        Load::Thermal { from, to, curvature } => {
            let level = beam.axis + HEAD * curvature.signum();
            let style = format!(r#"stroke="{VERMILLION}" stroke-width="2" stroke-dasharray="2 5""#);
            canvas.line([beam.across(from), level], [beam.across(to), level], &style);
        }
        Load::Weight { .. } => {
            let (from, to) = (beam.left, beam.right);
            let style = format!(r#"stroke="{MUTED}" stroke-width="1" stroke-dasharray="2 5""#);
            canvas.line([from, beam.axis], [to, beam.axis], &style);
        }
    }
}

/// Arrows along a stretch of the beam under the line of their sizes, upward positive.
fn draw_distributed(canvas: &mut Canvas, ([from, to], head): ([f64; 2], f64), [start, end]: [f64; 2]) {
    let count = ((to - from) / APART).round().max(1.0);
    let place = |share: f64| (from + share * (to - from), start + share * (end - start));
    let shares = (0..=PIECES).map(|piece| f64::from(piece) / f64::from(PIECES));
    let mut outline: Vec<Point> = shares.map(place).map(|(x, size)| [x, head - size.abs()]).collect();
    outline.extend([[to, head], [from, head]]);
    let style = format!(r#"fill="{VERMILLION}" fill-opacity="0.12" stroke="{VERMILLION}" stroke-width="1""#);
    canvas.polygon(&outline, &style);
    for number in 0..=count as usize {
        let (x, size) = place(number as f64 / count);
        if size.abs() > SHORTEST {
            let (tail, tip) = if size < 0.0 { (head + size, head) } else { (head, head - size) };
            canvas.arrow([x, tail], [x, tip], VERMILLION);
        }
    }
}

/// An arc about a place, its head where the moment turns to: counter-clockwise where it makes the beam rise along it.
fn draw_moment(canvas: &mut Canvas, [x, y]: Point, moment: f64) {
    let way = if moment < 0.0 { -1.0 } else { 1.0 };
    let point = |share: f64| {
        let angle = (-60.0 + 220.0 * share).to_radians();
        [x + way * ARC * angle.cos(), y - ARC * angle.sin()]
    };
    let arc: Vec<Point> = (0..=20).map(|step| point(f64::from(step) / 20.0)).collect();
    canvas.polyline(&arc[..20], &format!(r#"stroke="{VERMILLION}" stroke-width="2.2""#));
    canvas.arrow(arc[18], arc[20], VERMILLION);
}
