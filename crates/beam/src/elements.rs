//! Meshes, and the elements that are set beside each other.

pub(crate) mod displacement;
pub(crate) mod element;
pub(crate) mod flexibility;
pub(crate) mod member;
pub(crate) mod mesh;
