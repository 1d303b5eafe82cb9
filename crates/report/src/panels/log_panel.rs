//! Curves over frequency on logarithmic axes.

use super::layout::TO_NUMBERS;
use crate::number::tick;
use crate::svg::palette::{GRID, INK, MUTED, SERIES};
use crate::svg::{Canvas, Label, Point};

/// Height of the axis numbers.
const NUMBERS: f64 = 12.0;
/// Room for a number of the frequency axis.
const NUMBER_WIDTH: f64 = 34.0;

/// A curve and its name.
#[derive(Debug, Clone)]
pub(crate) struct LogCurve {
    /// Whose it is.
    pub name: String,
    /// Frequency and value, by rising frequency.
    pub points: Vec<Point>,
    /// Peaks to be marked.
    pub marks: Vec<Point>,
}

/// Axes with their curves.
#[derive(Debug, Clone)]
pub(crate) struct LogPanel {
    /// What is drawn, with its unit.
    pub title: String,
    /// The curves, in the order of the colors.
    pub curves: Vec<LogCurve>,
    /// Lowest and highest frequency.
    pub frequencies: [f64; 2],
    /// Decades under the highest value that are drawn at most.
    pub decades: f64,
}

/// Where a panel stands.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Place {
    /// Upper left corner of the area inside the axes.
    pub corner: Point,
    /// Size of the area inside the axes.
    pub size: Point,
}

/// SVG attributes of the curve of a number: color, and dashes for every second one.
pub(crate) fn curve_style(number: usize) -> String {
    let (color, dash) =
        (SERIES[number % SERIES.len()], if number % 2 == 1 { r#" stroke-dasharray="7 4""# } else { "" });
    format!(r#"stroke="{color}" stroke-width="1.8" stroke-linejoin="round"{dash}"#)
}

/// Share of the way from one value to another on a logarithmic scale.
pub(crate) fn log_share(value: f64, [from, to]: [f64; 2]) -> f64 {
    (value / from).ln() / (to / from).ln()
}

impl LogPanel {
    /// Draws axes, grid, curves, marks and title; the numbers of the frequency axis where it is the last.
    pub fn draw(&self, canvas: &mut Canvas, place: Place, last: bool) {
        let range = self.range();
        self.draw_grid(canvas, place, range, last);
        for (number, curve) in self.curves.iter().enumerate() {
            let at = |&[x, y]: &Point| self.at(place, range, [x, y]);
            let drawn = |[x, y]: &Point| *y >= range[0] && self.holds(*x);
            // What is below the panel leaves a gap.
            for piece in curve.points.chunk_by(|a, b| drawn(a) == drawn(b)).filter(|piece| drawn(&piece[0])) {
                canvas.polyline(&piece.iter().map(at).collect::<Vec<_>>(), &curve_style(number));
            }
            let color = SERIES[number % SERIES.len()];
            for mark in curve.marks.iter().filter(|[x, y]| self.holds(*x) && *y >= range[0]) {
                canvas.disc(at(mark), 3.2, &format!(r##"fill="{color}" stroke="#ffffff""##));
            }
        }
        canvas.label(Label::new(&self.title, [place.corner[0], place.corner[1] - 9.0]).bold());
        self.draw_names(canvas, place);
    }

    /// The curves' names at the right over the panel, each behind a piece of its line.
    fn draw_names(&self, canvas: &mut Canvas, place: Place) {
        let mut x = place.corner[0] + place.size[0];
        let level = place.corner[1] - 13.5;
        for (number, curve) in self.curves.iter().enumerate().rev() {
            x -= 7.0 * curve.name.chars().count() as f64;
            canvas.label(Label::new(&curve.name, [x, level + 4.5]).size(NUMBERS));
            canvas.line([x - 38.0, level], [x - 8.0, level], &curve_style(number));
            x -= 60.0;
        }
    }

    fn holds(&self, frequency: f64) -> bool {
        (self.frequencies[0]..=self.frequencies[1]).contains(&frequency)
    }

    /// From some decades under the highest value, or the lowest one, to above the highest.
    fn range(&self) -> [f64; 2] {
        let points = self.curves.iter().flat_map(|curve| &curve.points);
        let values = points.filter(|[x, y]| *y > 0.0 && self.holds(*x)).map(|point| point[1]);
        let [low, high] = values.fold([f64::INFINITY, 0.0_f64], |[low, high], y| [low.min(y), high.max(y)]);
        if high <= 0.0 {
            return [0.1, 1.0];
        }
        [0.8 * low.max(high * 10_f64.powf(-self.decades)), 1.7 * high]
    }

    fn at(&self, place: Place, range: [f64; 2], [x, y]: Point) -> Point {
        let [across, up] = [log_share(x, self.frequencies), log_share(y, range)];
        [place.corner[0] + place.size[0] * across, place.corner[1] + place.size[1] * (1.0 - up)]
    }

    fn draw_grid(&self, canvas: &mut Canvas, place: Place, range: [f64; 2], last: bool) {
        let line = format!(r#"stroke="{GRID}" stroke-width="1""#);
        let [left, top] = place.corner;
        let [right, bottom] = [left + place.size[0], top + place.size[1]];
        let mut free = f64::NEG_INFINITY;
        for frequency in ticks(self.frequencies, &[1.0, 2.0, 5.0]) {
            let [x, _] = self.at(place, range, [frequency, range[0]]);
            canvas.line([x, top], [x, bottom], &line);
            if last && x - free > NUMBER_WIDTH {
                canvas.label(
                    Label::new(tick(frequency), [x, bottom + TO_NUMBERS]).size(NUMBERS).middle().color(MUTED),
                );
                free = x;
            }
        }
        let wide = range[1] / range[0] > 40.0;
        let steps: &[f64] = if wide { &[1.0] } else { &[1.0, 2.0, 5.0] };
        for value in ticks(range, steps) {
            let [_, y] = self.at(place, range, [self.frequencies[0], value]);
            canvas.line([left, y], [right, y], &line);
            canvas.label(Label::new(tick(value), [left - 8.0, y + 4.0]).size(NUMBERS).end().color(MUTED));
        }
        let frame = format!(r#"fill="none" stroke="{MUTED}" stroke-width="1""#);
        canvas.rectangle(place.corner, place.size, &frame);
        if last {
            let middle = [0.5 * (left + right), bottom + 40.0];
            canvas.label(Label::new("Frequency, Hz", middle).middle().color(INK));
        }
    }
}

/// The values `step·10^k` within a range.
fn ticks([from, to]: [f64; 2], steps: &[f64]) -> Vec<f64> {
    let decades = from.log10().floor() as i32..=to.log10().ceil() as i32;
    let all = decades.flat_map(|power| steps.iter().map(move |step| step * 10_f64.powi(power)));
    all.filter(|value| (from * (1.0 - 1e-9)..=to * (1.0 + 1e-9)).contains(value)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ticks_are_round_and_within_the_range() {
        assert_eq!(ticks([0.5, 60.0], &[1.0, 2.0, 5.0]), [0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0]);
        assert_eq!(ticks([0.03, 2.0], &[1.0]), [0.1, 1.0]);
    }

    #[test]
    fn a_share_is_logarithmic() {
        assert!((log_share(10.0, [1.0, 100.0]) - 0.5).abs() < 1e-15);
    }
}
