//! What is known exactly, and how meshes go towards it.

pub(crate) mod closed_form;
pub(crate) mod closed_modes;
pub(crate) mod convergence;
pub(crate) mod reference;
