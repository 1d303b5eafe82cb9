//! A beam in its natural modes, with what is left of the static answer.

use std::f64::consts::TAU;

use axlebow_fe::linalg::SymmetricMatrix;

use crate::error::BeamError;
use crate::parts::line::Line;
use crate::solving::modes::{mass_matrix, open_stops, pencil};
use crate::solving::system::System;
use crate::{Mesh, Part};

/// A beam in its natural modes, M-orthonormal, about the unloaded beam with its stops open.
pub(crate) struct ModalBeam {
    system: System,
    stiffness: SymmetricMatrix,
    /// ω² of each mode, 1/s².
    squares: Vec<f64>,
    /// All freedoms of each mode.
    shapes: Vec<Vec<f64>>,
}

impl ModalBeam {
    /// The lowest `count` modes of a beam that is held.
    ///
    /// # Errors
    /// [`BeamError::Mechanism`] of one that is not, and as [`crate::modes`].
    pub fn of(line: &Line, mesh: &Mesh, count: usize) -> Result<Self, BeamError> {
        if let Some(motion) = line.free_motion(&open_stops(line)) {
            return Err(BeamError::Mechanism { motion });
        }
        line.check_areas("mass")?;
        let system = System::new(line, mesh, &open_stops(line))?;
        let (stiffness, mass) = (system.stiffness(), mass_matrix(line, &system));
        let pairs = pencil(&stiffness, &mass, count)?;
        let shape = |column: usize| {
            let mut all = vec![0.0; system.holds.len()];
            system.spread(&pairs.vectors.column(column).collect::<Vec<_>>(), &mut all);
            all
        };
        let shapes = (0..pairs.values.len()).map(shape).collect();
        Ok(Self { shapes, squares: pairs.values.clone(), stiffness, system })
    }

    /// Natural circular frequencies, rad/s.
    pub fn frequencies(&self) -> Vec<f64> {
        self.squares.iter().map(|square| square.max(0.0).sqrt()).collect()
    }

    /// What each mode does at a place.
    pub fn at(&self, at: f64) -> Vec<f64> {
        let (element, units) = self.units(at);
        let of = |all: &Vec<f64>| {
            self.system.ends(element, all).iter().zip(units).map(|(end, unit)| end * unit).sum()
        };
        self.shapes.iter().map(of).collect()
    }

    /// Deflections everywhere under a unit force at a place, which are those at the place under unit forces everywhere.
    ///
    /// # Errors
    /// [`BeamError::Unsolvable`].
    pub fn influence(&self, at: f64) -> Result<Influence<'_>, BeamError> {
        let (element, units) = self.units(at);
        let mut forces = vec![0.0; self.system.holds.len()];
        forces[2 * element..2 * element + 4].copy_from_slice(&units);
        let mut free = self.system.free_part(&forces);
        let unsolvable =
            |failure: axlebow_fe::linalg::PivotFailure| BeamError::Unsolvable { reason: failure.to_string() };
        self.stiffness.clone().factor().map_err(unsolvable)?.solve(&mut free);
        let mut all = vec![0.0; self.system.holds.len()];
        self.system.spread(&free, &mut all);
        Ok(Influence { beam: self, all })
    }

    /// ω² of each mode.
    pub fn squares(&self) -> &[f64] {
        &self.squares
    }

    /// The element at a place, with what a unit of each of its freedoms does there.
    fn units(&self, at: f64) -> (usize, [f64; 4]) {
        let nodes = &self.system.nodes;
        let last = self.system.elements.len() - 1;
        let number = nodes.partition_point(|node| *node <= at).saturating_sub(1).min(last);
        let element = &self.system.elements[number];
        let unit = |end: usize| {
            let mut ends = [0.0; 4];
            ends[end] = 1.0;
            element.field(at - nodes[number], &ends, false).deflection
        };
        (number, std::array::from_fn(unit))
    }
}

/// An influence line.
pub(crate) struct Influence<'a> {
    beam: &'a ModalBeam,
    all: Vec<f64>,
}

impl Influence<'_> {
    /// Its value at a place, m/N.
    pub fn at(&self, at: f64) -> f64 {
        let (element, units) = self.beam.units(at);
        self.beam.system.ends(element, &self.all).iter().zip(units).map(|(end, unit)| end * unit).sum()
    }
}

/// Refuses a value of a response that cannot be.
pub(crate) fn accepted(
    thing: &'static str,
    value: f64,
    (unit, accepted, holds): (&'static str, &'static str, bool),
) -> Result<f64, BeamError> {
    if holds && value.is_finite() {
        return Ok(value);
    }
    Err(BeamError::Value { part: Part::Response, thing, value, unit, accepted })
}

/// A frequency in Hz.
pub(crate) fn hertz(circular: f64) -> f64 {
    circular / TAU
}
