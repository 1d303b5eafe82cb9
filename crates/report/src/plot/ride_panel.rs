//! One quantity of a ride along the road.

use crate::ReportError;
use crate::number::{Numbers, Shown, typographic};
use crate::panels::{Panel, range_of};
use crate::svg::palette::{BLUE, INK, MUTED, SERIES, VERMILLION};
use crate::svg::{Canvas, Label, Point};

/// Room over the highest and under the lowest value, in shares of what they span, for their labels.
const ROOM: f64 = 0.25;
/// Half the width of a label at an extreme value, generous.
const HALF_LABEL: f64 = 48.0;
/// Narrowest shade.
const NARROWEST: f64 = 1.5;
/// An extreme value closer to the other one than this share of the axis is not worth a label.
const CLOSE: f64 = 0.05;

/// Whose line it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Owner {
    Left,
    Right,
    Axle,
}

impl Owner {
    fn color(self) -> &'static str {
        match self {
            Self::Left => BLUE,
            Self::Right => VERMILLION,
            Self::Axle => SERIES[3],
        }
    }

    /// SVG attributes of the line.
    pub fn style(self) -> String {
        let dash = if self == Self::Right { r#" stroke-dasharray="6 4""# } else { "" };
        format!(r#"stroke="{}" stroke-width="1.7" stroke-linejoin="round"{dash}"#, self.color())
    }

    /// SVG attributes of the shade where this wheel is off the road.
    pub fn shade(self) -> String {
        format!(r#"fill="{}" fill-opacity="0.22""#, self.color())
    }
}

/// SVG attributes of the level at rest.
pub(crate) fn rest_style() -> String {
    format!(r#"stroke="{MUTED}" stroke-width="1.2" stroke-dasharray="1.5 3""#)
}

/// SVG attributes of what was measured.
pub(crate) fn measured_style(owner: Owner) -> String {
    let dash = if owner == Owner::Right { r#" stroke-dasharray="5 3""# } else { "" };
    format!(r#"stroke="{INK}" stroke-opacity="0.75" stroke-width="1.1" stroke-linejoin="round"{dash}"#)
}

/// One quantity of a ride along the road, in SI.
#[derive(Debug, Clone)]
pub(crate) struct RidePanel {
    /// What is drawn.
    pub title: &'static str,
    /// What it is shown as.
    pub shown: Shown,
    /// The reader's units.
    pub numbers: Numbers,
    /// Distance in the reader's unit and value.
    pub lines: Vec<(Owner, Vec<Point>)>,
    /// What was measured, in the same way.
    pub measured: Vec<(Owner, Vec<Point>)>,
    /// Values at which a level is drawn.
    pub levels: Vec<f64>,
    /// Stretches of the road that are shaded, in the reader's unit.
    pub shades: Vec<(Owner, [f64; 2])>,
    /// Whether the axis starts at zero.
    pub from_zero: bool,
}

impl RidePanel {
    /// Draws the panel into a place on the canvas.
    pub fn draw(&self, canvas: &mut Canvas, place: Panel) -> Result<(), ReportError> {
        let panel = Panel { y: self.range(), ..place };
        panel.draw(canvas, &[])?;
        self.draw_shades(canvas, &panel);
        if panel.y[0] < 0.0 && panel.y[1] > 0.0 {
            let ends = panel.x.map(|x| panel.at(x, 0.0));
            canvas.line(ends[0], ends[1], &format!(r#"stroke="{INK}" stroke-width="0.8""#));
        }
        for level in &self.levels {
            let ends = panel.x.map(|x| panel.at(x, self.scaled(*level)));
            canvas.line(ends[0], ends[1], &rest_style());
        }
        for (owner, points) in &self.lines {
            let at = |&[x, value]: &Point| panel.at(x, self.scaled(value));
            let line: Vec<Point> = points.iter().map(at).collect();
            canvas.polyline(&line, &owner.style());
        }
        for (owner, points) in &self.measured {
            let line: Vec<Point> = points.iter().map(|&[x, value]| panel.at(x, self.scaled(value))).collect();
            canvas.polyline(&line, &measured_style(*owner));
        }
        self.draw_extremes(canvas, &panel);
        let title = self.numbers.heading(self.title, self.shown);
        canvas.label(Label::new(title, [panel.corner[0], panel.corner[1] - 10.0]).bold());
        Ok(())
    }

    fn range(&self) -> [f64; 2] {
        let drawn = self.lines.iter().chain(&self.measured);
        let values = drawn.flat_map(|(_, points)| points).map(|point| point[1]);
        let zero = self.from_zero.then_some(0.0);
        let all = values.chain(self.levels.iter().copied()).chain(zero);
        let [low, high] = range_of(all.map(|value| self.scaled(value)), ROOM);
        [if self.from_zero { 0.0 } else { low }, high]
    }

    /// Shades the upper half for the left wheel, the lower half for the right one.
    fn draw_shades(&self, canvas: &mut Canvas, panel: &Panel) {
        for (owner, [from, to]) in &self.shades {
            let [from, to] = [from, to].map(|x| panel.at(*x, panel.y[0])[0]);
            let half = 0.5 * panel.size[1];
            let top = panel.corner[1] + if *owner == Owner::Right { half } else { 0.0 };
            canvas.rectangle([from, top], [(to - from).max(NARROWEST), half], &owner.shade());
        }
    }

    /// Marks the highest and the lowest value of all lines, zero aside.
    fn draw_extremes(&self, canvas: &mut Canvas, panel: &Panel) {
        let (Some(high), Some(low)) = (self.extreme(1.0), self.extreme(-1.0)) else { return };
        let apart = self.scaled(high.1[1] - low.1[1]) > CLOSE * (panel.y[1] - panel.y[0]);
        let low = (apart && !self.from_zero).then_some((low, 19.0));
        let marks = [(high, -9.0)].into_iter().chain(low).filter(|((_, [_, value]), _)| *value != 0.0);
        for ((owner, [x, value]), drop) in marks {
            let at = panel.at(x, self.scaled(value));
            canvas.disc(at, 3.5, &format!(r##"fill="{}" stroke="#ffffff""##, owner.color()));
            let text = typographic(&self.numbers.full(value, self.shown));
            let edges = [panel.corner[0] + HALF_LABEL, panel.corner[0] + panel.size[0] - HALF_LABEL];
            let middle = at[0].max(edges[0]).min(edges[1]);
            canvas.label(Label::new(text, [middle, at[1] + drop]).middle().bold().halo());
        }
    }

    /// The first largest value (smallest, for a sign of -1) and whose it is.
    fn extreme(&self, sign: f64) -> Option<(Owner, Point)> {
        let all = self.lines.iter().flat_map(|(owner, points)| points.iter().map(|point| (*owner, *point)));
        all.reduce(|best, next| if sign * next.1[1] > sign * best.1[1] { next } else { best })
    }

    fn scaled(&self, value: f64) -> f64 {
        self.numbers.scaled(value, self.shown)
    }
}
