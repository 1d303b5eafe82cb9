//! Wheel bearings: what each carries and how long it lasts.

mod pair;
mod reliability;
mod split;
mod tapered_roller;

pub use pair::BearingPair;
pub use reliability::Reliability;
pub use split::bearing_split;
pub use tapered_roller::{TaperedRoller, bearing_life_check, mean_load};
