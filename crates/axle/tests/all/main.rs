//! All tests of the crate from outside, in one binary: each binary more is linked again.

#![allow(clippy::unwrap_used)] // helpers of tests are tests too

mod bearing_play;
mod example;
mod flex;
mod force_method;
mod ground;
mod growth;
mod life;
mod modes;
mod properties;
mod response;
mod ride;
mod spectrum;
mod stiffener;
mod strength;
mod tied_stiffener;
mod tire;
mod weld_stiffness;
