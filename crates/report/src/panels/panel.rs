//! One pair of axes with its curves.
//!
//! The plotting library places everything on whole pixels, so a panel is drawn ten times as large and scaled
//! down; curves stay smooth and the same on every machine.

use plotters::coord::types::RangedCoordf64;
use plotters::prelude::*;
use plotters::style::RGBColor;

use crate::number::tick;
use crate::svg::palette::{GRID, MUTED};
use crate::svg::{Canvas, FONT_FAMILY, Point};
use crate::{ReportError, number};

/// Pixels per unit inside the library.
const ENLARGEMENT: f64 = 10.0;
/// Room for the numbers of the vertical axis.
const LEFT: f64 = 90.0;
/// Room for half of the last number of the horizontal axis.
const RIGHT: f64 = 50.0;
/// Room for half of the topmost number.
const TOP: f64 = 10.0;
/// Room for the numbers of the horizontal axis.
const BOTTOM: f64 = 26.0;
/// Height of the axis numbers.
const FONT_SIZE: f64 = 12.0;
/// The library's font size over the size that it writes into the SVG.
const FONT_FACTOR: f64 = 1.24;

/// A pair of axes: where they stand and what they span.
#[derive(Debug, Clone)]
pub(crate) struct Panel {
    /// Upper left corner of the area inside the axes.
    pub corner: Point,
    /// Size of the area inside the axes.
    pub size: Point,
    /// Values at the left and right edge; the left one may be the larger.
    pub x: [f64; 2],
    /// Values at the bottom and top edge.
    pub y: [f64; 2],
    /// What the horizontal axis carries.
    pub ticks: Ticks,
}

/// What the horizontal axis of a panel carries.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Ticks {
    /// Nothing: the panel below has the same axis.
    None,
    /// Grid lines: the panel below has the same axis.
    Lines,
    /// Numbers.
    Numbers,
    /// Numbers and grid lines.
    Grid,
}

/// A line through points, or the filled area between it and zero.
#[derive(Debug, Clone)]
pub(crate) struct Curve {
    /// The points, in axis values.
    pub points: Vec<Point>,
    /// Color.
    pub color: &'static str,
    /// Fills the area to zero.
    pub filled: bool,
}

type Axes<'a, 'b> = ChartContext<'a, SVGBackend<'b>, Cartesian2d<RangedCoordf64, RangedCoordf64>>;

impl Panel {
    /// Where a pair of values stands on the canvas.
    pub fn at(&self, x: f64, y: f64) -> Point {
        let share = |value: f64, range: [f64; 2]| (value - range[0]) / (range[1] - range[0]);
        [
            self.corner[0] + self.size[0] * share(x, self.x),
            self.corner[1] + self.size[1] * (1.0 - share(y, self.y)),
        ]
    }

    /// Draws axes, grid and curves.
    pub fn draw(&self, canvas: &mut Canvas, curves: &[Curve]) -> Result<(), ReportError> {
        let text = self.enlarged(curves).map_err(|fault| ReportError::Drawing(fault.to_string()))?;
        let elements = text.split_once('>').map_or("", |(_, rest)| rest).trim().trim_end_matches("</svg>");
        let [x, y] = [self.corner[0] - LEFT, self.corner[1] - TOP].map(|c| number::fixed(c, 2));
        canvas.group(&format!(r#"transform="translate({x} {y}) scale({})""#, 1.0 / ENLARGEMENT), |inside| {
            inside.raw(elements.trim_end());
        });
        Ok(())
    }

    fn enlarged(&self, curves: &[Curve]) -> Result<String, Box<dyn std::error::Error>> {
        let bottom = if matches!(self.ticks, Ticks::None | Ticks::Lines) { 0.0 } else { BOTTOM };
        let size = (pixels(LEFT + self.size[0] + RIGHT), pixels(TOP + self.size[1] + bottom + TOP));
        let mut text = String::new();
        let root = SVGBackend::with_string(&mut text, size).into_drawing_area();
        let mirror = self.mirror();
        let mut axes = ChartBuilder::on(&root)
            .margin_top(pixels(TOP))
            .margin_bottom(pixels(TOP))
            .margin_right(pixels(RIGHT))
            .y_label_area_size(pixels(LEFT))
            .x_label_area_size(pixels(bottom))
            .build_cartesian_2d(mirror * self.x[0]..mirror * self.x[1], self.y[0]..self.y[1])?;
        self.draw_mesh(&mut axes)?;
        for curve in curves {
            draw_curve(&mut axes, curve, mirror)?;
        }
        root.present()?;
        drop(axes);
        drop(root);
        Ok(text)
    }

