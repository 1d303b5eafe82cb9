//! What moves, frame by frame.

use axlebow_axle::{RideOutcome, RideShape, Rise, Side, Sides, StationPeak};
use axlebow_units::Kind;
use serde::Serialize;

use crate::ReportError;
use crate::number::Shown;
use crate::panels::finite;
use crate::plot::Drawing;
use crate::plot::ride_figure::RideFigure;

/// Longest part of the axle between two points of its drawn line, m.
const CUT: f64 = 0.06;
/// Heights are sent in steps of a hundredth of a millimeter, turns of 10 µrad.
const FINENESS: f64 = 1e5;

/// A point of the drawn outline: position and half the height, m.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub(super) struct OutlinePoint {
    pub y: f64,
    pub half: f64,
}

/// A place beside which the axle's line is known.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Node {
    y: f64,
    rise: Rise,
}

/// The ride's shapes as they are drawn, in SI, heights against those at rest.
pub(super) struct Frames<'a> {
    pub outcome: &'a RideOutcome,
    /// Points of the outline, from left to right.
    pub outline: Vec<OutlinePoint>,
    /// For each frame the height of each point of the outline over the line through the hubs, m.
    pub bends: Vec<Vec<f64>>,
    /// For each frame the road under each side's wheels, m.
    pub road: Sides<Vec<f64>>,
    /// For each frame the rise of each hub, m.
    pub hubs: Sides<Vec<f64>>,
    /// For each frame the turn of each hub against the line through the hubs, rad.
    pub tilts: Sides<Vec<f64>>,
    /// For each frame the rise and the turn of the vehicle body.
    pub body: Vec<Rise>,
    /// Roll of the line through the hubs at rest, rad.
    pub roll_at_rest: f64,
    /// How far the hubs sink into the tires at rest, m.
    pub sinking: Sides<f64>,
}

impl<'a> Frames<'a> {
    /// The frames of a ride that kept shapes.
    pub fn of(outcome: &'a RideOutcome, drawing: &Drawing) -> Result<Self, ReportError> {
        let history = &outcome.history;
        let Some(rest) = history.shapes.first() else {
            return Err(ReportError::Empty { thing: "list of the ride's shapes" });
        };
        let outline = outline(drawing);
        check(&history.shapes)?;
        let span = drawing.hubs.left - drawing.hubs.right;
        let roll = |shape: &RideShape| (shape.hubs.left.up - shape.hubs.right.up) / span;
        let each = |value: &dyn Fn(&RideShape, Side) -> f64| {
            Sides::each(|side| history.shapes.iter().map(|shape| value(shape, side)).collect::<Vec<_>>())
        };
        let height =
            |shape: &RideShape, side: Side| history.road.of(side).get(shape.sample).copied().unwrap_or(0.0);
        Ok(Frames {
            bends: history
                .shapes
                .iter()
                .map(|shape| bend(shape, &outcome.stations, drawing, &outline))
                .collect(),
            road: each(&|shape, side| height(shape, side) - height(rest, side)),
            hubs: each(&|shape, side| shape.hubs.of(side).up - rest.hubs.of(side).up),
            tilts: each(&|shape, side| shape.hubs.of(side).turn - roll(shape)),
            body: history.shapes.iter().map(|shape| less(shape.body, rest.body)).collect(),
            roll_at_rest: roll(rest),
            sinking: Sides::each(|side| height(rest, side) - rest.hubs.of(side).up),
            outcome,
            outline,
        })
    }

    /// The frames for the page: histories in the reader's units, motion in whole steps of [`FINENESS`].
    pub fn in_units_of(&self, figure: &RideFigure) -> serde_json::Value {
        let history = &self.outcome.history;
        let at = |values: &[f64], scale: f64, decimals: i32| -> Vec<f64> {
            let samples = history.shapes.iter().map(|shape| values.get(shape.sample).copied().unwrap_or(0.0));
            samples.map(|value| rounded(value * scale, decimals)).collect()
        };
        let pair = |sides: &Sides<Vec<f64>>, shown: Shown| {
            let scale = figure.numbers.scaled(1.0, shown);
            serde_json::json!({ "left": at(&sides.left, scale, 4), "right": at(&sides.right, scale, 4) })
        };
        let steps = |values: &[f64]| values.iter().map(|value| step(*value)).collect::<Vec<_>>();
        let both = |sides: &Sides<Vec<f64>>| serde_json::json!({ "left": steps(&sides.left), "right": steps(&sides.right) });
        serde_json::json!({
            "fineness": FINENESS,
            "time": at(&history.time, 1.0, 6),
            "distance": at(&history.distance, 1.0 / figure.distance_unit().1, 4),
            "load": pair(&history.load, Shown::Usual(Kind::Force)),
            "camber": pair(&history.camber, Shown::Usual(Kind::Angle)),
            "road": both(&self.road),
            "hubs": both(&self.hubs),
            "tilts": both(&self.tilts),
            "body": self.body.iter().map(|rise| [step(rise.up), step(rise.turn)]).collect::<Vec<_>>(),
            "bends": self.bends.iter().map(|bend| steps(bend)).collect::<Vec<_>>(),
        })
    }
}

