//! Nodes, members, masses and supports of a structure.

use std::borrow::Cow;

use nalgebra::{Vector3, Vector6};

use crate::FeError;
use crate::beam::{Beam, BeamMember};
use crate::coupling::{Attachment, Coupling, brought};
use crate::freedom::Freedom;
use crate::spring::Spring;

/// A node of a [`Structure`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct NodeId(pub(crate) usize);

/// A beam of a [`Structure`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct BeamId(pub(crate) usize);

/// A spring of a [`Structure`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SpringId(pub(crate) usize);

/// A mass at a point carried by a node, kg.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LumpedMass {
    /// Where it sits.
    pub place: Attachment,
    /// Mass, kg.
    pub mass: f64,
}

#[derive(Debug, Clone)]
struct Node {
    station: Cow<'static, str>,
    position: Vector3<f64>,
    held: [bool; 6],
}

/// Nodes, members, masses and supports; numbers freedoms in the order in which nodes were added, so that a
/// chain added along its length has a narrow band.
#[derive(Debug, Clone, Default)]
pub struct Structure {
    nodes: Vec<Node>,
    pub(crate) beams: Vec<BeamMember>,
    pub(crate) springs: Vec<Coupling>,
    pub(crate) masses: Vec<LumpedMass>,
}

impl Structure {
    /// An empty structure.
    pub fn new() -> Self {
        Structure::default()
    }

    /// Adds a node at `position` (m); `station` names it in messages.
    pub fn add_node(&mut self, station: impl Into<Cow<'static, str>>, position: [f64; 3]) -> NodeId {
        self.nodes.push(Node {
            station: station.into(),
            position: Vector3::from(position),
            held: [false; 6],
        });
        NodeId(self.nodes.len() - 1)
    }

    /// Adds a beam.
    ///
    /// # Errors
    /// [`FeError::ImpossibleMember`] when its length or a flexibility is zero, negative or not finite.
    pub fn add_beam(&mut self, beam: Beam) -> Result<BeamId, FeError> {
        let (start, end) = (self.point(&beam.start), self.point(&beam.end));
        let flexibility = &beam.flexibility;
        for (what, value) in [
            ("length", (end - start).norm()),
            ("axial flexibility", flexibility.axial[0]),
            ("torsional flexibility", flexibility.torsion),
            ("bending flexibility about axis 3", flexibility.plane_12.bending[0]),
            ("bending flexibility about axis 2", flexibility.plane_13.bending[0]),
        ] {
            if !(value.is_finite() && value > 0.0) {
                let (from, to) = (self.station(beam.start.node), self.station(beam.end.node));
                let (from, to) = (from.to_owned(), to.to_owned());
                return Err(FeError::ImpossibleMember { what, value, from, to });
            }
        }
        self.beams.push(BeamMember::placed(&beam, start, end));
        Ok(BeamId(self.beams.len() - 1))
    }

    /// Adds a spring.
    ///
    /// # Errors
    /// [`FeError::ImpossibleMember`] when a stiffness is not finite or a direct stiffness is negative.
    pub fn add_spring(&mut self, spring: Spring) -> Result<SpringId, FeError> {
        let direct = |i: usize| spring.stiffness[i][i];
        let bad = spring.stiffness.iter().flatten().copied().find(|k| !k.is_finite());
        if let Some(value) = bad.or_else(|| (0..6).map(direct).find(|k| *k < 0.0)) {
            let from = self.station(spring.near.node).to_owned();
            let to = spring.far.map_or("the ground", |far| self.station(far.node)).to_owned();
            return Err(FeError::ImpossibleMember { what: "spring stiffness", value, from, to });
        }
        self.springs.push(spring.coupling());
        Ok(SpringId(self.springs.len() - 1))
    }

    /// Adds a mass at a point.
    pub fn add_mass(&mut self, mass: LumpedMass) {
        self.masses.push(mass);
    }

    /// Holds freedoms of a node at zero.
    pub fn hold(&mut self, node: NodeId, freedoms: &[Freedom]) {
        for freedom in freedoms {
            self.nodes[node.0].held[freedom.index()] = true;
        }
    }

    /// Number of nodes.
    pub fn node_count(&self) -> usize {
        self.nodes.len()
    }

    /// All nodes in order.
    pub fn nodes(&self) -> impl Iterator<Item = NodeId> + use<> {
        (0..self.nodes.len()).map(NodeId)
    }

    /// Name of a node.
    pub fn station(&self, node: NodeId) -> &str {
        &self.nodes[node.0].station
    }

    /// Position of a node, m.
    pub fn position(&self, node: NodeId) -> [f64; 3] {
        self.nodes[node.0].position.into()
    }

    /// Whether a freedom is held.
    pub fn is_held(&self, node: NodeId, freedom: Freedom) -> bool {
        self.nodes[node.0].held[freedom.index()]
    }

    pub(crate) fn held(&self, node: usize) -> &[bool; 6] {
        &self.nodes[node].held
    }

    /// Position of an attachment, m.
    pub(crate) fn point(&self, attachment: &Attachment) -> Vector3<f64> {
        self.nodes[attachment.node.0].position + Vector3::from(attachment.arm)
    }

    /// All couplings: those of beams, then springs.
    pub(crate) fn couplings(&self) -> impl Iterator<Item = &Coupling> {
        self.beams.iter().map(|beam| &beam.coupling).chain(&self.springs)
    }

    /// Total mass of beams and lumped masses, kg.
    pub fn mass(&self) -> f64 {
        let beams: f64 = self.beams.iter().map(|beam| beam.mass_per_length * beam.flexibility.length).sum();
        beams + self.masses.iter().map(|lump| lump.mass).sum::<f64>()
    }

    /// Nodal force of a lumped mass under the acceleration field `gravity` (m/s²).
    pub(crate) fn lump_weight(lump: &LumpedMass, gravity: &Vector3<f64>) -> Vector6<f64> {
        let mut force = Vector6::zeros();
        force.fixed_rows_mut::<3>(0).copy_from(&(gravity * lump.mass));
        brought(&force, &Vector3::from(lump.place.arm))
    }
}
