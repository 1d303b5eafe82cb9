//! What nodes and members of a structure are called by.

/// A node of a [`Structure`](crate::Structure).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct NodeId(pub(crate) usize);

/// A beam of a [`Structure`](crate::Structure).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct BeamId(pub(crate) usize);

/// A spring of a [`Structure`](crate::Structure).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SpringId(pub(crate) usize);

/// A shell of a [`Structure`](crate::Structure).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ShellId(pub(crate) usize);

impl NodeId {
    /// The node that is added first to a structure.
    pub const FIRST: NodeId = NodeId(0);

    /// Place among the nodes, from 0 in the order in which they were added.
    pub fn index(self) -> usize {
        self.0
    }
}