/// Refuses shapes that cannot be drawn.
fn check(shapes: &[RideShape]) -> Result<(), ReportError> {
    let parts = |shape: &RideShape| {
        let all = shape.line.iter().chain([&shape.hubs.left, &shape.hubs.right, &shape.body]);
        all.flat_map(|rise| [rise.up, rise.turn]).collect::<Vec<_>>()
    };
    finite("shape of the axle", shapes.iter().flat_map(parts))
}

fn less(rise: Rise, rest: Rise) -> Rise {
    Rise { up: rise.up - rest.up, turn: rise.turn - rest.turn }
}

fn step(value: f64) -> i64 {
    (value * FINENESS).round() as i64
}

fn rounded(value: f64, decimals: i32) -> f64 {
    let scale = 10f64.powi(decimals);
    (value * scale).round() / scale
}

/// The drawing's line with further points where two lie far apart.
pub(super) fn outline(drawing: &Drawing) -> Vec<OutlinePoint> {
    let mut points = Vec::new();
    for pair in drawing.line.windows(2) {
        let (run, rise) = (pair[1].y - pair[0].y, pair[1].half_height - pair[0].half_height);
        let parts = (run.abs() / CUT).ceil().clamp(1.0, 200.0) as usize;
        points.extend((0..parts).map(|part| {
            let share = part as f64 / parts as f64;
            OutlinePoint { y: pair[0].y + share * run, half: pair[0].half_height + share * rise }
        }));
    }
    points.extend(drawing.line.last().map(|last| OutlinePoint { y: last.y, half: last.half_height }));
    points
}

/// Height of each point of the outline over the line through the hubs.
fn bend(
    shape: &RideShape,
    stations: &[StationPeak],
    drawing: &Drawing,
    outline: &[OutlinePoint],
) -> Vec<f64> {
    let nodes: Vec<Node> =
        stations.iter().zip(&shape.line).map(|(station, rise)| Node { y: station.y, rise: *rise }).collect();
    let (hubs, ups) = (drawing.hubs, shape.hubs);
    let slope = (ups.left.up - ups.right.up) / (hubs.left - hubs.right);
    let chord = |y: f64| ups.right.up + (y - hubs.right) * slope;
    outline.iter().map(|point| height(&nodes, point.y) - chord(point.y)).collect()
}

/// Height of the axle's line at a place: between two nodes the cubic through both with their turns as slopes, straight
/// on beyond the last.
fn height(nodes: &[Node], y: f64) -> f64 {
    let after = nodes.partition_point(|node| node.y > y).min(nodes.len().saturating_sub(1));
    let Some(right) = nodes.get(after) else { return 0.0 };
    let left = nodes.get(after.saturating_sub(1)).unwrap_or(right);
    let run = left.y - right.y;
    if run <= 0.0 || y < right.y {
        return right.rise.up + (y - right.y) * right.rise.turn;
    }
    let (x, rest) = ((y - right.y) / run, (left.y - y) / run);
    right.rise.up * rest * rest * (1.0 + 2.0 * x)
        + left.rise.up * x * x * (3.0 - 2.0 * x)
        + run * x * rest * (right.rise.turn * rest - left.rise.turn * x)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// z = y³ − y, z' = 3y² − 1: a cubic is met exactly.
    #[test]
    fn between_nodes_a_cubic_is_met_and_beyond_them_its_tangent() {
        let node = |y: f64| Node { y, rise: Rise { up: y.powi(3) - y, turn: 3.0 * y * y - 1.0 } };
        let nodes = [0.9, 0.2, -0.5].map(node);
        for y in [0.9, 0.55, 0.2, 0.0, -0.31, -0.5] {
            assert!((height(&nodes, y) - (y.powi(3) - y)).abs() < 1e-12, "{y}");
        }
        let end = nodes[0].rise;
        assert!((height(&nodes, 1.0) - (end.up + 0.1 * end.turn)).abs() < 1e-12);
        assert_eq!(height(&[], 1.0), 0.0);
    }
}
