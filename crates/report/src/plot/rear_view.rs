//! The axle seen from the rear, left on the left, with its bend drawn larger than it is.

use axlebow_axle::{CaseOutcome, Side};
use axlebow_units::Kind;

use super::bend::Bend;
use super::{Drawing, TireDrawing};
use crate::number::{Numbers, Shown, with_sign};
use crate::panels::layout::LEFT;
use crate::sheet::Silhouette;
use crate::sheet::proposal::Lengths;
use crate::svg::palette::{BLUE, FAINT, GROUND, INK, MUTED, ORANGE, RUBBER, STEEL, VERMILLION};
use crate::svg::{Canvas, Label, Point};

/// Largest length of a load arrow.
const ARROW: f64 = 48.0;
/// Height of a row of words under the road.
const ROW: f64 = 17.0;
/// A load component below this share of the largest vertical load is not drawn.
const MINOR: f64 = 0.02;
/// Parts into which each stretch of the axle is cut to draw its bend.
const CUTS: usize = 24;
/// Height of a spring seat, m.
const SEAT_HEIGHT: f64 = 0.035;

/// Where the rear view stands and how large it is drawn.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Frame {
    /// Canvas position of the vehicle's middle.
    pub middle: f64,
    /// Canvas height of the line through the hubs.
    pub hub_level: f64,
    /// Units per meter.
    pub scale: f64,
}

/// The axle of one case seen from the rear.
#[derive(Debug, Clone, Copy)]
pub(crate) struct RearView<'a> {
    /// The case.
    pub case: &'a CaseOutcome,
    /// The sizes.
    pub drawing: &'a Drawing,
    /// The reader's units.
    pub numbers: Numbers,
    /// Place and scale.
    pub frame: Frame,
    /// The bend, relative to the hubs.
    pub bend: Bend<'a>,
    /// Factor on bend and camber change.
    pub exaggeration: f64,
}

/// A path in pieces short enough to bend, position and height.
fn cut(path: &[[f64; 2]]) -> impl Iterator<Item = [f64; 2]> + '_ {
    path.windows(2).flat_map(|pair| {
        (0..=CUTS).map(move |cut| {
            let share = cut as f64 / CUTS as f64;
            [0, 1].map(|axis| pair[0][axis] + share * (pair[1][axis] - pair[0][axis]))
        })
    })
}

