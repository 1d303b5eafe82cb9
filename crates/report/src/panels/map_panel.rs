//! One map: cells colored by value, lines of equal value, and rays of natural frequencies.

use super::color_bar::{color, share};
use super::contour::Field;
use super::label_row::spread;
use super::panel::{Panel, Ticks};
use crate::ReportError;
use crate::svg::palette::{FAINT, INK};
use crate::svg::{Canvas, Label, Point};

/// Color of a cell without a value.
const NOTHING: &str = "#c9ced6";
/// Distance between names of rays.
const GAP: f64 = 132.0;
/// Distance between the names of curves.
const LINE: f64 = 16.0;
/// A ray that is shorter than this in the map is left out.
const SHORTEST: f64 = 60.0;

/// A map: a field with its colors, levels and rays.
pub(crate) struct MapPanel<'a> {
    /// Values in the units of the axes and of the color bar.
    pub field: &'a Field,
    /// Values at the dark and at the bright end of the colors.
    pub range: [f64; 2],
    /// Values on which lines are drawn.
    pub levels: &'a [f64],
    /// Lines through the origin: name and slope, vertical over horizontal axis.
    pub rays: Vec<(String, f64)>,
    /// Further lines through points, named where they leave to the right.
    pub curves: Vec<MapCurve>,
}

/// A named line in a map.
pub(crate) struct MapCurve {
    /// Name.
    pub name: String,
    /// Its points in the units of the axes, from left to right.
    pub points: Vec<Point>,
}

