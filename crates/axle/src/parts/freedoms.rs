//! Freedoms of a node in a six-vector.

/// Freedom about X in a six-vector.
pub(crate) const RX: usize = 3;
