//! A natural mode, as results tell it.

use crate::Sides;
use crate::dynamics::mode_name::{Motion, Strain};

/// One natural mode.
#[derive(Debug, Clone, PartialEq)]
pub struct ModeOutcome {
    /// What moves, such as `wheel hop`; numbered where several are alike.
    pub name: String,
    /// Undamped natural frequency, Hz.
    pub frequency: f64,
    /// Damping over critical damping: `φᵀCφ/(2ω φᵀMφ)` from tires, dampers and the rest of the vehicle, and half the loss
    /// factor of steel, bushes and leaves, each by its share of the strain.
    pub damping_ratio: f64,
    /// Mass that, at the place of largest motion, has the mode's kinetic energy, kg.
    pub modal_mass: f64,
    /// Residual over inertia forces.
    pub residual: f64,
    /// Where the strain energy is; the parts make 1.
    pub strain: Strain,
    /// Where the kinetic energy is; the parts make 1.
    pub motion: Motion,
    /// The axle line from left to right; the largest motion of all is +1 m, a rotation counting as its motion at
    /// the tire's loaded radius.
    pub shape: Vec<ShapePoint>,
    /// Camber of each wheel against the road, rad, for the same shape.
    pub camber: Sides<f64>,
    /// Motion of the vehicle body for the same shape: heave (m) and roll (rad).
    pub body: [f64; 2],
}

/// A point of the axle line in a mode.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShapePoint {
    /// Position, m.
    pub y: f64,
    /// Displacement ux, uy, uz (m) and rotation rx, ry, rz (rad).
    pub motion: [f64; 6],
}
