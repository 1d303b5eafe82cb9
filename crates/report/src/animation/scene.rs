//! Where the axle stands on the page and how large it is drawn.

use axlebow_axle::{Side, Sides};
use serde::Serialize;

use super::frames::{Frames, OutlinePoint};
use crate::panels::round_down;
use crate::plot::bend::{CLEAR_BOW, CLEAR_TILT};
use crate::plot::{Drawing, TireDrawing};

/// Canvas position of the vehicle's middle.
pub(super) const MIDDLE: f64 = 600.0;
/// Most units per meter.
const LARGEST_SCALE: f64 = 250.0;
/// Free canvas over the scene.
const TOP: f64 = 20.0;
/// Room for half the axle.
const HALF: f64 = 330.0;
/// Height of the vehicle body over the hubs, and its own, m.
const BODY: [f64; 2] = [0.36, 0.14];
/// Motion of heights that is easily seen, m.
const CLEAR_HEIGHT: f64 = 0.14;
/// Largest factor on heights.
const MOST: f64 = 10.0;
/// Motion below which nothing moves, m or rad.
const STILL: f64 = 1e-7;

/// Place, scale and sizes of what is drawn, for the page.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub(super) struct Scene {
    /// Canvas position of the vehicle's middle.
    pub middle: f64,
    /// Canvas height of the road at rest.
    pub level: f64,
    /// Units per meter.
    pub scale: f64,
    /// Height of the hubs over the road at rest, m.
    pub radius: f64,
    /// Factor on heights against those at rest.
    pub height_factor: f64,
    /// Factor on bend and camber change to begin with.
    pub flex_factor: f64,
    /// Positions of the hubs, m.
    pub hubs: [f64; 2],
    /// Positions of the seats, m.
    pub seats: [f64; 2],
    /// Roll at rest of the line through the hubs, rad.
    pub roll_at_rest: f64,
    /// The outline of the axle.
    pub outline: Vec<OutlinePoint>,
    /// The tires of each side.
    pub tires: [Vec<TireScene>; 2],
    /// Lower and upper edge of the vehicle body over the hubs, and half its width, m.
    pub body: [f64; 3],
}

/// A tire in the scene, m.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub(super) struct TireScene {
    pub y: f64,
    pub width: f64,
    pub radius: f64,
    /// How far it is pressed together at rest.
    pub pressed: f64,
}

impl Scene {
    /// The scene of a ride.
    pub fn of(frames: &Frames, drawing: &Drawing) -> Self {
        let tires = |side: Side| -> Vec<TireScene> {
            drawing.tires.of(side).iter().map(|tire| tire_scene(tire, frames, drawing, side)).collect()
        };
        let tires = Side::BOTH.map(tires);
        let outer = tires.iter().flatten().map(|tire| tire.y.abs() + tire.width).fold(0.0, f64::max);
        let outer = outer.max(drawing.hubs.left.abs()).max(0.1);
        let radius = drawing.largest_radius();
        let scale = LARGEST_SCALE.min(HALF / outer);
        let seats = Side::BOTH.map(|side| seat(frames, side));
        Scene {
            middle: MIDDLE,
            level: level(scale, radius),
            scale,
            radius,
            height_factor: height_factor(frames),
            flex_factor: flex_factor(frames, drawing),
            hubs: [drawing.hubs.left, drawing.hubs.right],
            seats,
            roll_at_rest: frames.roll_at_rest,
            outline: frames.outline.clone(),
            tires,
            body: [BODY[0], BODY[0] + BODY[1], seats[0].abs().max(seats[1].abs()) + 0.05],
        }
    }
}

impl Scene {
    /// Both scenes at one scale, on one level, with the same factors: those of the one that has less room.
    pub fn alike(self, other: Scene) -> [Scene; 2] {
        let scale = self.scale.min(other.scale);
        let (height_factor, flex_factor) =
            (self.height_factor.min(other.height_factor), self.flex_factor.min(other.flex_factor));
        let level = level(scale, self.radius.max(other.radius));
        [self, other].map(|own| Scene { scale, height_factor, flex_factor, level, ..own })
    }
}

/// Canvas height of the road at rest under wheels of a radius.
fn level(scale: f64, radius: f64) -> f64 {
    scale * (radius + BODY[0] + BODY[1] + CLEAR_HEIGHT) + TOP
}

fn tire_scene(tire: &TireDrawing, frames: &Frames, drawing: &Drawing, side: Side) -> TireScene {
    let across = tire.y - *drawing.hubs.of(side);
    let turn = frames.tilts.of(side).first().copied().unwrap_or(0.0) + frames.roll_at_rest;
    let pressed = (*frames.sinking.of(side) - turn * across).max(0.0);
    TireScene { y: tire.y, width: tire.width, radius: tire.radius, pressed }
}

/// Position of a seat: of the ride's stations the one of that name.
fn seat(frames: &Frames, side: Side) -> f64 {
    let name = format!("{}-seat", side.word());
    let found = frames.outcome.stations.iter().find(|station| station.name == name);
    found.map_or(0.45 * side.sign(), |station| station.y)
}

/// The round factor by which heights of road, wheels and body are easily seen.
fn height_factor(frames: &Frames) -> f64 {
    let sides =
        |sides: &Sides<Vec<f64>>| sides.left.iter().chain(&sides.right).copied().collect::<Vec<f64>>();
    let all = sides(&frames.road).into_iter().chain(sides(&frames.hubs));
    let largest =
        all.chain(frames.body.iter().map(|rise| rise.up)).fold(0.0_f64, |most, up| most.max(up.abs()));
    if largest > STILL { round_down(CLEAR_HEIGHT / largest).clamp(1.0, MOST) } else { 1.0 }
}

/// The round factor by which bow and tilt are easily seen.
fn flex_factor(frames: &Frames, drawing: &Drawing) -> f64 {
    let largest =
        |values: &mut dyn Iterator<Item = f64>| values.fold(0.0_f64, |most, value| most.max(value.abs()));
    let tilt = largest(&mut frames.tilts.left.iter().chain(&frames.tilts.right).copied());
    let bow = largest(&mut frames.bends.iter().flatten().copied());
    let span = (drawing.hubs.left - drawing.hubs.right).abs();
    let factor = (CLEAR_TILT / tilt.max(STILL)).min(CLEAR_BOW * span / bow.max(STILL * span));
    round_down(factor).max(1.0)
}
