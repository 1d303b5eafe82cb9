//! Waves of wear round a tire that feed themselves.
//!
//! A hollow in the tread is a bump that comes back every turn. Rib r carries a radius wave `d exp(inθ)`, which at the
//! speed V excites the axle at `ω = n V/R_e`:
//!
//! ```text
//! rib load        δF = z (φ d − B q)        z = k + iωc, φ what a mean over the contact leaves of the wave
//! hub             q = C(ω) Bᵀ δF            rise and camber of each hub; C without the tires that B and z stand for
//! rib radius      δR = φ d − δF/(3 z)       as R = R₀ − crown − deflection/3
//! turning         Σ δX = iω I V/R³ δR_e     forward forces X of the ribs against the inertia I of the wheel
//! wear            δw = φ (∂w/∂F δF + ∂w/∂R δR + ∂w/∂R_e δR_e)
//! next turn       d − δw
//! ```
//!
//! θ counts the places of the tread in the order in which they meet the road. Per meter of mean tread worn d obeys
//! `dd/dh = Λ d`, `Λ = −W/w̄`, so that the coefficient of wear cancels; an eigenvalue of Λ with a real part above zero is
//! a wave that grows ([`GrowingWave`]).
//!
//! # Validity
//! Waves small against the deflection of a rib, all of the loads, slips and motions linear about the axle's rest. Wear is
//! smeared evenly over the contact, although rubber slides in the rear of it. Pull-out of a rib beside its neighbors, and
//! bending of the belt between ribs, are left out: a rib is a spring of its own. So is what a wave does to the sidewalls' load,
//! and to the tilt of a tread by side force: both follow the whole tire, which a wave hardly moves.
//!
//! Sources: the mechanism, waves somewhat above a natural frequency which damping narrows: A. Sueoka, T. Ryu, T. Kondou,
//! M. Togashi, T. Fujimoto, Polygonal wear of automobile tire, JSME Int. J. Series C 40 (1997) 209-217, from memory. The
//! matrices are our derivation.

#[cfg(test)]
#[allow(clippy::unwrap_used)] // a helper of tests is a test too
mod closed_loop;
mod critical_camber;
mod growing_wave;
mod hub_waves;
mod one_mass;
mod scuff_slopes;
mod shoulder_alone;
mod wear_waves;
mod wearing_tread;

pub use critical_camber::CriticalCamber;
pub use growing_wave::{GrowingWave, fastest, fastest_rate};
pub use hub_waves::{HubWaves, WheelInertia};
pub use one_mass::OneMass;
pub use shoulder_alone::ShoulderAlone;
pub use wear_waves::{TreadWave, WearWaves};
pub use wearing_tread::{RibPress, RibSpring, WearingTread};
