//! How readings of static cases change with the axle.

pub(crate) mod adjoint;
pub(crate) mod stress_place;
