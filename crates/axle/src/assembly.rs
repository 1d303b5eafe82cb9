//! The whole axle, what must fit together on it, and where along it things are.

pub(crate) mod axle;
pub(crate) mod bearing_play;
pub(crate) mod fit;
pub(crate) mod preheat;
pub(crate) mod seat_wall;
pub(crate) mod standard_cases;
pub(crate) mod station_names;
pub(crate) mod stations;
pub(crate) mod wall_at_seat;
