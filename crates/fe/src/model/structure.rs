//! Nodes, members, masses and supports of a structure.

use std::borrow::Cow;

use nalgebra::{Vector3, Vector6};

use crate::FeError;
use crate::element::beam::{Beam, BeamMember};
use crate::element::mass::RigidBody;
use crate::element::shell::{ShellMember, Wall};
use crate::element::spring::Spring;
use crate::node::coupling::{Attachment, Coupling, brought};
use crate::node::freedom::Freedom;
use crate::node::ids::{BeamId, NodeId, ShellId, SpringId};
use crate::node::tie::Tie;

#[derive(Debug, Clone)]
struct Node {
    station: Cow<'static, str>,
    position: Vector3<f64>,
    held: [bool; 6],
    tie: Option<Tie>,
}

/// Nodes, members, masses and supports; numbers freedoms in the order in which nodes were added, so that a
/// chain added along its length has a narrow band.
#[derive(Debug, Clone, Default)]
pub struct Structure {
    nodes: Vec<Node>,
    pub(crate) beams: Vec<BeamMember>,
    pub(crate) springs: Vec<Coupling>,
    pub(crate) masses: Vec<RigidBody>,
    pub(crate) shells: Vec<ShellMember>,
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
            tie: None,
        });
        NodeId(self.nodes.len() - 1)
    }

    /// Adds a beam.
    ///
    /// # Errors
    /// [`FeError::ImpossibleMember`] when its length or a flexibility is zero, negative or not finite; the shear
    /// flexibilities and the mass may be zero.
    pub fn add_beam(&mut self, beam: Beam) -> Result<BeamId, FeError> {
        let (start, end) = (self.point(&beam.start), self.point(&beam.end));
        if let Some((what, value)) = impossible_quantity(&beam, (end - start).norm()) {
            let (from, to) = (self.station(beam.start.node), self.station(beam.end.node));
            let (from, to) = (from.to_owned(), to.to_owned());
            return Err(FeError::ImpossibleMember { what, value, from, to });
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

    /// Adds what a weight that stands above a node does as the node turns about X, which carries the weight sideways: a
    /// spring that pushes on instead of back.
    ///
    /// - `moment`: weight times height above the node, N m/rad
    ///
    /// # Errors
    /// [`FeError::ImpossibleMember`] for a moment that is not finite.
    pub fn add_weight_above(&mut self, node: NodeId, moment: f64) -> Result<SpringId, FeError> {
        let spring = Spring::to_ground(Attachment::at(node), [0.0, 0.0, 0.0, -moment, 0.0, 0.0]);
        if !moment.is_finite() {
            let (from, to) = (self.station(node).to_owned(), "the ground".to_owned());
            return Err(FeError::ImpossibleMember { what: "moment of a weight", value: moment, from, to });
        }
        self.springs.push(spring.coupling());
        Ok(SpringId(self.springs.len() - 1))
    }

    /// Adds a mass at a point or a rigid body.
    pub fn add_mass(&mut self, mass: impl Into<RigidBody>) {
        self.masses.push(mass.into());
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

    pub(crate) fn tie_of(&self, node: NodeId) -> Option<Tie> {
        self.nodes[node.0].tie
    }

    pub(crate) fn set_tie(&mut self, node: NodeId, tie: Tie) {
        self.nodes[node.0].tie = Some(tie);
    }

    /// The same point as carried by the node that has its equations.
    pub(crate) fn carrier(&self, attachment: &Attachment) -> Attachment {
        match self.tie_of(attachment.node) {
            Some(tie) => Attachment::on_arm(tie.hub, (tie.arm + Vector3::from(attachment.arm)).into()),
            None => *attachment,
        }
    }

    /// Position of an attachment, m.
    pub(crate) fn point(&self, attachment: &Attachment) -> Vector3<f64> {
        self.nodes[attachment.node.0].position + Vector3::from(attachment.arm)
    }

    /// All couplings: those of beams, then springs.
    pub(crate) fn couplings(&self) -> impl Iterator<Item = &Coupling> {
        self.beams.iter().map(|beam| &beam.coupling).chain(&self.springs)
    }

    /// The four corners of a shell.
    pub fn shell_nodes(&self, shell: ShellId) -> [NodeId; 4] {
        self.shells[shell.0].nodes
    }

    /// The wall of a shell.
    pub fn wall(&self, shell: ShellId) -> Wall {
        self.shells[shell.0].wall
    }

    /// Total mass of beams, shells and lumped masses, kg.
    pub fn mass(&self) -> f64 {
        let beams: f64 = self.beams.iter().map(|beam| beam.mass_per_length * beam.flexibility.length).sum();
        let shells: f64 = self.shells.iter().map(ShellMember::mass).sum();
        beams + shells + self.masses.iter().map(|lump| lump.mass).sum::<f64>()
    }

    /// Refuses masses that no body can have.
    pub(crate) fn check_masses(&self) -> Result<(), FeError> {
        for body in &self.masses {
            if let Some((what, value)) = body.impossible_quantity() {
                let station = self.station(body.place.node).to_owned();
                return Err(FeError::ImpossibleMass { what, value, station });
            }
        }
        Ok(())
    }

    /// Nodal force of a lumped mass under the acceleration field `gravity` (m/s²).
    pub(crate) fn lump_weight(lump: &RigidBody, gravity: &Vector3<f64>) -> Vector6<f64> {
        let mut force = Vector6::zeros();
        force.fixed_rows_mut::<3>(0).copy_from(&(gravity * lump.mass));
        brought(&force, &Vector3::from(lump.place.arm))
    }
}

/// The first quantity of a beam, with its value, that no beam can have.
fn impossible_quantity(beam: &Beam, length: f64) -> Option<(&'static str, f64)> {
    let f = &beam.flexibility;
    let above_zero = [
        ("length", length),
        ("axial flexibility", f.axial[0]),
        ("torsional flexibility", f.torsion),
        ("bending flexibility about axis 3", f.plane_12.bending[0]),
        ("bending flexibility about axis 2", f.plane_13.bending[0]),
    ];
    let not_negative = [
        ("shear flexibility along axis 2", f.plane_12.shear[0]),
        ("shear flexibility along axis 3", f.plane_13.shear[0]),
        ("mass per length", beam.mass_per_length),
        ("rotary inertia per length about axis 1", beam.inertia_per_length[0]),
        ("rotary inertia per length about axis 2", beam.inertia_per_length[1]),
        ("rotary inertia per length about axis 3", beam.inertia_per_length[2]),
    ];
    let bad = above_zero.into_iter().find(|(_, value)| !(value.is_finite() && *value > 0.0));
    bad.or_else(|| not_negative.into_iter().find(|(_, value)| !(value.is_finite() && *value >= 0.0)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Flexibility, Rigidity};

    fn two_places(distance: f64) -> (Structure, Attachment, Attachment) {
        let mut structure = Structure::new();
        let start = structure.add_node("seat", [0.0; 3]);
        let end = structure.add_node("tube end", [0.0, distance, 0.0]);
        (structure, Attachment::at(start), Attachment::at(end))
    }

    const RIGIDITY: [f64; 6] = [1e9, 1e6, 2e6, 2e6, 1e8, 1e8];

    fn rigidity([axial, torsion, bending_2, bending_3, shear_2, shear_3]: [f64; 6]) -> Rigidity {
        Rigidity { axial, torsion, bending_2, bending_3, shear_2, shear_3 }
    }

    fn refused_beam(distance: f64, rigidity: &Rigidity) -> Option<String> {
        let (mut structure, start, end) = two_places(distance);
        let flexibility = Flexibility::uniform(distance, rigidity);
        let beam = Beam::between(start.node, end.node, [0.0, 0.0, 1.0], flexibility);
        structure.add_beam(beam).err().map(|error| error.to_string())
    }

    #[test]
    fn a_beam_without_length_is_refused() {
        for length in [0.0, f64::NAN, f64::INFINITY] {
            let message = refused_beam(length, &rigidity(RIGIDITY)).unwrap();
            assert_eq!(
                message,
                format!(
                    "length of the member from seat to tube end is {length}; \
                     a finite value greater than zero is accepted"
                )
            );
        }
        assert_eq!(refused_beam(1e-4, &rigidity(RIGIDITY)), None);
    }

    #[test]
    fn a_beam_of_impossible_rigidity_is_refused_by_name() {
        let names = ["axial", "torsional", "about axis 2", "about axis 3", "along axis 2", "along axis 3"];
        for (i, name) in names.into_iter().enumerate() {
            for value in [0.0, -1e6, f64::NAN] {
                let mut values = RIGIDITY;
                values[i] = value;
                let message = refused_beam(1.0, &rigidity(values)).unwrap();
                assert!(message.contains(name), "{value}: {message}");
            }
        }
        let rigid_in_shear =
            Rigidity { shear_2: f64::INFINITY, shear_3: f64::INFINITY, ..rigidity(RIGIDITY) };
        assert_eq!(refused_beam(1.0, &rigid_in_shear), None);
    }

    #[test]
    fn a_beam_of_impossible_mass_is_refused() {
        for (mass, accepted) in
            [(0.0, true), (30.0, true), (-1.0, false), (f64::NAN, false), (f64::INFINITY, false)]
        {
            let (mut structure, start, end) = two_places(1.0);
            let flexibility = Flexibility::uniform(1.0, &rigidity(RIGIDITY));
            let beam = Beam::between(start.node, end.node, [0.0, 0.0, 1.0], flexibility).with_mass(mass);
            assert_eq!(structure.add_beam(beam).is_ok(), accepted, "{mass}");
        }
    }

    #[test]
    fn a_spring_of_impossible_stiffness_is_refused() {
        for value in [-1.0, f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            for i in 0..6 {
                let (mut structure, near, far) = two_places(1.0);
                let mut rates = [1e6; 6];
                rates[i] = value;
                let to_ground = structure.add_spring(Spring::to_ground(near, rates)).unwrap_err().to_string();
                assert!(to_ground.contains("from seat to the ground is"), "{to_ground}");
                let between =
                    structure.add_spring(Spring::between(near, far, rates)).unwrap_err().to_string();
                assert!(
                    between.contains("spring stiffness of the member from seat to tube end"),
                    "{between}"
                );
            }
        }
        let (mut structure, near, _) = two_places(1.0);
        assert!(structure.add_spring(Spring::to_ground(near, [0.0; 6])).is_ok());
    }
}
