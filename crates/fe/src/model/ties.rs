//! Rigid ties: nodes that move as parts of one rigid body with a hub.
//!
//! Tied nodes have no equations: their rows and columns are brought to those of the hub through rigid arms, so that
//! the tie needs neither penalty nor multiplier.

use nalgebra::{Matrix6, Vector3, Vector6};

use crate::FeError;
use crate::model::structure::Structure;
use crate::node::coupling::{bring_rows, brought, carried, carry_columns};
use crate::node::ids::NodeId;
use crate::node::tie::Tie;

impl Structure {
    /// Ties nodes rigidly to a hub: each moves by the hub's displacement and rotation, and what acts on it acts on
    /// the hub.
    ///
    /// # Errors
    /// [`FeError::ImpossibleTie`] when a node is the hub, is held, is tied already or is the hub of others, or when
    /// the hub is tied itself.
    ///
    /// Two nodes of a rigid bar whose hub is held by springs:
    /// ```
    /// use axlebow_fe::{Attachment, Loads, Spring, StaticSystem, Structure};
    /// let mut structure = Structure::new();
    /// let hub = structure.add_node("hub", [0.0; 3]);
    /// let tip = structure.add_node("tip", [2.0, 0.0, 0.0]);
    /// structure.tie(&[tip], hub)?;
    /// structure.add_spring(Spring::to_ground(Attachment::at(hub), [1e3; 6]))?;
    /// let mut loads = Loads::new(&structure, 1);
    /// loads.add_force(0, &Attachment::at(tip), [0.0, 0.0, 1.0]);
    /// let mut system = StaticSystem::new();
    /// system.prepare(&structure)?;
    /// let moved = system.solve(&structure, loads)?.of(tip, 0)[2];
    /// assert!((moved - (1.0 + 2.0 * 2.0) / 1e3).abs() < 1e-15);
    /// # Ok::<(), axlebow_fe::FeError>(())
    /// ```
    pub fn tie(&mut self, nodes: &[NodeId], hub: NodeId) -> Result<(), FeError> {
        for node in nodes {
            if let Some(why) = self.untieable(*node, hub) {
                return Err(FeError::ImpossibleTie { station: self.station(*node).to_owned(), why });
            }
        }
        for node in nodes {
            let arm = Vector3::from(self.position(*node)) - Vector3::from(self.position(hub));
            self.set_tie(*node, Tie { hub, arm });
        }
        Ok(())
    }

    fn untieable(&self, node: NodeId, hub: NodeId) -> Option<&'static str> {
        let is_hub = || self.nodes().any(|other| self.tie_of(other).is_some_and(|tie| tie.hub == node));
        let held = |node: NodeId| self.held(node.0).contains(&true);
        match () {
            () if node == hub => Some("it is the hub itself"),
            () if self.tie_of(node).is_some() => Some("it is tied already"),
            () if self.tie_of(hub).is_some() => Some("its hub is tied to another hub"),
            () if held(node) => Some("it is held; hold the hub instead"),
            () if is_hub() => Some("it is the hub of other nodes"),
            () => None,
        }
    }
}

/// Ties by node; empty where there are none.
#[derive(Debug, Clone, Default)]
pub(crate) struct Ties(Vec<Option<Tie>>);

impl Ties {
    /// The ties of a structure, in this storage.
    pub(crate) fn read(&mut self, structure: &Structure) {
        self.0.clear();
        if structure.nodes().any(|node| structure.tie_of(node).is_some()) {
            self.0.extend(structure.nodes().map(|node| structure.tie_of(node)));
        }
    }

    pub(crate) fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    pub(crate) fn of(&self, node: NodeId) -> Option<Tie> {
        self.0.get(node.0).copied().flatten()
    }

    /// The node that has the equations of a node.
    pub(crate) fn carrier(&self, node: NodeId) -> NodeId {
        self.of(node).map_or(node, |tie| tie.hub)
    }

    /// Tied nodes with their ties.
    pub(crate) fn iter(&self) -> impl Iterator<Item = (NodeId, Tie)> + '_ {
        self.0.iter().enumerate().filter_map(|(node, tie)| Some((NodeId(node), (*tie)?)))
    }

    /// A block of a row node and a column node as one of the nodes that carry them, the row's not before the
    /// column's.
    pub(crate) fn moved(
        &self,
        (row, column): (NodeId, NodeId),
        block: &Matrix6<f64>,
    ) -> ((NodeId, NodeId), Matrix6<f64>) {
        let mut moved = *block;
        if let Some(tie) = self.of(column) {
            carry_columns(&mut moved, &tie.arm);
        }
        if let Some(tie) = self.of(row) {
            bring_rows(&mut moved, &tie.arm);
        }
        let carriers = (self.carrier(row), self.carrier(column));
        match carriers {
            (row_hub, column_hub) if row_hub == column_hub && row != column => {
                (carriers, moved + moved.transpose())
            }
            (row_hub, column_hub) if row_hub < column_hub => ((column_hub, row_hub), moved.transpose()),
            _ => (carriers, moved),
        }
    }

    /// Gives tied nodes the motions of their hubs.
    pub(crate) fn carry(&self, motions: &mut [Vector6<f64>]) {
        for (node, tie) in self.iter() {
            motions[node.0] = carried(&motions[tie.hub.0], &tie.arm);
        }
    }

    /// Brings forces on tied nodes to their hubs.
    pub(crate) fn bring(&self, forces: &mut [Vector6<f64>]) {
        for (node, tie) in self.iter() {
            let own = std::mem::replace(&mut forces[node.0], Vector6::zeros());
            forces[tie.hub.0] += brought(&own, &tie.arm);
        }
    }
}
