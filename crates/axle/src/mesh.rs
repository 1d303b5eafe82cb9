//! The axle as finite elements.

pub(crate) mod build;
pub(crate) mod frame;
pub(crate) mod joints;
pub(crate) mod masses;
pub(crate) mod nodes;
pub(crate) mod plan;
pub(crate) mod seated_bar;
pub(crate) mod springs;
pub(crate) mod stiffened_beam;
pub(crate) mod straight_seats;
pub(crate) mod stressed_section;
pub(crate) mod stretch;
pub(crate) mod stretches;
pub(crate) mod tied_stiffener;
pub(crate) mod weld_line;
