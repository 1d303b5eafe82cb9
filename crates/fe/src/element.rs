//! Beams, springs, masses and shells, each by itself.

pub(crate) mod beam;
pub(crate) mod beam_forces;
pub(crate) mod beam_mass;
pub(crate) mod flexibility;
pub(crate) mod mass;
pub(crate) mod shell;
pub(crate) mod spring;
