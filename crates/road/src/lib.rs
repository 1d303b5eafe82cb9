//! Bumps, potholes, washboard, random and measured roads, tire enveloping; does not know vehicles or files.
//!
//! # Axes
//! x is the distance along the road, forward, in meters; z is the height of the
//! ground, up, in meters (ISO 8855). An [`Event`] is a shape with its own x; a
//! [`Track`] puts it somewhere on the way of one wheel and may average it over
//! the tire's contact; a [`Road`] is the track of the left and of the right wheels.
//!
//! # Wave numbers
//! n is a spatial frequency in cycle/m. Spectral densities are one-sided: the
//! integral of `Gd(n)` over positive n is the mean square of the height.
//!
//! # Example
//! A bump that the right wheels meet 0.5 m later, and a random road of class B:
//! ```
//! use axlebow_road::*;
//! let bump = Road::new(HaversineBump::new(0.08, 0.9)?, Wheels::Both { lag: 0.5 })?.enveloped(0.2)?;
//! assert!(bump.left.height(0.45) > bump.right.height(0.45));
//!
//! let random = RandomRoad {
//!     spectrum: iso_8608_spectrum(RoughnessClass::B),
//!     coherence: Coherence::isotropic(1.85)?,
//!     band: WaveBand::default(),
//!     length: 500.0,
//!     spacing: 0.05,
//!     seed: 1,
//! };
//! let [left, _right] = random.profiles()?;
//! assert!((3e-3..6e-3).contains(&international_roughness_index(&left)?)); // 4.3 m/km in the mean
//! # Ok::<(), RoadError>(())
//! ```

mod bump;
mod class;
mod coherence;
mod error;
mod event;
mod felt_spectrum;
mod pothole;
mod profile;
mod ramp;
mod random_road;
mod road;
mod roughness_index;
mod spectrum;
mod step;
mod track;
mod washboard;
mod wave_band;

pub use bump::{HalfSineBump, HaversineBump};
pub use class::RoughnessClass;
pub use coherence::Coherence;
pub use error::RoadError;
pub use event::Event;
pub use felt_spectrum::{FeltSpectrum, TrackDensities};
pub use pothole::Pothole;
pub use profile::MeasuredProfile;
pub use ramp::Ramp;
pub use random_road::RandomRoad;
pub use road::{Road, Wheels};
pub use roughness_index::international_roughness_index;
pub use spectrum::{RoughnessSpectrum, TimeSpectrum, iso_8608_spectrum};
pub use step::Step;
pub use track::Track;
pub use washboard::Washboard;
pub use wave_band::WaveBand;
