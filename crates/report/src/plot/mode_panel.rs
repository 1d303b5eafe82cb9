//! One natural mode: how the axle line moves, against position.

use axlebow_axle::{ModeOutcome, ShapePoint};

use crate::ReportError;
use crate::number::{Numbers, Shown, fixed, significant};
use crate::panels::{Panel, Ticks};
use crate::svg::palette::{BLUE, INK, MUTED, SERIES, STEEL, VERMILLION};
use crate::svg::{Canvas, Label, Point};

/// A motion smaller than this share of the largest one drawn is left out.
const SMALL: f64 = 0.02;
/// Share of the kinetic energy above which lateral motion is drawn.
const LATERAL: f64 = 0.25;
/// Share of the kinetic energy above which rotation about the axle line is drawn, and nothing else.
const TWIST: f64 = 0.5;
/// Share of the kinetic energy above which the vehicle body is drawn.
const BODY: f64 = 0.05;
/// Half the width of the vehicle body over the reach of the axle line.
const BODY_REACH: f64 = 0.5;
/// Points of a smooth line in each stretch.
const POINTS: usize = 8;
/// Vertical axis, in shares of the largest motion.
const RANGE: [f64; 2] = [-1.25, 1.25];

/// What a line shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Trace {
    Vertical,
    ForeAft,
    Lateral,
    Twist,
    Body,
}

impl Trace {
    /// Every line, in the order of the legend.
    pub const ALL: [Self; 5] = [Self::Vertical, Self::ForeAft, Self::Lateral, Self::Twist, Self::Body];

