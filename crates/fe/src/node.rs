//! Nodes: what they are called, their freedoms, the rigid arms that reach from them, and what can be wrong.

pub(crate) mod coupling;
pub(crate) mod error;
pub(crate) mod freedom;
pub(crate) mod ids;
pub(crate) mod tie;
