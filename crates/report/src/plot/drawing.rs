//! Sizes of what is drawn, for the rear view.

use axlebow_axle::Sides;

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
    pub stiffeners: Vec<StiffenerDrawing>,
}

/// A stiffener seen from the rear.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StiffenerDrawing {
    /// Its left and its right end, m.
    pub ends: [f64; 2],
    /// Its lowest and its highest edge above the axle's line, m.
    pub edges: [f64; 2],
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
