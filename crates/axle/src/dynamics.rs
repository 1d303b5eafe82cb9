//! The axle with its body free to move: at rest, its natural modes, their damping.

pub(crate) mod at_rest;
pub(crate) mod hysteresis;
pub(crate) mod light_damping;
pub(crate) mod loss_factor;
pub(crate) mod mode_name;
pub(crate) mod mode_outcome;
pub(crate) mod modes;
pub(crate) mod standing;
pub(crate) mod vibration;
