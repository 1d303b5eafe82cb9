//! Parts of the axle as they lie on a sheet.

use std::f64::consts::{FRAC_PI_4, TAU};

use axlebow_sections::{Contour, Outline};

use super::primitive::{Layer, Place, Sheet};

/// Chords to a quarter circle where an edge is only hatched along.
const CHORDS: usize = 12;
/// Distance of hatch lines, mm.
const HATCH: f64 = 1.6;

/// How a plane of the model lies on the sheet.
#[derive(Debug, Clone, Copy)]
pub(super) struct View {
    /// Where its origin lies, mm.
    pub origin: Place,
    /// Millimeters of sheet for a meter across and up; negative across where the sheet runs the other way.
    pub across: f64,
    pub up: f64,
}

impl View {
    /// A view at 1 to `scale`, across to the right.
    pub fn at(origin: Place, scale: u32) -> Self {
        let each = 1e3 / f64::from(scale);
        View { origin, across: each, up: each }
    }

    /// The same with what is across running to the left.
    pub fn mirrored(self) -> Self {
        View { across: -self.across, ..self }
    }

    pub fn place(self, [across, up]: [f64; 2]) -> Place {
        [self.origin[0] + self.across * across, self.origin[1] + self.up * up]
    }

    /// A path through places of the model.
    pub fn path(self, sheet: &mut Sheet, layer: Layer, places: &[[f64; 2]]) {
        let places: Vec<Place> = places.iter().map(|place| self.place(*place)).collect();
        sheet.path(layer, &places);
    }

    /// The edges of a cut part, hatched at 45 or, `leaning`, at 135 degrees.
    pub fn cut(self, sheet: &mut Sheet, outline: &Outline, (layer, leaning): (Layer, bool)) {
        let contours = || std::iter::once(outline.outside()).chain(outline.holes());
        let polygons = contours().map(|contour| {
            contour.polygon(CHORDS).into_iter().map(|place| self.place(place)).collect::<Vec<_>>()
        });
        hatch(sheet, &polygons.collect::<Vec<_>>(), (Layer::Hatch, leaning));
        contours().for_each(|contour| self.contour(sheet, layer, contour));
    }

    /// The edges of a contour, arcs as arcs.
    pub fn contour(self, sheet: &mut Sheet, layer: Layer, contour: &Contour) {
        let corners = contour.corners();
        for (a, b) in corners.iter().zip(corners.iter().cycle().skip(1)) {
            let (from, to) = (self.place([a.x, a.z]), self.place([b.x, b.z]));
            if a.turn == 0.0 {
                sheet.line(layer, from, to);
            } else {
                arc(sheet, layer, (from, to), a.turn);
            }
        }
    }
}

/// An arc from one place to another that turns through an angle (rad), counter-clockwise where positive.
fn arc(sheet: &mut Sheet, layer: Layer, (from, to): (Place, Place), turn: f64) {
    let (x, y) = (to[0] - from[0], to[1] - from[1]);
    let away = 0.5 / (0.5 * turn).tan();
    let center = [from[0] + 0.5 * x - away * y, from[1] + 0.5 * y + away * x];
    let angle = |place: Place| (place[1] - center[1]).atan2(place[0] - center[0]);
    let radius = (from[0] - center[0]).hypot(from[1] - center[1]);
    let start = if turn > 0.0 { angle(from) } else { angle(to) };
    sheet.arc(layer, (center, radius), [start, start + turn.abs()]);
}

/// A whole circle.
pub(super) fn circle(sheet: &mut Sheet, layer: Layer, center: Place, radius: f64) {
    sheet.arc(layer, (center, radius), [0.0, TAU]);
}

/// Lines at 45 degrees inside polygons, those in others being holes.
pub(super) fn hatch(sheet: &mut Sheet, polygons: &[Vec<Place>], (layer, leaning): (Layer, bool)) {
    let (sine, cosine) = if leaning { (-FRAC_PI_4).sin_cos() } else { FRAC_PI_4.sin_cos() };
    // Across the lines and along them.
    let turned = |[x, y]: Place| [y * cosine - x * sine, x * cosine + y * sine];
    let back = |[across, along]: Place| [along * cosine - across * sine, along * sine + across * cosine];
    let edges: Vec<[Place; 2]> = polygons
        .iter()
        .flat_map(|polygon| {
            let next = polygon.iter().cycle().skip(1);
            polygon.iter().zip(next).map(|(a, b)| [turned(*a), turned(*b)]).collect::<Vec<_>>()
        })
        .collect();
    let ends = edges.iter().flat_map(|[a, b]| [a[0], b[0]]);
    let [low, high] =
        ends.fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], at| [low.min(at), high.max(at)]);
    let (first, last) = ((low / HATCH).ceil() as i64, (high / HATCH).floor() as i64);
    for across in (first..=last).map(|number| HATCH * number as f64) {
        let crosses = |[a, b]: &&[Place; 2]| (a[0] <= across) != (b[0] <= across);
        let along = |[a, b]: &[Place; 2]| a[1] + (across - a[0]) / (b[0] - a[0]) * (b[1] - a[1]);
        let mut cuts: Vec<f64> = edges.iter().filter(crosses).map(along).collect();
        cuts.sort_by(f64::total_cmp);
        for pair in cuts.chunks_exact(2) {
            sheet.line(layer, back([across, pair[0]]), back([across, pair[1]]));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::primitive::Figure;
    use super::*;

    fn sheet() -> Sheet {
        Sheet { size: [100.0, 100.0], figures: Vec::new() }
    }

    /// A ring of 40 and 20 mm: what is hatched over the distance of the lines is its area, within what chords and the
    /// first and last line leave.
    #[test]
    fn hatching_fills_the_cut_part_and_no_hole() {
        let ring = |radius: f64| -> Vec<Place> {
            (0..200)
                .map(|i| f64::from(i) / 200.0 * TAU)
                .map(|a| [radius * a.cos(), radius * a.sin()])
                .collect()
        };
        for leaning in [false, true] {
            let mut sheet = sheet();
            hatch(&mut sheet, &[ring(20.0), ring(10.0)], (Layer::Hatch, leaning));
            let lengths = sheet.figures.iter().map(|(_, figure)| match figure {
                Figure::Line(a, b) => {
                    let middle = [0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1])];
                    assert!(a[0].hypot(a[1]) > 9.9 && middle[0].hypot(middle[1]) < 20.0);
                    (b[0] - a[0]).hypot(b[1] - a[1])
                }
                _ => f64::NAN,
            });
            let area = HATCH * lengths.sum::<f64>();
            assert!((area / (TAU * 0.5 * 300.0) - 1.0).abs() < 0.02, "{area}");
        }
    }

    #[test]
    fn arcs_run_counter_clockwise_about_their_own_center() {
        for turn in [1.0, -1.0, 2.5, -2.5] {
            let mut sheet = sheet();
            let at = |angle: f64| [3.0 + 5.0 * f64::cos(angle), 4.0 + 5.0 * f64::sin(angle)];
            arc(&mut sheet, Layer::Axle, (at(0.7), at(0.7 + turn)), turn);
            let Figure::Arc { center, radius, from, to } = sheet.figures[0].1 else { panic!("an arc") };
            let start = if turn > 0.0 { 0.7 } else { 0.7 + turn };
            assert!((center[0] - 3.0).abs() + (center[1] - 4.0).abs() + (radius - 5.0).abs() < 1e-9);
            assert!((at(start)[0] - center[0] - radius * from.cos()).abs() < 1e-9);
            assert!((to - from - turn.abs()).abs() < 1e-12);
        }
    }
}
