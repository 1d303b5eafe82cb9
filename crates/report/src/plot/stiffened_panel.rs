//! A section with its stiffeners: parts, centroid, neutral axis, stress at its extreme fibers.

use axlebow_sections::{NeutralAxis, Outline};
use axlebow_units::Kind;

use crate::StiffenedCard;
use crate::number::{Numbers, Shown, typographic};
use crate::svg::palette::{BLUE, INK, MUTED, SERIES, STEEL, VERMILLION};
use crate::svg::{Canvas, Label, Point};

/// Chords that stand for a quarter of a circle.
const CHORDS: usize = 16;
/// How far an axis reaches past the section.
const PAST: f64 = 16.0;

/// Draws stiffened sections to one scale, in the units of one system.
pub(super) struct StiffenedPanel {
    pub numbers: Numbers,
    pub scale: f64,
}

/// Lowest and highest X, then lowest and highest Z of a section, m.
pub(super) fn reach(card: &StiffenedCard) -> [[f64; 2]; 2] {
    let parts = card.stretch.section.composite.parts();
    parts.iter().map(|part| part.outline.reach()).fold([[f64::INFINITY, f64::NEG_INFINITY]; 2], |all, own| {
        [0, 1].map(|axis| [all[axis][0].min(own[axis][0]), all[axis][1].max(own[axis][1])])
    })
}

impl StiffenedPanel {
    /// Draws a section in the middle of its room.
    pub fn draw(&self, canvas: &mut Canvas, card: &StiffenedCard, middle: Point) {
        let [[left, right], [low, high]] = reach(card);
        let (x, z) = (0.5 * (left + right), 0.5 * (low + high));
        let place = |[px, pz]: [f64; 2]| -> Point {
            [middle[0] + self.scale * (px - x), middle[1] - self.scale * (pz - z)]
        };
        for (number, part) in card.stretch.section.composite.parts().iter().enumerate() {
            let fill = if number == 0 { STEEL } else { SERIES[(number + 3) % SERIES.len()] };
            outline(canvas, &part.outline, (fill, &place));
        }
        let sides = [left, right].map(|x| place([x, 0.0])[0]);
        // That of the axle itself: a stiffener that its weld lets slip has one of its own.
        let field = card.stress.as_ref().and_then(|stress| stress.own.fields.first()?.neutral_axis());
        let centroid = card.stretch.section.area.centroid;
        let axis = field.unwrap_or(NeutralAxis { point: centroid, angle: 0.0 });
        let word = if field.is_some() { "neutral" } else { "centroid" };
        draw_axis(canvas, (place(axis.point), axis.angle), (sides, word));
        let [cx, cy] = place(centroid);
        canvas.disc([cx, cy], 3.5, &format!(r#"fill="{BLUE}""#));
        if let Some(shear_center) = card.stretch.section.shear_center {
            draw_shear_center(canvas, place(shear_center));
        }
        self.draw_stress(canvas, card, &place);
    }

    /// The lowest and the highest stress of the whole section at its fibers.
    fn draw_stress(&self, canvas: &mut Canvas, card: &StiffenedCard, place: &dyn Fn([f64; 2]) -> Point) {
        let parts = 0..card.stretch.section.composite.parts().len();
        let ends: Vec<_> = parts.filter_map(|part| card.extremes(part)).flatten().collect();
        let lowest = ends.iter().min_by(|a, b| a.1.total_cmp(&b.1));
        let highest = ends.iter().max_by(|a, b| a.1.total_cmp(&b.1));
        let up = |at: [f64; 2]| at[1] >= card.stretch.section.area.centroid[1];
        for (at, stress) in [lowest, highest].into_iter().flatten() {
            let point = place(*at);
            canvas.disc(point, 3.0, &format!(r#"fill="{VERMILLION}""#));
            let text = typographic(&self.numbers.full(*stress, Kind::Stress));
            let label = [point[0], if up(*at) { point[1] - 9.0 } else { point[1] + 19.0 }];
            canvas.label(Label::new(text, label).middle().size(12.0).color(VERMILLION).halo());
        }
    }

    /// Rows of values under the drawing.
    pub fn values(&self, card: &StiffenedCard) -> Vec<(String, String)> {
        let section = &card.stretch.section;
        let area = &section.area;
        let value = |value: f64, kind: Kind| self.numbers.full(value, Shown::Free(kind));
        let offset = |axis: usize| self.numbers.full(area.centroid[axis], Shown::Place);
        let shear_center = section
            .shear_center
            .map_or("not reckoned".to_owned(), |[_, z]| typographic(&self.numbers.full(z, Shown::Place)));
        let mut rows: Vec<(String, String)> = [
            ("area", value(area.area, Kind::Area)),
            ("second moment, vertical", value(area.second_moment_x, Kind::SecondMoment)),
            ("second moment, fore-aft", value(area.second_moment_z, Kind::SecondMoment)),
            ("torsion constant", value(section.torsion_constant, Kind::SecondMoment)),
            ("centroid, forward", typographic(&offset(0))),
            ("centroid, up", typographic(&offset(1))),
            ("shear center, up", shear_center),
            ("mass per length", value(section.mass_per_length, Kind::MassPerLength)),
        ]
        .map(|(name, value)| (name.to_owned(), value))
        .to_vec();
        if let Some(stress) = &card.stress {
            let place = typographic(&self.numbers.full(stress.own.y, Shown::Place));
            rows.push(("stress in load case".to_owned(), stress.case.replace('-', " ")));
            rows.push(("at most bending, y".to_owned(), place));
        }
        rows
    }
}

fn outline(canvas: &mut Canvas, outline: &Outline, (fill, place): (&str, &dyn Fn([f64; 2]) -> Point)) {
    let style = |fill: &str| format!(r#"fill="{fill}" stroke="{INK}" stroke-width="1.3""#);
    let points = |edge: Vec<[f64; 2]>| -> Vec<Point> { edge.into_iter().map(place).collect() };
    canvas.polygon(&points(outline.outside().polygon(CHORDS)), &style(fill));
    for hole in outline.holes() {
        canvas.polygon(&points(hole.polygon(CHORDS)), &style("#ffffff"));
    }
}

/// A cross in a ring.
fn draw_shear_center(canvas: &mut Canvas, [x, y]: Point) {
    let style = format!(r#"stroke="{INK}" stroke-width="1.2" fill="none""#);
    canvas.disc([x, y], 5.0, &style);
    canvas.line([x - 5.0, y], [x + 5.0, y], &style);
    canvas.line([x, y - 5.0], [x, y + 5.0], &style);
}

/// A line through a point at an angle, named at its right end.
fn draw_axis(canvas: &mut Canvas, (at, angle): (Point, f64), ([left, right], word): ([f64; 2], &str)) {
    let style = format!(r#"stroke="{BLUE}" stroke-width="1" stroke-dasharray="12 3 2 3""#);
    let half = 0.5 * (right - left) + PAST;
    let run = [half * angle.cos(), -half * angle.sin()];
    let end = [at[0] + run[0], at[1] + run[1]];
    canvas.line([at[0] - run[0], at[1] - run[1]], end, &style);
    let color = if word == "neutral" { BLUE } else { MUTED };
    let words = if word == "neutral" { ["neutral", "axis"] } else { ["", "centroid"] };
    for (line, text) in words.into_iter().enumerate().filter(|(_, text)| !text.is_empty()) {
        let label = [end[0] + 4.0, end[1] - 2.0 + 12.0 * line as f64];
        canvas.label(Label::new(text, label).size(11.0).color(color));
    }
}
