//! The axle with its body free to move: at rest, its natural modes, their damping.

pub(crate) mod at_rest;
pub(crate) mod hysteresis;
pub(crate) mod light_damping;
pub(crate) mod mode_name;
pub(crate) mod modes;
pub(crate) mod vibration;