    fn draw_mesh(&self, axes: &mut Axes) -> Result<(), Box<dyn std::error::Error>> {
        let mirror = self.mirror();
        let numbers = (FONT_FAMILY, FONT_SIZE * FONT_FACTOR * ENLARGEMENT, &rgb(MUTED));
        let x_number = |value: &f64| tick(without_round_off(mirror * value, self.x));
        let y_number = |value: &f64| tick(without_round_off(*value, self.y));
        let mut mesh = axes.configure_mesh();
        mesh.x_labels((self.size[0] / 90.0) as usize + 2)
            .y_labels((self.size[1] / 32.0) as usize + 2)
            .x_label_formatter(&x_number)
            .y_label_formatter(&y_number)
            .label_style(numbers)
            .axis_style(rgb(MUTED).stroke_width(10))
            .bold_line_style(rgb(GRID).stroke_width(10))
            .light_line_style(TRANSPARENT)
            .set_all_tick_mark_size(50);
        if !matches!(self.ticks, Ticks::Grid | Ticks::Lines) {
            mesh.disable_x_mesh();
        }
        mesh.draw()?;
        Ok(())
    }

    fn mirror(&self) -> f64 {
        if self.x[0] > self.x[1] { -1.0 } else { 1.0 }
    }
}

fn draw_curve(axes: &mut Axes, curve: &Curve, mirror: f64) -> Result<(), Box<dyn std::error::Error>> {
    let color = rgb(curve.color);
    let line = color.stroke_width(20);
    let points = curve.points.iter().map(|&[x, y]| (mirror * x, y));
    if curve.filled {
        axes.draw_series(AreaSeries::new(points, 0.0, color.mix(0.18)).border_style(line))?;
    } else {
        axes.draw_series(LineSeries::new(points, line))?;
    }
    Ok(())
}

/// Zero where the library's steps along an axis miss it by round-off.
fn without_round_off(value: f64, range: [f64; 2]) -> f64 {
    if value.abs() < 1e-9 * (range[1] - range[0]).abs() { 0.0 } else { value }
}

fn pixels(units: f64) -> u32 {
    (units * ENLARGEMENT).round() as u32
}

/// The color that `#rrggbb` names.
fn rgb(hex: &str) -> RGBColor {
    let part = |at: usize| hex.get(at..at + 2).and_then(|two| u8::from_str_radix(two, 16).ok()).unwrap_or(0);
    RGBColor(part(1), part(3), part(5))
}

/// The smallest range that holds all values, widened by a share of itself at each end.
pub(crate) fn range_of(values: impl Iterator<Item = f64>, room: f64) -> [f64; 2] {
    let [low, high] =
        values.fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], v| [low.min(v), high.max(v)]);
    let size = low.abs().max(high.abs());
    let width = if high - low > 1e-9 * size { high - low } else { 0.2 * size };
    let width = if width > 0.0 { width } else { 1.0 };
    [low - room * width, high + room * width]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_stands_where_its_share_of_the_range_is() {
        let panel = Panel {
            corner: [100.0, 50.0],
            size: [200.0, 80.0],
            x: [1.0, -1.0],
            y: [0.0, 4.0],
            ticks: Ticks::Grid,
        };
        assert_eq!(panel.at(1.0, 0.0), [100.0, 130.0]);
        assert_eq!(panel.at(0.0, 4.0), [200.0, 50.0]);
    }

    #[test]
    fn range_of_equal_values_has_a_width() {
        let [low, high] = range_of([5.0, 5.0].into_iter(), 0.1);
        assert!(low < 5.0 && high > 5.0);
        let [low, high] = range_of([0.0].into_iter(), 0.1);
        assert!(low < 0.0 && high > 0.0);
    }

    #[test]
    fn zero_is_written_as_zero() {
        assert_eq!(without_round_off(4.6e-17, [-0.6, 0.03]), 0.0);
        assert_eq!(without_round_off(-1e-6, [0.0, -1e-5]), -1e-6);
    }

    #[test]
    fn colors_are_read() {
        assert_eq!(rgb("#0072b2"), RGBColor(0, 0x72, 0xb2));
    }
}
