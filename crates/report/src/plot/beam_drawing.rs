//! The beam itself: its outline, supports, foundation, masses and places.

use axlebow_beam::{Line, Span, StopSide, SupportKind};
use axlebow_units::Kind;

use super::beam_load::draw_loads;
use crate::number::Numbers;
use crate::panels::spread;
use crate::svg::palette::{FAINT, INK, MUTED, STEEL};
use crate::svg::{Canvas, Label, Point};

/// Half of the depth of a beam as drawn, at least and at most.
const HALF_DEPTH: [f64; 2] = [3.0, 14.0];
/// Size of the mark of a support.
const MARK: f64 = 16.0;
/// Distance of the springs of a foundation.
const SPRINGS: f64 = 34.0;
/// From the axis of the beam to the names of places.
const PLACES: f64 = 78.0;
/// Room that the name of a place takes.
const PLACE_WIDTH: f64 = 74.0;
/// Pieces of a taper as drawn.
const PIECES: usize = 8;

/// A beam on the canvas.
pub(crate) struct BeamDrawing<'a> {
    /// The beam.
    pub line: &'a Line,
    /// The reader's units.
    pub n: Numbers,
    /// Left end.
    pub left: f64,
    /// Right end.
    pub right: f64,
    /// Level of its axis.
    pub axis: f64,
}

