//! The face of one wheel: bars over its ribs, a profile of wear under them.

use axlebow_axle::tread::{RibWear, Worn};
use axlebow_axle::{Side, TireCase, TireFace, TireRideOutcome};
use axlebow_units::Kind;

use crate::number::{Numbers, fixed, with_sign};
use crate::svg::palette::{BLUE, GREEN, INK, MUTED, RUBBER, VERMILLION};
use crate::svg::{Canvas, Label, Point};
use crate::words::tire::{index, tire_name};

/// Height of the longest bar.
const BAR: f64 = 120.0;
/// Height of the tallest profile.
const PROFILE: f64 = 120.0;
/// Height of a rib.
const RIB: f64 = 24.0;
/// Room between bars, ribs and profile, for the lean.
const ROOM: f64 = 16.0;
/// Largest factor on the lean of the ribs.
const LEAN: f64 = 5.0;
/// Width of a rib below which its numbers have no room.
const NARROW: f64 = 36.0;
/// Least range of wear that fills the profile: less is drawn less tall.
const LEAST_RANGE: f64 = 0.05;
/// Share of a rib's width that is groove.
const GROOVE: f64 = 0.12;

/// How large both faces are drawn.
#[derive(Debug, Clone, Copy)]
pub(super) struct FaceScale {
    /// Units for each meter across.
    across: f64,
    /// Largest load of a rib, N.
    load: f64,
    /// Wear over that upright, less one: largest of any rib, and of any that wears less the largest shortfall.
    excess: [f64; 2],
    /// Distance of a tire's center from the middle of the face, m; zero for a single.
    half_spacing: f64,
    /// Width of a rib, m.
    rib: f64,
    /// Factor on the lean of the ribs.
    pub lean: f64,
}

/// One wheel's face.
pub(super) struct TirePanel<'a> {
    pub face: &'a TireFace,
    pub side: Side,
    pub scale: FaceScale,
    pub numbers: Numbers,
}

impl FaceScale {
    /// The scale at which both faces fit a width.
    pub fn of(case: &TireCase, ride: Option<&TireRideOutcome>, width: f64) -> Self {
        let faces = Side::BOTH.map(|side| &case.wheels.of(side).worn);
        let worn = ride.map_or(faces, |ride| Side::BOTH.map(|side| &ride.wheels.of(side).wear.mean));
        let most = |faces: [&Worn; 2], value: fn(&RibWear) -> f64| {
            let ribs = faces.into_iter().flat_map(|worn| &worn.tires).flat_map(|tire| &tire.ribs);
            ribs.map(value).fold(1e-9, f64::max)
        };
        let places: Vec<f64> = faces[0].tires[0].ribs.iter().map(|rib| rib.outboard).collect();
        let rib = places.windows(2).next().map_or(1.0, |pair| pair[1] - pair[0]);
        let tread = rib * places.len() as f64;
        // Duals are drawn closer than they stand: a fifth of a tread between them.
        let dual = faces.iter().any(|worn| worn.tires.len() > 1);
        let half_spacing = if dual { 0.6 * tread } else { 0.0 };
        FaceScale {
            across: width / (2.0 * half_spacing + tread),
            load: most(faces, |rib| rib.load),
            excess: [most(worn, excess), most(worn, |rib| -excess(rib))],
            lean: lean(case, 0.5 * width),
            half_spacing,
            rib,
        }
    }
}

/// How much more than upright a rib wears, as a share; zero where that is not known.
fn excess(rib: &RibWear) -> f64 {
    rib.against_upright.map_or(0.0, |wear| wear - 1.0)
}

/// The factor at which the ends of the ribs, half a face from its middle, keep to their room.
fn lean(case: &TireCase, half: f64) -> f64 {
    let steepest =
        Side::BOTH.map(|side| case.wheels.of(side).pose.camber.abs()).into_iter().fold(1e-9, f64::max);
    (ROOM / (half * steepest)).floor().clamp(1.0, LEAN)
}

