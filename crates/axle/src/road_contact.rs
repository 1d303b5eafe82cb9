//! What the road, the tires and the axle's own weight and drive do to the hubs.

pub(crate) mod ground;
pub(crate) mod own_loads;