    /// Words of the legend.
    pub fn words(self) -> &'static str {
        match self {
            Self::Vertical => "vertical, from the rear",
            Self::ForeAft => "fore-aft, from above (forward is up)",
            Self::Lateral => "lateral (to the left is up)",
            Self::Twist => "rotation about the axle line",
            Self::Body => "vehicle body, vertical",
        }
    }

    /// SVG attributes of the line.
    pub fn style(self) -> String {
        let (color, more) = match self {
            Self::Vertical => (BLUE, r#"stroke-width="2.2""#),
            Self::ForeAft => (VERMILLION, r#"stroke-width="2.2" stroke-dasharray="7 4""#),
            Self::Lateral => (SERIES[2], r#"stroke-width="2.4" stroke-dasharray="2 3.5""#),
            Self::Twist => (SERIES[3], r#"stroke-width="2.4" stroke-dasharray="2 3.5""#),
            Self::Body => (STEEL, r#"stroke-width="5" stroke-opacity="0.6" stroke-linecap="round""#),
        };
        format!(r#"stroke="{color}" {more}"#)
    }

    /// Note inside a panel for what one does not expect there.
    fn note(self) -> Option<&'static str> {
        match self {
            Self::Lateral => Some("dotted: lateral"),
            Self::Twist => Some("dotted: rotation"),
            _ => None,
        }
    }

    /// Position and motion along the line, from left to right.
    ///
    /// Bending is drawn as cubics through displacement and slope, which leaves out shear between two points.
    fn points(self, mode: &ModeOutcome) -> Vec<Point> {
        let plain = |freedom: usize| mode.shape.iter().map(|p| [p.y, p.motion[freedom]]).collect();
        match self {
            Self::Vertical => smooth(&mode.shape, |motion| [motion[2], motion[3]]),
            Self::ForeAft => smooth(&mode.shape, |motion| [motion[0], -motion[5]]),
            Self::Lateral => plain(1),
            Self::Twist => plain(4),
            Self::Body => {
                let half = BODY_REACH * reach(mode);
                [half, -half].map(|y| [y, mode.body[0] + mode.body[1] * y]).into()
            }
        }
    }
}

/// One mode and its lines.
#[derive(Debug)]
pub(crate) struct ModePanel<'a> {
    mode: &'a ModeOutcome,
    /// The lines, at shares of the largest motion drawn.
    lines: Vec<(Trace, Vec<Point>)>,
}

impl<'a> ModePanel<'a> {
    /// The panel of a mode.
    pub fn new(mode: &'a ModeOutcome) -> Self {
        let motion = &mode.motion;
        let twists = motion.twist > TWIST;
        let wanted = |trace: &Trace| match trace {
            Trace::Twist => twists,
            Trace::Lateral => !twists && motion.lateral > LATERAL,
            Trace::Body => !twists && motion.body > BODY,
            Trace::Vertical | Trace::ForeAft => !twists,
        };
        let traces = Trace::ALL.into_iter().filter(wanted);
        let mut lines: Vec<(Trace, Vec<Point>)> = traces.map(|trace| (trace, trace.points(mode))).collect();
        let largest = lines.iter().map(|(_, points)| height(points)).fold(0.0, f64::max);
        if largest > 0.0 {
            lines.retain(|(_, points)| height(points) > SMALL * largest);
            lines.iter_mut().flat_map(|(_, points)| points).for_each(|point| point[1] /= largest);
        }
        ModePanel { mode, lines }
    }

    /// Whether it has such a line.
    pub fn shows(&self, trace: Trace) -> bool {
        self.lines.iter().any(|(shown, _)| *shown == trace)
    }

    /// Draws axes, lines and title.
    ///
    /// - `corner`, `size`: the area inside the axes
    pub fn draw(
        &self,
        canvas: &mut Canvas,
        numbers: Numbers,
        [corner, size]: [Point; 2],
    ) -> Result<(), ReportError> {
        let edge = numbers.scaled(1.06 * reach(self.mode), Shown::Place);
        let panel = Panel { corner, size, x: [edge, -edge], y: RANGE, ticks: Ticks::Grid };
        panel.draw(canvas, &[])?;
        let zero = [edge, -edge].map(|x| panel.at(x, 0.0));
        canvas.line(zero[0], zero[1], &format!(r#"stroke="{INK}" stroke-width="1""#));
        for (trace, points) in self.lines.iter().rev() {
            let at = |&[y, value]: &Point| panel.at(numbers.scaled(y, Shown::Place), value);
            let line: Vec<Point> = points.iter().map(at).collect();
            canvas.polyline(&line, &trace.style());
            if let Some(note) = trace.note() {
                draw_note(canvas, note, (line[line.len() / 2], zero[0][1]));
            }
            if *trace != Trace::Body {
                [line.first(), line.last()].into_iter().flatten().for_each(|end| draw_end(canvas, *end));
            }
        }
        self.draw_title(canvas, corner, size[0]);
        Ok(())
    }

    fn draw_title(&self, canvas: &mut Canvas, [x, y]: Point, width: f64) {
        let mode = self.mode;
        canvas.label(Label::new(mode.name.as_str(), [x, y - 10.0]).bold());
        let numbers = format!(
            "{} Hz, damping {} %",
            significant(mode.frequency, 4),
            fixed(100.0 * mode.damping_ratio, 1)
        );
        canvas.label(Label::new(numbers, [x + width, y - 10.0]).end().size(12.0));
    }
}

/// A note at the middle of a line, on the side of the zero line.
fn draw_note(canvas: &mut Canvas, note: &'static str, ([x, y], zero): (Point, f64)) {
    let level = if y < zero { y + 17.0 } else { y - 9.0 };
    canvas.label(Label::new(note, [x, level]).middle().size(11.0).color(MUTED).halo());
}

/// The mark of a spindle's end.
pub(crate) fn draw_end(canvas: &mut Canvas, at: Point) {
    canvas.disc(at, 3.2, &format!(r##"fill="#ffffff" stroke="{INK}" stroke-width="1.3""##));
}

/// Cubics through value and slope (against y) at each point.
fn smooth(shape: &[ShapePoint], value_and_slope: impl Fn(&[f64; 6]) -> [f64; 2]) -> Vec<Point> {
    let Some(first) = shape.first() else { return Vec::new() };
    let mut line = vec![[first.y, value_and_slope(&first.motion)[0]]];
    for pair in shape.windows(2) {
        let [from, to] = [0, 1].map(|i| value_and_slope(&pair[i].motion));
        let run = pair[1].y - pair[0].y;
        for i in 1..=POINTS {
            let t = i as f64 / POINTS as f64;
            let s = 1.0 - t;
            let ends = s * s * (1.0 + 2.0 * t) * from[0] + t * t * (1.0 + 2.0 * s) * to[0];
            let slopes = s * s * t * from[1] - t * t * s * to[1];
            line.push([pair[0].y + t * run, ends + run * slopes]);
        }
    }
    line
}

/// Largest distance of the axle line from the middle.
fn reach(mode: &ModeOutcome) -> f64 {
    mode.shape.iter().map(|point| point.y.abs()).fold(0.0, f64::max)
}

fn height(points: &[Point]) -> f64 {
    points.iter().map(|point| point[1].abs()).fold(0.0, f64::max)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cubic_is_drawn_as_itself() {
        let cubic = |y: f64| y * y * y - 2.0 * y;
        let point = |y: f64| ShapePoint { y, motion: [0.0, 0.0, cubic(y), 3.0 * y * y - 2.0, 0.0, 0.0] };
        let line = smooth(&[1.5, 0.2, -1.0].map(point), |motion| [motion[2], motion[3]]);
        assert_eq!(line.len(), 2 * POINTS + 1);
        assert!(line.iter().all(|[y, value]| (value - cubic(*y)).abs() < 1e-14));
    }
}
