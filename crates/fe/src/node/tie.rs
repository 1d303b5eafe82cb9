//! A node that another one moves.

use nalgebra::Vector3;

use crate::node::ids::NodeId;

/// What moves a node: another node at the end of a rigid arm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Tie {
    pub hub: NodeId,
    /// From the hub to the node.
    pub arm: Vector3<f64>,
}
