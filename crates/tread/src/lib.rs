//! The tire face: what load, camber and toe do to the ribs of a tread; does not know finite elements, axles or files.
//!
//! A [`Face`] is all ribs on one hub: those of a single tire, or of two that share the hub. It answers in three steps:
//!
//! ```text
//! load, camber --[`Face::pressed`]--> load of each rib: a row of one-sided springs under a crowned tread
//! rib loads, toe, duty --[`Face::rolling`]--> slip, shear and scuff energy: each rib on its own radius, one speed for all
//! scuff --[`Face::worn`]--> wear, against the same tires upright, straight and as they are meant to be, under the same load
//! ```
//!
//! [`Face::worn_along`] takes the mean over a ride, so that a camber that bounces about zero counts, and keeps it round
//! the tire, where cups show.
//!
//! Signs: camber is positive with the top leaning outward, toe is positive toe-in. Places across the tread are positive
//! outboard, so that the same face serves both ends of an axle.
//!
//! # What it leaves out
//! A cambered tread also shears sideways in its contact, because it would run on a circle. That shear has the shape of
//! the pressure and stays below friction at the cambers of axles, so that it does not slide and does not wear (H. B.
//! Pacejka, Tire and Vehicle Dynamics, 3rd ed. 2012, sec. 3.2; from memory). What wears is the difference of the rolling
//! radii that camber makes.
//!
//! # Example
//! ```
//! use axlebow_tread::*;
//! let tread = Tread::usual(0.22)?;
//! let face = Face::new(tread, Carcass { radius: 0.51, stiffness: 0.9e6, rated_load: 22e3 }, &[0.165, -0.165])?;
//! let dual = face.worn(Pose { load: 40e3, camber: -0.5_f64.to_radians(), toe: 0.0 })?;
//! // The tops lean in: the inner tire carries more, and its inner shoulder wears more than upright.
//! assert!(dual.tires[1].load > dual.tires[0].load);
//! assert!(dual.tires[1].inner_shoulder().against_upright.is_some_and(|wear| wear > 1.0));
//! # Ok::<(), TreadError>(())
//! ```

mod along;
mod brush;
mod catalog;
mod cups;
mod duty;
mod error;
mod face;
mod growth;
mod pressed;
mod rolling;
mod round;
mod suspect;
mod travel;
mod tread;
mod worn;

pub use along::{AlongRide, Passed, RideWear};
pub use brush::Brush;
pub use cups::{Cups, cups, wheel_frequency};
pub use duty::{Duty, DutyName, DutyPart};
pub use error::TreadError;
pub use face::{Carcass, Face, Pose};
pub use growth::{
    CriticalCamber, GrowingWave, HubWaves, OneMass, RibPress, RibSpring, ShoulderAlone, TreadWave, WearWaves,
    WearingTread, WheelInertia, fastest, fastest_rate,
};
pub use pressed::Pressed;
pub use rolling::{ROLLING_SHARE, RibScuff, Rolling};
pub use round::{Harmonic, RoundMap};
pub use suspect::{Explanation, Suspect, SuspectKind, explanations};
pub use tread::{MOST_RIBS, Tread};
pub use worn::{Feather, RibWear, TireWear, Worn};
