//! Line charts side by side, with one legend under them.

use super::finite::finite;
use super::panel::{Curve, Panel, Ticks, range_of};
use crate::svg::palette::{FAINT, INK, MUTED, SERIES};
use crate::svg::{Canvas, Label, Point};
use crate::{ReportError, Svg};

/// Most charts in a row.
const COLUMNS: usize = 3;
/// Size of the area inside the axes.
const AREA: Point = [430.0, 320.0];
/// Room to the left of that area for the axis numbers.
const LEFT: f64 = 90.0;
/// Room to the right of it.
const RIGHT: f64 = 60.0;
/// Room over it for the chart's title and the label of the vertical axis.
const ABOVE: f64 = 82.0;
/// Room under it for axis numbers and label.
const BELOW: f64 = 62.0;
/// Height of a row of the legend.
const LEGEND_ROW: f64 = 24.0;
/// Width of a letter of the legend, generous.
const LETTER: f64 = 8.2;

/// An axis.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Axis {
    /// What it measures, with the unit.
    pub label: String,
}

/// Points joined by a line.
#[derive(Debug, Clone, PartialEq)]
pub struct Series {
    /// Name in the legend; series of the same name in several charts share color and mark.
    pub label: String,
    /// Points, in the units of the axes, in the order in which they are joined.
    pub points: Vec<(f64, f64)>,
}

/// Points of several series that have something in common, joined by a thin dashed line.
#[derive(Debug, Clone, PartialEq)]
pub struct Link {
    /// What they have in common, written at the last point.
    pub label: String,
    /// Points, in the units of the axes.
    pub points: Vec<(f64, f64)>,
}

/// A line chart.
#[derive(Debug, Clone, PartialEq)]
pub struct Chart {
    /// Title over the chart.
    pub title: String,
    /// Horizontal axis.
    pub x: Axis,
    /// Vertical axis.
    pub y: Axis,
    /// The lines.
    pub series: Vec<Series>,
    /// Dashed links across the lines.
    pub links: Vec<Link>,
    /// Note under the chart; empty for none.
    pub footnote: String,
}

/// Draws charts side by side, at most three in a row, with one legend under them.
///
/// - `title`: over all of them
///
/// # Errors
/// No charts, a chart without points, or a value that is not finite.
pub fn charts(title: &str, charts: &[Chart]) -> Result<Svg, ReportError> {
    if charts.is_empty() {
        return Err(ReportError::Empty { thing: "row of charts" });
    }
    let columns = charts.len().min(COLUMNS);
    let slot = [LEFT + AREA[0] + RIGHT, ABOVE + AREA[1] + BELOW + 18.0];
    let width = columns as f64 * slot[0];
    let mut canvas = Canvas::default();
    let mut level = 22.0;
    for line in crate::words::wrapped(title, 52 * columns, 2) {
        level += 26.0;
        canvas.label(Label::new(line, [LEFT, level]).size(20.0).bold());
    }
    let labels = series_labels(charts);
    for (i, chart) in charts.iter().enumerate() {
        let corner = [(i % columns) as f64 * slot[0] + LEFT, level + (i / columns) as f64 * slot[1] + ABOVE];
        chart.draw(&mut canvas, corner, &labels)?;
    }
    level += charts.len().div_ceil(columns) as f64 * slot[1] + 14.0;
    let bottom = draw_legend(&mut canvas, &labels, level, width - RIGHT);
    let names: Vec<&str> = charts.iter().map(|chart| chart.title.as_str()).collect();
    Ok(canvas.finish([width, bottom + 20.0], title, &names.join("; ")))
}

impl Chart {
    fn draw(&self, canvas: &mut Canvas, corner: Point, labels: &[&str]) -> Result<(), ReportError> {
        let panel = self.panel(corner)?;
        canvas.label(Label::new(self.title.as_str(), [corner[0], corner[1] - 40.0]).size(15.0).bold());
        canvas.label(Label::new(self.y.label.as_str(), [corner[0], corner[1] - 14.0]).color(MUTED));
        let under = corner[1] + AREA[1];
        canvas.label(Label::new(self.x.label.as_str(), [corner[0] + 0.5 * AREA[0], under + 42.0]).middle());
        canvas.label(Label::new(self.footnote.as_str(), [corner[0], under + 66.0]).size(12.0).color(MUTED));
        let curves: Vec<Curve> = self.series.iter().map(|series| curve(series, labels)).collect();
        panel.draw(canvas, &curves)?;
        let rise = self.rise_of_links();
        for link in &self.links {
            draw_link(canvas, &panel, (link, rise));
        }
        for series in &self.series {
            let turn = turn_of(&series.label, labels);
            for &(x, y) in &series.points {
                draw_mark(canvas, panel.at(x, y), turn);
            }
        }
        Ok(())
    }

