//! A beam at rest, on its stops, and in its modes.

pub(crate) mod contact;
pub(crate) mod harmonic;
pub(crate) mod modal;
pub(crate) mod modes;
pub(crate) mod moving;
pub(crate) mod peaks;
pub(crate) mod solution;
pub(crate) mod system;