impl BeamDrawing<'_> {
    /// Draws the beam.
    ///
    /// - `touches`: of each support, whether it touches; empty where nothing loads the beam
    pub fn draw(&self, canvas: &mut Canvas, touches: &[bool]) {
        let mut start = 0.0;
        for span in self.line.spans() {
            self.draw_span(canvas, span, start);
            start += span.length;
        }
        for (number, support) in self.line.supports().iter().enumerate() {
            let open = touches.get(number) == Some(&false);
            self.draw_support(canvas, self.across(support.at), (support.kind, open));
        }
        for mass in self.line.masses() {
            let at = [self.across(mass.at), self.axis];
            canvas.disc(at, 9.0, &format!(r##"fill="{INK}" stroke="#ffffff" stroke-width="1.5""##));
        }
        draw_loads(canvas, self);
        self.draw_places(canvas);
    }

    /// Where a place along the beam stands.
    pub fn across(&self, at: f64) -> f64 {
        self.left + (self.right - self.left) * at / self.line.length()
    }

    /// Half of the depth as drawn, to the scale of the length where that can be seen.
    fn half_depth(&self, span: &Span, share: f64) -> f64 {
        let fibers = span.section.at(share, span.elastic.poisson_ratio).fibers;
        let depth = fibers.map_or(0.0, |[top, bottom]| top + bottom);
        let drawn = 0.5 * depth * (self.right - self.left) / self.line.length();
        drawn.clamp(HALF_DEPTH[0], HALF_DEPTH[1])
    }

    fn draw_span(&self, canvas: &mut Canvas, span: &Span, start: f64) {
        let shares = (0..=PIECES).map(|piece| piece as f64 / PIECES as f64);
        let edge = |side: f64| {
            let point = move |share: f64| {
                [self.across(start + share * span.length), self.axis + side * self.half_depth(span, share)]
            };
            shares.clone().map(point).collect::<Vec<Point>>()
        };
        let (top, mut bottom) = (edge(-1.0), edge(1.0));
        bottom.reverse();
        let style = format!(r#"fill="{STEEL}" fill-opacity="0.45" stroke="{MUTED}" stroke-width="1""#);
        canvas.polygon(&[top, bottom].concat(), &style);
        if span.foundation > 0.0 {
            self.draw_foundation(canvas, [self.across(start), self.across(start + span.length)]);
        }
    }

    fn draw_foundation(&self, canvas: &mut Canvas, [from, to]: [f64; 2]) {
        let count = ((to - from) / SPRINGS).round().max(1.0);
        let top = self.axis + HALF_DEPTH[1];
        for number in 0..count as usize {
            let x = from + (to - from) * (number as f64 + 0.5) / count;
            draw_spring(canvas, [x, top], 24.0);
        }
        canvas.line([from, top + 24.0], [to, top + 24.0], &format!(r#"stroke="{MUTED}" stroke-width="1.5""#));
    }

    fn draw_support(&self, canvas: &mut Canvas, x: f64, (kind, open): (SupportKind, bool)) {
        let (level, line) = (self.axis + HALF_DEPTH[1], format!(r#"stroke="{INK}" stroke-width="1.6""#));
        match kind {
            SupportKind::Fixed { .. } => self.draw_wall(canvas, x, 0.0),
            SupportKind::Sliding { .. } => {
                self.draw_wall(canvas, x, 9.0);
                for rise in [-7.0, 7.0] {
                    let way = if x > 0.5 * (self.left + self.right) { 1.0 } else { -1.0 };
                    canvas.disc([x + way * 4.5, self.axis + rise], 4.0, &format!(r#"fill="none" {line}"#));
                }
            }
            SupportKind::Pinned { .. } => draw_triangle(canvas, [x, level], (1.0, INK)),
            SupportKind::Elastic { .. } => {
                draw_spring(canvas, [x, level], 30.0);
                draw_ground(canvas, [x, level + 30.0], 1.0);
            }
            SupportKind::Stop { side, .. } => {
                let way = if side == StopSide::Below { 1.0 } else { -1.0 };
                let gap = if open { 8.0 } else { 0.0 };
                let color = if open { FAINT } else { INK };
                draw_triangle(canvas, [x, self.axis + way * (HALF_DEPTH[1] + gap)], (way, color));
            }
        }
    }

    /// A wall beside the end of the beam, or through its middle.
    fn draw_wall(&self, canvas: &mut Canvas, x: f64, away: f64) {
        let way = if x > 0.5 * (self.left + self.right) { 1.0 } else { -1.0 };
        let x = x + way * away;
        canvas.line(
            [x, self.axis - 26.0],
            [x, self.axis + 26.0],
            &format!(r#"stroke="{INK}" stroke-width="2.5""#),
        );
        for step in 0..6 {
            let y = self.axis - 26.0 + 10.4 * f64::from(step);
            canvas.line([x, y], [x + way * 8.0, y + 8.0], &format!(r#"stroke="{MUTED}" stroke-width="1""#));
        }
    }

    /// Places of supports, span ends and masses, under the beam.
    fn draw_places(&self, canvas: &mut Canvas) {
        let mut places = self.line.span_ends();
        places.extend(self.line.supports().iter().map(|support| support.at));
        places.extend(self.line.masses().iter().map(|mass| mass.at));
        places.sort_by(f64::total_cmp);
        places.dedup_by(|later, earlier| (*later - *earlier).abs() < 1e-9 * self.line.length());
        let at: Vec<f64> = places.iter().map(|place| self.across(*place)).collect();
        let level = self.axis + PLACES;
        for ((place, at), x) in places.iter().zip(&at).zip(spread(&at, PLACE_WIDTH)) {
            let tick = format!(r#"stroke="{FAINT}" stroke-width="1""#);
            canvas.polyline(&[[*at, level - 22.0], [x, level - 13.0]], &tick);
            let text = self.n.short(*place, Kind::Length);
            canvas.label(Label::new(text, [x, level]).size(12.0).color(MUTED).middle());
        }
    }
}

/// A triangle whose tip touches the beam, on its ground; `way` is 1 below the beam and -1 above it.
fn draw_triangle(canvas: &mut Canvas, [x, y]: Point, (way, color): (f64, &str)) {
    let foot = y + way * MARK;
    let style = format!(r##"fill="#ffffff" stroke="{color}" stroke-width="1.6""##);
    canvas.polygon(&[[x, y], [x + 0.6 * MARK, foot], [x - 0.6 * MARK, foot]], &style);
    draw_ground(canvas, [x, foot], way);
}

fn draw_ground(canvas: &mut Canvas, [x, y]: Point, way: f64) {
    canvas.line([x - MARK, y], [x + MARK, y], &format!(r#"stroke="{INK}" stroke-width="1.6""#));
    for step in 0..5 {
        let from = x - MARK + 8.0 * f64::from(step);
        canvas.line([from, y], [from - 5.0, y + way * 6.0], &format!(r#"stroke="{MUTED}" stroke-width="1""#));
    }
}

/// A spring that hangs from a place.
fn draw_spring(canvas: &mut Canvas, [x, y]: Point, height: f64) {
    let turn = |number: usize| match number {
        0 => [x, y],
        9 => [x, y + height],
        number => [x + if number % 2 == 0 { -6.0 } else { 6.0 }, y + height * (number as f64 / 9.0)],
    };
    let points: Vec<Point> = (0..10).map(turn).collect();
    canvas.polyline(&points, &format!(r#"stroke="{INK}" stroke-width="1.3" stroke-linejoin="round""#));
}
