//! A resultant or stress along the axle.

use crate::ReportError;
use crate::number::{Numbers, Shown, typographic};
use crate::panels::{Curve, Panel, range_of};
use crate::svg::palette::INK;
use crate::svg::{Canvas, Label, Point};

/// Values within this share of the extreme one belong to the same flat top.
const FLAT: f64 = 1e-3;
/// A diagram reaches at least so far, in display units, so that round-off stays flat.
const SMALLEST_RANGE: f64 = 1e-3;
/// An extreme smaller than this share of the other one is not worth a label.
const SMALL: f64 = 0.02;

/// A resultant or stress along the axle, in SI.
#[derive(Debug, Clone)]
pub(crate) struct Diagram<'a> {
    /// What is drawn.
    pub title: &'a str,
    /// What it is shown as.
    pub shown: Shown,
    /// The reader's units.
    pub numbers: Numbers,
    /// Position and value, from left to right; two points share a position at a jump.
    pub points: Vec<Point>,
    /// A second line without filling, of the same kind.
    pub second: Option<Vec<Point>>,
    /// Color of line and filling.
    pub color: &'static str,
}

impl Diagram<'_> {
    /// Draws the diagram into a place on the canvas; gives back the axes that it chose.
    pub fn draw(&self, canvas: &mut Canvas, place: Panel) -> Result<Panel, ReportError> {
        let points = self.scaled(&self.points);
        let second = self.second.as_deref().map(|line| self.scaled(line));
        let values = points.iter().chain(second.iter().flatten()).map(|point| point[1]);
        let panel = Panel { y: range_of(values.chain([0.0, SMALLEST_RANGE]), 0.2), ..place };
        panel.draw(canvas, &[Curve { points, color: self.color, filled: true }])?;
        let zero = [panel.at(panel.x[0], 0.0), panel.at(panel.x[1], 0.0)];
        canvas.line(zero[0], zero[1], &format!(r#"stroke="{INK}" stroke-width="1""#));
        if let Some(second) = second {
            let line: Vec<Point> = second.iter().map(|&[x, y]| panel.at(x, y)).collect();
            canvas.polyline(&line, &format!(r#"stroke="{INK}" stroke-width="1.5" stroke-dasharray="6 4""#));
        }
        Ok(panel)
    }

    /// Writes the title, and the extreme values at their places.
    pub fn draw_labels(&self, canvas: &mut Canvas, panel: &Panel) {
        let title = self.numbers.heading(self.title, self.shown);
        canvas.label(Label::new(title, [panel.corner[0], panel.corner[1] - 10.0]).bold().halo());
        let [high, low] = [1.0, -1.0].map(|sign| flat_top(&self.points, sign));
        let largest = [high, low].iter().flatten().map(|point| point[1].abs()).fold(0.0, f64::max);
        for (found, drop) in [(high, -9.0), (low, 19.0)] {
            let Some(point) = found.filter(|point| point[1].abs() > SMALL * largest) else { continue };
            let [x, y] = self.scale(point);
            let at = panel.at(x, y);
            canvas.disc(at, 3.5, &format!(r##"fill="{}" stroke="#ffffff""##, self.color));
            let text = typographic(&self.numbers.full(point[1], self.shown));
            canvas.label(Label::new(text, [at[0], at[1] + drop]).middle().bold().halo());
        }
    }

    fn scaled(&self, points: &[Point]) -> Vec<Point> {
        points.iter().map(|&point| self.scale(point)).collect()
    }

    fn scale(&self, [y, value]: Point) -> Point {
        [self.numbers.scaled(y, Shown::Place), self.numbers.scaled(value, self.shown)]
    }
}

/// The largest value (or smallest, for a sign of -1) beyond zero; the middle of the top when it is flat.
fn flat_top(points: &[Point], sign: f64) -> Option<Point> {
    let peak = points.iter().map(|point| sign * point[1]).fold(0.0, f64::max);
    let high = |point: &&Point| sign * point[1] > 0.0 && sign * point[1] >= peak * (1.0 - FLAT);
    let start = points.iter().position(|point| high(&point))?;
    let end = points[start..].iter().take_while(high).last()?;
    Some([0.5 * (points[start][0] + end[0]), sign * peak])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_flat_top_is_labeled_in_its_middle() {
        let points = [[2.0, 0.0], [1.0, 5.0], [-1.0, 5.0], [-2.0, 0.0]];
        assert_eq!(flat_top(&points, 1.0), Some([0.0, 5.0]));
        assert_eq!(flat_top(&points, -1.0), None);
    }

    #[test]
    fn a_sharp_top_is_labeled_where_it_is() {
        let points = [[2.0, 0.0], [0.5, -4.0], [-2.0, 1.0]];
        assert_eq!(flat_top(&points, -1.0), Some([0.5, -4.0]));
        assert_eq!(flat_top(&points, 1.0), Some([-2.0, 1.0]));
    }
}
