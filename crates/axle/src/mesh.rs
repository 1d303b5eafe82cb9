//! The axle as finite elements.

pub(crate) mod frame;
pub(crate) mod seated_bar;
pub(crate) mod stiffened_beam;
pub(crate) mod straight_seats;
pub(crate) mod stressed_section;
pub(crate) mod tied_stiffener;
pub(crate) mod weld_line;