impl RearView<'_> {
    /// Draws everything but the stations.
    pub fn draw(&self, canvas: &mut Canvas) {
        self.draw_axle(canvas, 0.0, &format!(r##"fill="#f4f6f8" stroke="{FAINT}" stroke-dasharray="5 4""##));
        for side in Side::BOTH {
            self.draw_tires(canvas, side, 0.0);
            self.draw_tires(canvas, side, self.exaggeration);
        }
        self.draw_road(canvas);
        let stiffeners = &self.drawing.stiffeners;
        for stiffener in stiffeners.iter().filter(|own| !own.covers) {
            self.draw_stiffener(canvas, stiffener);
        }
        self.draw_axle(canvas, self.exaggeration, &format!(r#"fill="{STEEL}" stroke="{INK}""#));
        for stiffener in stiffeners.iter().filter(|own| own.covers) {
            self.draw_stiffener(canvas, stiffener);
        }
        for stiffener in stiffeners.iter().filter(|own| !own.hidden) {
            self.draw_welds(canvas, stiffener);
        }
        self.draw_bow(canvas);
        self.label_stiffeners(canvas);
        for side in Side::BOTH {
            self.draw_seat(canvas, side);
            self.draw_hub(canvas, side);
            self.label_camber(canvas, side);
            self.draw_road_loads(canvas, side);
        }
    }

    /// Room for load arrows and values under the road.
    pub fn room_below_road(&self) -> f64 {
        let rows = Side::BOTH.map(|side| self.side_loads(side).len());
        self.longest_road_arrow() + 28.0 + ROW * rows[0].max(rows[1]) as f64
    }

    fn longest_road_arrow(&self) -> f64 {
        let contacts = Side::BOTH.into_iter().flat_map(|side| &self.case.wheels.of(side).contacts);
        contacts.map(|contact| self.arrow_length(contact.vertical_load)).fold(0.0, f64::max)
    }

    fn at(&self, y: f64, z: f64) -> Point {
        [self.frame.middle - self.frame.scale * y, self.frame.hub_level - self.frame.scale * z]
    }

    fn road_level(&self) -> f64 {
        self.frame.hub_level + self.frame.scale * self.drawing.largest_radius()
    }

    fn draw_axle(&self, canvas: &mut Canvas, exaggeration: f64, style: &str) {
        let edge = |sign: f64| {
            self.drawing.line.windows(2).flat_map(move |pair| (0..=CUTS).map(move |cut| (pair, cut))).map(
                move |(pair, cut)| {
                    let share = cut as f64 / CUTS as f64;
                    let y = pair[0].y + share * (pair[1].y - pair[0].y);
                    let half = pair[0].half_height + share * (pair[1].half_height - pair[0].half_height);
                    self.at(y, exaggeration * self.bend.height(y) + sign * half)
                },
            )
        };
        let mut outline: Vec<Point> = edge(1.0).collect();
        let mut lower: Vec<Point> = edge(-1.0).collect();
        lower.reverse();
        outline.append(&mut lower);
        canvas.polygon(&outline, &format!(r#"{style} stroke-width="1.2" stroke-linejoin="round""#));
    }

    /// A stiffener that runs out at its ends.
    fn draw_stiffener(&self, canvas: &mut Canvas, stiffener: &Silhouette) {
        let [low, high] = stiffener.edges();
        let outline: Vec<Point> = cut(&high)
            .chain(cut(&low).collect::<Vec<_>>().into_iter().rev())
            .map(|at| self.bent(at))
            .collect();
        canvas.polygon(&outline, &format!(r#"fill="{ORANGE}" stroke="{INK}" stroke-width="1""#));
    }

    fn draw_welds(&self, canvas: &mut Canvas, stiffener: &Silhouette) {
        for [from, to] in stiffener.welds() {
            let run: Vec<Point> =
                cut(&[[from, stiffener.foot], [to, stiffener.foot]]).map(|at| self.bent(at)).collect();
            canvas.polyline(&run, &format!(r#"stroke="{INK}" stroke-width="3""#));
        }
    }

    /// A place on the bent axle.
    fn bent(&self, [y, z]: [f64; 2]) -> Point {
        self.at(y, self.exaggeration * self.bend.height(y) + z)
    }

    /// Size, length, ends and welds of the stiffeners, over the loads on the seats.
    fn label_stiffeners(&self, canvas: &mut Canvas) {
        let lengths = Lengths { numbers: self.numbers };
        let lines: Vec<String> =
            self.drawing.stiffeners.iter().flat_map(|stiffener| lengths.lines(&stiffener.own)).collect();
        let highest =
            self.drawing.stiffeners.iter().map(|own| own.high).fold(self.drawing.half_height(0.0), f64::max);
        let [x, y] = self.at(0.0, highest);
        for (row, line) in lines.iter().rev().enumerate() {
            let level = y - ARROW - 20.0 - 15.0 * row as f64;
            canvas.label(Label::new(line.as_str(), [x, level]).middle().size(11.0).color(MUTED).halo());
        }
    }

    fn draw_tires(&self, canvas: &mut Canvas, side: Side, exaggeration: f64) {
        let wheel = self.case.wheels.of(side);
        let camber = wheel.camber - wheel.camber_change + exaggeration * wheel.camber_change;
        let turn = -side.sign() * camber.to_degrees();
        let [x, y] = self.at(*self.drawing.hubs.of(side), 0.0).map(crate::svg::coordinate);
        canvas.group(&format!(r#"transform="rotate({turn:.3} {x} {y})""#), |inside| {
            for tire in self.drawing.tires.of(side) {
                self.draw_tire(inside, tire, exaggeration != 0.0);
            }
        });
    }

    fn draw_tire(&self, canvas: &mut Canvas, tire: &TireDrawing, loaded: bool) {
        let scale = self.frame.scale;
        let rounding = 0.22 * scale * tire.width;
        let style = if loaded {
            format!(
                r#"fill="{RUBBER}" fill-opacity="0.9" stroke="{INK}" stroke-width="1.4" rx="{rounding:.1}""#
            )
        } else {
            format!(r#"fill="none" stroke="{FAINT}" stroke-dasharray="5 4" rx="{rounding:.1}""#)
        };
        let corner = self.at(tire.y + 0.5 * tire.width, tire.radius);
        canvas.rectangle(corner, [scale * tire.width, 2.0 * scale * tire.radius], &style);
        if loaded {
            let groove = r##"stroke="#ffffff" stroke-width="2" stroke-opacity="0.75""##;
            for share in [-0.2, 0.0, 0.2] {
                let y = tire.y + share * tire.width;
                canvas.line(self.at(y, 0.94 * tire.radius), self.at(y, -tire.radius), groove);
            }
        }
    }

    fn draw_road(&self, canvas: &mut Canvas) {
        let half = self.frame.middle - LEFT;
        let [left, level] = [self.frame.middle - half, self.road_level()];
        canvas.rectangle([left, level], [2.0 * half, 26.0], r##"fill="#ffffff""##);
        canvas.rectangle([left, level], [2.0 * half, 8.0], &format!(r#"fill="{GROUND}""#));
        canvas.line(
            [left, level],
            [left + 2.0 * half, level],
            &format!(r#"stroke="{INK}" stroke-width="1.5""#),
        );
    }

    fn draw_bow(&self, canvas: &mut Canvas) {
        let hubs = self.drawing.hubs;
        let chord = format!(r#"stroke="{INK}" stroke-width="0.9" stroke-dasharray="12 3 2 3""#);
        canvas.line(self.at(hubs.left, 0.0), self.at(hubs.right, 0.0), &chord);
        let height = self.exaggeration * self.bend.height(0.0);
        let below =
            self.drawing.line.iter().map(|point| point.half_height).fold(0.0, f64::max) - height.min(0.0);
        let [x, y] = self.at(0.0, -below);
        let text = with_sign(&self.numbers.full(self.case.bow, Shown::Deflection));
        canvas.label(Label::new(format!("bow {text}"), [x, y + 24.0]).middle().bold().color(BLUE));
        let middle = self.at(0.0, height);
        canvas.disc(middle, 3.0, &format!(r#"fill="{BLUE}""#));
        canvas.line(self.at(0.0, 0.0), middle, &format!(r#"stroke="{BLUE}" stroke-width="2""#));
    }

    fn draw_seat(&self, canvas: &mut Canvas, side: Side) {
        let seat = self.case.seats.of(side);
        let top = self.exaggeration * self.bend.height(seat.y) + self.drawing.half_height(seat.y);
        let width = self.frame.scale * self.drawing.seats.of(side).max(0.02);
        let [x, y] = self.at(seat.y, top + SEAT_HEIGHT);
        let height = self.frame.scale * SEAT_HEIGHT;
        canvas.rectangle([x - 0.5 * width, y], [width, height], &format!(r#"fill="{INK}" rx="2""#));
        let length = self.arrow_length(seat.vertical);
        let (tail, head) = ([x, y - 4.0 - length], [x, y - 3.0]);
        if seat.vertical < 0.0 {
            canvas.arrow(tail, head, VERMILLION);
        } else if seat.vertical > 0.0 {
            canvas.arrow(head, tail, VERMILLION);
        }
        let load = self.numbers.full(seat.vertical.abs(), Kind::Force);
        let beside = [x + 10.0 * side.sign(), y - 0.5 * length];
        let label = Label::new(load, beside).color(VERMILLION).bold().halo();
        canvas.label(if side == Side::Left { label } else { label.end() });
    }

    fn draw_hub(&self, canvas: &mut Canvas, side: Side) {
        let hub = self.at(*self.drawing.hubs.of(side), 0.0);
        canvas.disc(hub, 4.0, &format!(r##"fill="#ffffff" stroke="{INK}" stroke-width="1.5""##));
    }

    fn label_camber(&self, canvas: &mut Canvas, side: Side) {
        let wheel = self.case.wheels.of(side);
        let tires = self.drawing.tires.of(side);
        let count = tires.len().max(1) as f64;
        let hub = *self.drawing.hubs.of(side);
        let y = if tires.is_empty() { hub } else { tires.iter().map(|tire| tire.y).sum::<f64>() / count };
        let [x, top] = self.at(y, self.drawing.largest_radius());
        let change = with_sign(&self.numbers.full(wheel.camber_change, Kind::Angle));
        canvas.label(Label::new("camber change", [x, top - 36.0]).middle().size(12.0).color(MUTED));
        canvas.label(Label::new(change, [x, top - 18.0]).middle().size(15.0).bold().color(BLUE));
    }

    fn draw_road_loads(&self, canvas: &mut Canvas, side: Side) {
        let wheel = self.case.wheels.of(side);
        let road = self.road_level();
        for contact in &wheel.contacts {
            let [x, _] = self.at(contact.y, 0.0);
            let length = if contact.off_road { 6.0 } else { self.arrow_length(contact.vertical_load) };
            let load = self.numbers.full(contact.vertical_load, Kind::Force);
            let text = if contact.off_road { "off the road".to_owned() } else { load };
            if contact.vertical_load > 0.0 && !contact.off_road {
                canvas.arrow([x, road + 4.0 + length], [x, road + 3.0], VERMILLION);
            }
            canvas.label(Label::new(text, [x, road + 20.0 + length]).middle().bold().color(VERMILLION));
        }
        let middle =
            wheel.contacts.iter().map(|contact| contact.y).sum::<f64>() / wheel.contacts.len().max(1) as f64;
        let [x, _] = self.at(middle, 0.0);
        for (row, text) in self.side_loads(side).iter().enumerate() {
            let at = [x, road + self.longest_road_arrow() + 38.0 + ROW * row as f64];
            canvas.label(Label::new(text.as_str(), at).middle().size(12.0).color(VERMILLION));
        }
    }

    /// Lateral and fore-aft load of a wheel end in words, where they matter.
    fn side_loads(&self, side: Side) -> Vec<String> {
        let wheel = self.case.wheels.of(side);
        let limit = MINOR * self.largest_load();
        let words = |load: f64, positive: &str, negative: &str| {
            let amount = self.numbers.full(load.abs(), Kind::Force);
            format!("{} {amount}", if load > 0.0 { positive } else { negative })
        };
        let mut texts = Vec::new();
        if wheel.lateral_load.abs() > limit {
            texts.push(words(wheel.lateral_load, "\u{2190} lateral", "\u{2192} lateral"));
        }
        if wheel.longitudinal_load.abs() > limit {
            texts.push(words(wheel.longitudinal_load, "forward", "rearward"));
        }
        texts
    }

    fn largest_load(&self) -> f64 {
        let contacts = Side::BOTH.into_iter().flat_map(|side| self.case.wheels.of(side).contacts.iter());
        let seats = Side::BOTH.into_iter().map(|side| self.case.seats.of(side).vertical.abs());
        contacts.map(|contact| contact.vertical_load.abs()).chain(seats).fold(0.0, f64::max)
    }

    fn arrow_length(&self, load: f64) -> f64 {
        (ARROW * load.abs() / self.largest_load().max(f64::MIN_POSITIVE)).max(14.0)
    }
}
