//! What axle and rides do to the tire face.

pub(crate) mod cup_suspects;
pub(crate) mod tire_face;
pub(crate) mod tire_ride;
