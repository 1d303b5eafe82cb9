//! Modes, shocks and moving forces.

pub(crate) mod modes;
pub(crate) mod modes_of_tubes;
pub(crate) mod moving_force;
pub(crate) mod shocks;
pub(crate) mod vibrating_line;
