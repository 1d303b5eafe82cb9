//! What axle and rides do to the tire face.

pub(crate) mod cup_growth;
pub(crate) mod cup_suspects;
pub(crate) mod growth;
pub(crate) mod growth_outcome;
pub(crate) mod tire_face;
pub(crate) mod tire_ride;
pub(crate) mod wearing_axle;