impl MapPanel<'_> {
    /// Draws the map into an area with its axes.
    pub fn draw(&self, canvas: &mut Canvas, (corner, size): (Point, Point)) -> Result<(), ReportError> {
        let (x, y) = (edges(&self.field.x), edges(&self.field.y));
        let ends = |edges: &[f64]| [edges[0], edges[edges.len() - 1]];
        let panel = Panel { corner, size, x: ends(&x), y: ends(&y), ticks: Ticks::Numbers };
        panel.draw(canvas, &[])?;
        for (i, row) in self.field.values.iter().enumerate() {
            for (j, value) in row.iter().enumerate() {
                let [left, bottom] = panel.at(x[j], y[i]);
                let [right, top] = panel.at(x[j + 1], y[i + 1]);
                let color = value.map_or(NOTHING.to_owned(), |value| color(value, self.range));
                let style = format!(r#"fill="{color}" shape-rendering="crispEdges""#);
                canvas.rectangle([left, top], [right - left, bottom - top], &style);
            }
        }
        self.draw_contours(canvas, &panel);
        self.draw_rays(canvas, &panel);
        self.draw_curves(canvas, &panel);
        let [right, bottom] = [corner[0] + size[0], corner[1] + size[1]];
        let frame = [corner, [right, corner[1]], [right, bottom], [corner[0], bottom]];
        canvas.polygon(&frame, &format!(r#"fill="none" stroke="{FAINT}""#));
        Ok(())
    }

    fn draw_contours(&self, canvas: &mut Canvas, panel: &Panel) {
        for &level in self.levels {
            let color = if share(level, self.range) < 0.6 { "#ffffff" } else { INK };
            for [from, to] in self.field.contour(level) {
                let ends = [from, to].map(|[x, y]| panel.at(x, y));
                canvas.line(
                    ends[0],
                    ends[1],
                    &format!(r#"stroke="{color}" stroke-width="0.9" opacity="0.8""#),
                );
            }
        }
    }

    /// Curves where they are in the map; names lie at their right end, under one another.
    fn draw_curves(&self, canvas: &mut Canvas, panel: &Panel) {
        let inside = |point: &Point| (panel.y[0]..=panel.y[1]).contains(&point[1]);
        let mut ends = Vec::new();
        for MapCurve { name, points } in &self.curves {
            for pair in points.windows(2).filter(|pair| pair.iter().all(inside)) {
                let [from, to] = [pair[0], pair[1]].map(|[x, y]| panel.at(x, y));
                canvas.line(from, to, r##"stroke="#ffffff" stroke-width="3.4""##);
            }
            let shown: Vec<Point> =
                points.iter().filter(|point| inside(point)).map(|[x, y]| panel.at(*x, *y)).collect();
            canvas.polyline(&shown, &format!(r#"stroke="{INK}" stroke-width="1.5" stroke-dasharray="7 4""#));
            ends.extend(shown.last().map(|end| (name.as_str(), *end)));
        }
        ends.sort_by(|one, other| one.1[1].total_cmp(&other.1[1]));
        let wanted: Vec<f64> = ends.iter().map(|(_, end)| end[1] - 5.0).collect();
        for ((name, end), y) in ends.iter().zip(spread(&wanted, LINE)) {
            canvas.label(Label::new(*name, [end[0] - 8.0, y]).size(12.5).end().halo());
        }
    }

    /// Rays from where they come in to where they leave.
    fn draw_rays(&self, canvas: &mut Canvas, panel: &Panel) {
        let found =
            self.rays.iter().filter_map(|(name, slope)| Some((name.as_str(), visible(panel, *slope)?)));
        let mut rays: Vec<(&str, [Point; 2])> = found.collect();
        rays.sort_by(|one, other| one.1[1][0].total_cmp(&other.1[1][0]));
        for (_, [from, to]) in &rays {
            canvas.line(*from, *to, r##"stroke="#ffffff" stroke-width="3.4""##);
            canvas.line(*from, *to, &format!(r#"stroke="{INK}" stroke-width="1.5" stroke-dasharray="7 4""#));
        }
        let (over, beside): (Vec<_>, Vec<_>) =
            rays.into_iter().partition(|(_, [_, end])| end[1] <= panel.corner[1] + 1.0);
        for (name, [_, end]) in beside {
            canvas.label(Label::new(name, [end[0] - 6.0, end[1] - 9.0]).size(11.5).end().halo());
        }
        draw_names_over(canvas, panel, &over);
    }
}

/// Names of rays that leave at the top, over the map and apart from one another.
fn draw_names_over(canvas: &mut Canvas, panel: &Panel, rays: &[(&str, [Point; 2])]) {
    let wanted: Vec<f64> = rays.iter().map(|(_, [_, end])| end[0]).collect();
    let right = panel.corner[0] + panel.size[0] - 0.5 * GAP;
    let level = panel.corner[1] - 12.0;
    for ((name, [_, end]), x) in rays.iter().zip(spread(&wanted, GAP)) {
        let x = x.min(right);
        canvas.line(*end, [x, level + 3.0], &format!(r#"stroke="{INK}" stroke-width="0.8""#));
        canvas.label(Label::new(*name, [x, level]).size(11.5).middle());
    }
}

/// The part of a line through the origin that is in the map, if that is long enough to be seen.
fn visible(panel: &Panel, slope: f64) -> Option<[Point; 2]> {
    let from = panel.x[0].max(panel.y[0] / slope);
    let to = panel.x[1].min(panel.y[1] / slope);
    let ends = [from, to].map(|x| panel.at(x, slope * x));
    (to > from && ends[1][0] - ends[0][0] + ends[0][1] - ends[1][1] > SHORTEST).then_some(ends)
}

/// Edges of cells about places in order: halfway between them, the outer ones as far out.
fn edges(places: &[f64]) -> Vec<f64> {
    let [first, .., last] = places else {
        let only = places.first().copied().unwrap_or(0.0);
        return vec![only - 0.5, only + 0.5];
    };
    let inner = places.windows(2).map(|pair| 0.5 * (pair[0] + pair[1]));
    let low = first - 0.5 * (places[1] - first);
    let high = last + 0.5 * (last - places[places.len() - 2]);
    [low].into_iter().chain(inner).chain([high]).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cells_meet_halfway() {
        assert_eq!(edges(&[1.0, 2.0, 4.0]), [0.5, 1.5, 3.0, 5.0]);
        assert_eq!(edges(&[3.0]), [2.5, 3.5]);
    }
}
