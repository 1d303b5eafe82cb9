//! The axes of a spectrum: density over frequency, both in equal ratios.

use crate::number::{tick, with_power};
use crate::panels::LogAxis;
use crate::panels::layout::NOTE;
use crate::svg::palette::{FAINT, GRID, MUTED};
use crate::svg::{Canvas, Label, Point};

/// Steps of an axis with numbers.
const STEPS: [u8; 3] = [1, 2, 5];

/// The pair of axes: frequency, Hz, and density in the reader's unit.
#[derive(Debug, Clone, Copy)]
pub(crate) struct SpectrumAxes {
    pub x: LogAxis,
    pub y: LogAxis,
}

impl SpectrumAxes {
    /// Where a pair of values stands on the canvas.
    pub fn at(&self, frequency: f64, density: f64) -> Point {
        [self.x.at(frequency), self.y.at(density)]
    }

    /// Draws grid, numbers and frame, and the titles of both axes.
    pub fn draw(&self, canvas: &mut Canvas, title: &str) {
        let ([left, right], [bottom, top]) = (self.x.ends, self.y.ends);
        let grid = format!(r#"stroke="{GRID}""#);
        let number = |text: &str, at: Point| NOTE.label(text, at);
        for density in self.y.rounds(&[1]) {
            let y = self.y.at(density);
            canvas.line([left, y], [right, y], &grid);
            let power = with_power(&format!("{density:e}"));
            canvas.label(number(power.trim_start_matches("1\u{d7}"), [left - 8.0, y + 4.0]).end());
        }
        for frequency in self.x.rounds(&STEPS) {
            let x = self.x.at(frequency);
            canvas.line([x, bottom], [x, top], &grid);
            canvas.label(number(&tick(frequency), [x, bottom + 18.0]).middle());
        }
        let frame = format!(r#"fill="none" stroke="{FAINT}""#);
        canvas.rectangle([left, top], [right - left, bottom - top], &frame);
        canvas.label(Label::new(title, [left - 80.0, 0.5 * (top + bottom)]).middle().turn(-90.0));
        canvas.label(Label::new("Frequency, Hz", [0.5 * (left + right), bottom + 42.0]).middle());
    }

    /// Draws an axis over the area for `over / frequency`, its numbers up to `most`.
    pub fn draw_inverse(&self, canvas: &mut Canvas, title: &str, [over, most]: [f64; 2]) {
        let inverse = LogAxis { values: self.x.values.map(|frequency| over / frequency), ends: self.x.ends };
        let top = self.y.ends[1];
        for value in inverse.rounds(&STEPS).into_iter().filter(|value| *value <= most) {
            let x = inverse.at(value);
            canvas.line([x, top], [x, top - 5.0], &format!(r#"stroke="{MUTED}""#));
            canvas.label(Label::new(tick(value), [x, top - 10.0]).middle().size(12.0).color(MUTED));
        }
        canvas.label(NOTE.label(title, [self.x.ends[0], top - 30.0]));
    }
}
