//! Strength: sections, welds and the wall at a seat against their limits.

pub(crate) mod bearing_lives;
pub(crate) mod not_made;
pub(crate) mod placed_check;
pub(crate) mod seat_picture;
pub(crate) mod seat_strength;
pub(crate) mod spindle_fillets;
pub(crate) mod strength;
pub(crate) mod strength_options;
pub(crate) mod weld_band;
pub(crate) mod weld_strength;
