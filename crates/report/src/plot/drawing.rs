//! Sizes of what is drawn, for the rear view.

use axlebow_axle::{Axle, Side, Sides};

use crate::sheet::Silhouette;

/// Sizes of the parts in the rear view.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    /// The tires of each wheel end; empty when not drawn.
    pub tires: Sides<Vec<TireDrawing>>,
    /// Position of the hubs, about which the tires tilt, m.
    pub hubs: Sides<f64>,
    /// Half the height of tube, housing and spindle along the axle; two points share a `y` at a step.
    pub line: Vec<LinePoint>,
    /// Width of each seat along the axle, m; zero draws a mark only.
    pub seats: Sides<f64>,
    /// Stiffeners.
    pub stiffeners: Vec<Silhouette>,
}

impl Drawing {
    /// Sizes of an axle.
    pub fn of(axle: &Axle) -> Self {
        let stiffeners = axle.stiffeners.iter();
        Drawing {
            tires: Sides::each(|side| tires(axle, side)),
            hubs: Sides::each(|side| axle.tire_y(side, 0.0)),
            line: line(axle),
            seats: Sides::each(|side| axle.seats.of(side).width),
            stiffeners: stiffeners.filter_map(|own| Silhouette::of(axle, own)).collect(),
        }
    }

    /// Loaded radius of the largest tire, m; what hub height is drawn when there are no tires.
    pub(crate) fn largest_radius(&self) -> f64 {
        let tires = self.tires.left.iter().chain(&self.tires.right);
        let largest = tires.map(|tire| tire.radius).fold(0.0, f64::max);
        if largest > 0.0 { largest } else { 0.2 * (self.hubs.left - self.hubs.right).abs() }
    }

    /// Half the height of the axle at a place, m; zero past its ends.
    pub(crate) fn half_height(&self, y: f64) -> f64 {
        let stretch =
            self.line.windows(2).find(|pair| pair[0].y >= y && y >= pair[1].y && pair[0].y > pair[1].y);
        stretch.map_or(0.0, |pair| {
            let share = (pair[0].y - y) / (pair[0].y - pair[1].y);
            pair[0].half_height + share * (pair[1].half_height - pair[0].half_height)
        })
    }
}

fn tires(axle: &Axle, side: Side) -> Vec<TireDrawing> {
    let wheel = axle.wheels.of(side);
    let (radius, width) = (wheel.tire().loaded_radius, wheel.tire().width);
    let places = wheel.tires();
    places.map(|place| TireDrawing { y: axle.tire_y(side, place.outboard), radius, width }).collect()
}

/// Half the height along the axle from left to right.
fn line(axle: &Axle) -> Vec<LinePoint> {
    let mut line = Vec::new();
    for sign in [1.0, -1.0] {
        let mut half: Vec<LinePoint> = Vec::new();
        for piece in axle.body.pieces() {
            let point = |y: f64, height: f64| LinePoint { y: sign * y, half_height: 0.5 * height };
            half.push(point(piece.from, piece.inboard.height()));
            half.push(point(piece.to, piece.outboard.height()));
        }
        if sign > 0.0 {
            half.reverse();
        }
        line.extend(half);
    }
    line
}

/// A tire seen from the rear.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TireDrawing {
    /// Position of its middle, m.
    pub y: f64,
    /// Loaded radius, m.
    pub radius: f64,
    /// Width of the tire, m.
    pub width: f64,
}

/// Half the height of the axle at a place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LinePoint {
    /// Position, m.
    pub y: f64,
    /// Half the height there, m.
    pub half_height: f64,
}
