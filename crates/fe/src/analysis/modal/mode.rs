//! One natural mode: its shape and where its energy is.

use nalgebra::Vector6;

use crate::model::direction::Direction;
use crate::model::numbering::Numbering;
use crate::model::structure::Structure;
use crate::node::coupling::Coupling;
use crate::node::ids::{BeamId, NodeId, SpringId};

/// A natural mode.
#[derive(Debug, Clone)]
pub struct Mode {
    /// Natural frequency, Hz; zero for a rigid motion.
    pub frequency: f64,
    /// Residual over inertia forces, ‖Kφ − ω²Mφ‖/(ω²‖Mφ‖); for a rigid motion over those at a frequency of
    /// the size of the lowest elastic ones.
    pub residual: f64,
    /// φ of each node, normalized to φᵀMφ = 1 kg.
    pub(super) motions: Vec<Vector6<f64>>,
    /// M·φ of each node.
    pub(super) momenta: Vec<Vector6<f64>>,
}

impl Mode {
    /// Motion of a node, ux uy uz (m), rx ry rz (rad), of the shape with a modal mass of 1 kg; the largest
    /// component of all is positive.
    pub fn motion(&self, node: NodeId) -> [f64; 6] {
        self.motions[node.0].into()
    }

    /// M·φ over the free freedoms of its structure: the direction along which the mode alone of all moves.
    pub fn momentum(&self, structure: &Structure) -> Direction {
        let numbering = Numbering::of(structure);
        Direction::new(numbering.free().map(|(full, number)| (number, self.momenta[full / 6][full % 6])))
    }

    /// Modal mass of the shape whose greatest displacement component is one: `1/max|u|²`, kg.
    pub fn modal_mass(&self) -> f64 {
        let greatest = |motion: &Vector6<f64>| motion.fixed_rows::<3>(0).amax();
        self.motions.iter().map(greatest).fold(0.0, f64::max).powi(-2)
    }

    /// Part of the kinetic energy that each freedom of a node has, `φᵢ(Mφ)ᵢ`; all freedoms of all nodes make 1.
    /// Through the coupling of neighbors a part can be slightly negative.
    pub fn kinetic_share(&self, node: NodeId) -> [f64; 6] {
        self.motions[node.0].component_mul(&self.momenta[node.0]).into()
    }

    /// Part of the strain energy that a beam has; zero for a rigid motion. All beams and springs make 1.
    pub fn strain_share_of_beam(&self, structure: &Structure, beam: BeamId) -> f64 {
        self.strain_share(&structure.beams[beam.0].coupling)
    }

    /// Part of the strain energy that a spring has; zero for a rigid motion.
    pub fn strain_share_of_spring(&self, structure: &Structure, spring: SpringId) -> f64 {
        self.strain_share(&structure.springs[spring.0])
    }

    fn strain_share(&self, coupling: &Coupling) -> f64 {
        if self.frequency == 0.0 {
            return 0.0;
        }
        let far = coupling.far.map_or_else(Vector6::zeros, |far| self.motions[far.0]);
        let deformation = coupling.deformation(&self.motions[coupling.near.0], &far);
        deformation.dot(&(coupling.stiffness * deformation))
            / (std::f64::consts::TAU * self.frequency).powi(2)
    }
}
