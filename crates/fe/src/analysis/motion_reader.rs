//! Nodes and beams under a vector of free freedoms, as time integration keeps it.

use nalgebra::{Vector3, Vector6};

use crate::element::beam_forces::BeamForces;
use crate::model::direction::Direction;
use crate::model::numbering::Numbering;
use crate::model::structure::Structure;
use crate::node::coupling::{Coupling, carried};
use crate::node::ids::{BeamId, NodeId, SpringId};

/// Reads motions of nodes and forces of beams from a vector over the free freedoms.
#[derive(Debug)]
pub struct MotionReader<'a> {
    structure: &'a Structure,
    numbering: Numbering,
}

impl<'a> MotionReader<'a> {
    /// A reader of vectors over the free freedoms of a structure.
    pub fn of(structure: &'a Structure) -> Self {
        MotionReader { structure, numbering: Numbering::of(structure) }
    }

    /// Number of free freedoms.
    pub fn order(&self) -> usize {
        self.numbering.order()
    }

    /// Motion of a node: ux uy uz (m), rx ry rz (rad); zero where held.
    pub fn motion(&self, free: &[f64], node: NodeId) -> [f64; 6] {
        self.vector(free, node).into()
    }

    /// What a beam carries from the motion of its ends; inertia and loads along it are left out.
    pub fn beam_forces(&self, free: &[f64], beam: BeamId) -> BeamForces {
        let member = &self.structure.beams[beam.0];
        member.forces(&self.deformation(free, &member.coupling), &Vector3::zeros())
    }

    /// Linear readings of what a beam carries, as directions d that give them as `dᵀu`: `read` takes the numbers
    /// from the beam's forces.
    pub fn beam_readings<const N: usize>(
        &self,
        beam: BeamId,
        read: impl Fn(&BeamForces) -> [f64; N],
    ) -> [Direction; N] {
        let coupling = &self.structure.beams[beam.0].coupling;
        self.member_readings(coupling, |free| read(&self.beam_forces(free, beam)))
    }

    /// As [`MotionReader::beam_readings`], for a spring: `read` takes the numbers from its deformation, the motion of its
    /// near side less that of its far side, and its force.
    pub fn spring_readings<const N: usize>(
        &self,
        spring: SpringId,
        read: impl Fn(&[f64; 6], &[f64; 6]) -> [f64; N],
    ) -> [Direction; N] {
        let coupling = &self.structure.springs[spring.0];
        self.member_readings(coupling, |free| {
            let deformation = self.deformation(free, coupling);
            read(&deformation.into(), &(coupling.stiffness * deformation).into())
        })
    }

    fn deformation(&self, free: &[f64], coupling: &Coupling) -> Vector6<f64> {
        let far = coupling.far.map_or_else(Vector6::zeros, |far| self.vector(free, far));
        coupling.deformation(&self.vector(free, coupling.near), &far)
    }

    /// Readings that the freedoms of a member's nodes alone take part in.
    fn member_readings<const N: usize>(
        &self,
        coupling: &Coupling,
        read: impl Fn(&[f64]) -> [f64; N],
    ) -> [Direction; N] {
        let nodes = [Some(coupling.near), coupling.far]
            .map(|node| node.map(|node| self.numbering.ties.carrier(node)));
        let own = nodes.into_iter().flatten().flat_map(|node| (0..6).map(move |i| (node, i)));
        let freedoms = own.filter_map(|(node, i)| self.numbering.equation(node, i));
        let mut unit = vec![0.0; self.order()];
        let columns = freedoms.map(|freedom| {
            unit[freedom] = 1.0;
            let column = read(&unit);
            unit[freedom] = 0.0;
            (freedom, column)
        });
        let columns: Vec<_> = columns.collect();
        std::array::from_fn(|i| Direction::new(columns.iter().map(|(freedom, column)| (*freedom, column[i]))))
    }

    /// A vector over the free freedoms from each node's motion, such as a rigid one.
    pub fn vector_of(&self, motion: impl Fn(NodeId) -> [f64; 6]) -> Vec<f64> {
        let mut free = vec![0.0; self.order()];
        for (full, number) in self.numbering.free() {
            free[number] = motion(NodeId(full / 6))[full % 6];
        }
        free
    }

    /// The direction along which a reading is taken that is linear in the motion, such as a force of a beam.
    pub fn direction(&self, reading: impl Fn(&[f64]) -> f64) -> Direction {
        let mut unit = vec![0.0; self.order()];
        let parts = (0..self.order()).map(|freedom| {
            unit[freedom] = 1.0;
            let part = reading(&unit);
            unit[freedom] = 0.0;
            (freedom, part)
        });
        Direction::new(parts.collect::<Vec<_>>())
    }

    fn vector(&self, free: &[f64], node: NodeId) -> Vector6<f64> {
        let own = |node: NodeId| {
            Vector6::from_fn(|i, _| self.numbering.equation(node, i).map_or(0.0, |number| free[number]))
        };
        self.numbering.ties.of(node).map_or_else(|| own(node), |tie| carried(&own(tie.hub), &tie.arm))
    }
}