impl TirePanel<'_> {
    /// Draws the face about a middle under a level, with the profile of `worn`; gives back its lower end.
    pub fn draw(&self, canvas: &mut Canvas, [middle, top]: Point, worn: &Worn) -> f64 {
        let bars = top + BAR + 20.0;
        let ribs = bars + ROOM;
        let profile = ribs + RIB + ROOM;
        self.draw_ribs(canvas, [middle, ribs]);
        for (number, tire) in self.face.worn.tires.iter().enumerate() {
            for rib in &tire.ribs {
                self.draw_bar(canvas, [self.x(middle, number, rib.outboard), bars], rib);
            }
        }
        for (number, tire) in worn.tires.iter().enumerate() {
            for rib in &tire.ribs {
                self.draw_wear(canvas, [self.x(middle, number, rib.outboard), profile], rib);
            }
            self.label_tire(canvas, [self.x(middle, number, 0.0), profile + PROFILE + 36.0], (number, worn));
        }
        self.label_shoulders(canvas, middle, profile + PROFILE + 36.0);
        profile + PROFILE + 76.0
    }

    pub fn upright_style() -> String {
        format!(r#"stroke="{INK}" stroke-width="1.6" stroke-dasharray="5 3""#)
    }

    /// Canvas place of a point of a tire: the left wheel's outboard side is on the left.
    fn x(&self, middle: f64, number: usize, on_tire: f64) -> f64 {
        let dual = self.face.worn.tires.len() > 1;
        let tire = match (dual, number) {
            (false, _) => 0.0,
            (true, 0) => self.scale.half_spacing,
            (true, _) => -self.scale.half_spacing,
        };
        middle - self.side.sign() * self.scale.across * (tire + on_tire)
    }

    fn draw_ribs(&self, canvas: &mut Canvas, [middle, top]: Point) {
        let turn = -self.side.sign() * self.scale.lean * self.face.pose.camber.to_degrees();
        let (x, y) = (crate::svg::coordinate(middle), crate::svg::coordinate(top + RIB));
        let width = self.scale.across * self.scale.rib * (1.0 - GROOVE);
        canvas.group(&format!(r#"transform="rotate({} {x} {y})""#, fixed(turn, 3)), |inside| {
            for (number, tire) in self.face.worn.tires.iter().enumerate() {
                for rib in &tire.ribs {
                    let left = self.x(middle, number, rib.outboard) - 0.5 * width;
                    let style = format!(r#"fill="{RUBBER}" {} rx="3""#, outline());
                    inside.rectangle([left, top], [width, RIB], &style);
                }
            }
        });
    }

    fn draw_bar(&self, canvas: &mut Canvas, [x, level]: Point, rib: &RibWear) {
        let height = BAR * rib.load / self.scale.load;
        let width = self.scale.across * self.scale.rib * 0.72;
        let style = format!(r#"fill="{BLUE}" fill-opacity="0.75""#);
        canvas.rectangle([x - 0.5 * width, level - height], [width, height], &style);
        if !self.is_labeled(rib) {
            return;
        }
        let text = self.numbers.bare(rib.load, Kind::Force);
        canvas.label(Label::new(text, [x, level - height - 5.0]).size(11.0).middle().color(BLUE));
    }

    fn draw_wear(&self, canvas: &mut Canvas, [x, level]: Point, rib: &RibWear) {
        if rib.against_upright.is_none() {
            return;
        }
        let (more, unit) = (excess(rib), PROFILE / self.scale.excess.iter().sum::<f64>().max(LEAST_RANGE));
        let upright = level + unit * self.scale.excess[1];
        let width = self.scale.across * self.scale.rib;
        let left = x - 0.5 * width;
        let color = if more > 0.0 { VERMILLION } else { GREEN };
        // What wears more lies deeper.
        let top = upright + unit * more.min(0.0);
        let style = format!(r#"fill="{color}" fill-opacity="0.75""#);
        canvas.rectangle([left + 1.0, top], [width - 2.0, unit * more.abs()], &style);
        canvas.line([left, upright], [left + width, upright], &TirePanel::upright_style());
        if !self.is_labeled(rib) {
            return;
        }
        let at = if more > 0.0 { upright + unit * more + 14.0 } else { top - 5.0 };
        let text = format!("{} %", with_sign(&fixed(100.0 * more, 0)));
        canvas.label(Label::new(text, [x, at]).size(11.0).middle().color(color));
    }

    /// Whether a rib has room for its numbers; of narrow ribs only the shoulders do.
    fn is_labeled(&self, rib: &RibWear) -> bool {
        let shoulder = 0.5 * self.scale.rib * (self.ribs() - 1) as f64;
        self.scale.across * self.scale.rib >= NARROW || rib.outboard.abs() > 0.99 * shoulder
    }

    fn label_tire(&self, canvas: &mut Canvas, [x, y]: Point, (number, worn): (usize, &Worn)) {
        let (own, tires) = (&self.face.worn.tires[number], worn.tires.len());
        let load = self.numbers.full(own.load, Kind::Force);
        let name = match tires {
            1 => format!("tire: {load}"),
            _ => format!("{} tire: {load}, {} %", tire_name(number, tires), fixed(100.0 * own.share, 1)),
        };
        canvas.label(Label::new(name, [x, y]).middle().bold());
        let ratio = index(own.shoulder_load_ratio());
        let line = format!(
            "inner over outer rib: load {ratio}, wear {}",
            index(worn.tires[number].shoulder_wear_ratio())
        );
        canvas.label(Label::new(line, [x, y + 17.0]).size(11.5).middle());
    }

    fn label_shoulders(&self, canvas: &mut Canvas, middle: f64, level: f64) {
        let reach = self.scale.across * (self.scale.half_spacing + 0.5 * self.scale.rib * self.ribs() as f64);
        let (left, right) = match self.side {
            Side::Left => ("\u{2190} outboard", "inboard \u{2192}"),
            Side::Right => ("\u{2190} inboard", "outboard \u{2192}"),
        };
        canvas.label(Label::new(left, [middle - reach, level + 36.0]).size(11.5).color(MUTED));
        canvas.label(Label::new(right, [middle + reach, level + 36.0]).size(11.5).end().color(MUTED));
    }

    fn ribs(&self) -> usize {
        self.face.worn.tires[0].ribs.len()
    }
}

/// Ink of outlines, shared by the parts of this figure.
pub(super) fn outline() -> String {
    format!(r#"stroke="{INK}" stroke-width="1""#)
}
