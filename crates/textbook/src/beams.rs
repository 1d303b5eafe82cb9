//! Straight beams.

pub(crate) mod beam_line;
pub(crate) mod cantilevers;
pub(crate) mod foundation;
pub(crate) mod overhung_axle;
pub(crate) mod partial_interaction;
pub(crate) mod supported_beams;
pub(crate) mod varying_beams;
