//! What an axle is made of, and what it is loaded with.

pub(crate) mod bearing_place;
pub(crate) mod bearing_stiffness;
pub(crate) mod body;
pub(crate) mod bump_stop;
pub(crate) mod disc_flexibility;
pub(crate) mod error;
pub(crate) mod flexing;
pub(crate) mod freedoms;
pub(crate) mod load_case;
pub(crate) mod orientation;
pub(crate) mod running;
pub(crate) mod seat;
pub(crate) mod seat_bracket;
pub(crate) mod side;
pub(crate) mod stiffener;
pub(crate) mod stiffener_form;
pub(crate) mod tire_fit;
pub(crate) mod wall_by;
pub(crate) mod welding_limits;
pub(crate) mod wheel;
pub(crate) mod wheel_end;
