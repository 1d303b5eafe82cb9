//! The whole axle, what must fit together on it, and where along it things are.

pub(crate) mod axle;
pub(crate) mod bearing_play;
pub(crate) mod preheat;
pub(crate) mod stations;
pub(crate) mod wall_at_seat;
