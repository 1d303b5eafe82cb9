//! A whole structure under its loads: members, equations, matrices and states.

pub(crate) mod assembly;
pub(crate) mod direction;
pub(crate) mod loads;
pub(crate) mod numbering;
pub(crate) mod state;
pub(crate) mod structure;
mod surface;
pub(crate) mod ties;