    /// Whether the ends of the links rise or fall to the right: 1 or -1, 0 when that cannot be told.
    fn rise_of_links(&self) -> f64 {
        let mut ends = self.links.iter().filter_map(|link| link.points.last());
        let (Some(first), Some(last)) = (ends.next(), ends.next_back()) else { return 0.0 };
        let slope = (last.1 - first.1) * (last.0 - first.0);
        if slope == 0.0 { 0.0 } else { slope.signum() }
    }

    fn panel(&self, corner: Point) -> Result<Panel, ReportError> {
        let links = self.links.iter().flat_map(|link| &link.points);
        let points: Vec<(f64, f64)> =
            self.series.iter().flat_map(|series| &series.points).chain(links).copied().collect();
        if points.is_empty() {
            return Err(ReportError::Empty { thing: "chart" });
        }
        finite("value in a chart", points.iter().flat_map(|&(x, y)| [x, y]))?;
        let x = range_of(points.iter().map(|point| point.0), 0.07);
        let y = range_of(points.iter().map(|point| point.1), 0.1);
        Ok(Panel { corner, size: AREA, x, y, ticks: Ticks::Grid })
    }
}

fn curve(series: &Series, labels: &[&str]) -> Curve {
    let points = series.points.iter().map(|&(x, y)| [x, y]).collect();
    Curve { points, color: SERIES[turn_of(&series.label, labels) % SERIES.len()], filled: false }
}

/// A label under or over a steep link stands on the side where the line that the links end on is not.
fn draw_link(canvas: &mut Canvas, panel: &Panel, (link, rise): (&Link, f64)) {
    let line: Vec<Point> = link.points.iter().map(|&(x, y)| panel.at(x, y)).collect();
    canvas.polyline(&line, &format!(r#"stroke="{MUTED}" stroke-width="1.1" stroke-dasharray="5 4""#));
    let Some(&[x, y]) = line.last() else { return };
    let before = line.iter().rev().nth(1).copied().unwrap_or([x, y + 1.0]);
    let run = [x - before[0], y - before[1]];
    let step = 14.0 / run[0].hypot(run[1]).max(1e-9);
    let at = [x + step * run[0], y + step * run[1] + 4.0];
    let label = Label::new(link.label.as_str(), at).size(11.0).color(MUTED).halo();
    let steep = run[0].abs() < 0.6 * run[1].abs();
    let to_the_right = if steep { rise * run[1] } else { run[0] };
    canvas.label(match to_the_right {
        0.0 => label.middle(),
        right if right < 0.0 => label.end(),
        _ => label,
    });
}

/// A mark of its own shape for each series: disc, square, triangle, diamond, in turn.
fn draw_mark(canvas: &mut Canvas, [x, y]: Point, turn: usize) {
    let style = format!(r##"fill="{}" stroke="#ffffff" stroke-width="1""##, SERIES[turn % SERIES.len()]);
    const R: f64 = 4.5;
    match turn % 4 {
        0 => canvas.disc([x, y], R, &style),
        1 => canvas.rectangle([x - 0.9 * R, y - 0.9 * R], [1.8 * R, 1.8 * R], &style),
        2 => canvas
            .polygon(&[[x, y - 1.2 * R], [x + 1.1 * R, y + 0.9 * R], [x - 1.1 * R, y + 0.9 * R]], &style),
        _ => {
            canvas.polygon(&[[x, y - 1.3 * R], [x + 1.3 * R, y], [x, y + 1.3 * R], [x - 1.3 * R, y]], &style)
        }
    }
}

/// Series names in the order in which they first appear.
fn series_labels(charts: &[Chart]) -> Vec<&str> {
    let mut labels: Vec<&str> = Vec::new();
    for series in charts.iter().flat_map(|chart| &chart.series) {
        if !labels.contains(&series.label.as_str()) {
            labels.push(&series.label);
        }
    }
    labels
}

fn turn_of(label: &str, labels: &[&str]) -> usize {
    labels.iter().position(|known| *known == label).unwrap_or(0)
}

fn draw_legend(canvas: &mut Canvas, labels: &[&str], top: f64, right: f64) -> f64 {
    let (mut x, mut y) = (LEFT, top);
    canvas.line([LEFT, top - 18.0], [right, top - 18.0], &format!(r#"stroke="{FAINT}" stroke-width="0.8""#));
    for (turn, label) in labels.iter().enumerate() {
        let width = 64.0 + LETTER * label.chars().count() as f64;
        if x > LEFT && x + width > right {
            (x, y) = (LEFT, y + LEGEND_ROW);
        }
        let style = format!(r#"stroke="{}" stroke-width="2""#, SERIES[turn % SERIES.len()]);
        canvas.line([x, y], [x + 30.0, y], &style);
        draw_mark(canvas, [x + 15.0, y], turn);
        canvas.label(Label::new(*label, [x + 38.0, y + 4.5]).color(INK));
        x += width;
    }
    y + LEGEND_ROW
}
