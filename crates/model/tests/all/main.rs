//! All tests of the crate from outside, in one binary: each binary more is linked again.

#![allow(clippy::unwrap_used)] // helpers of tests are tests too

mod beams;
mod cases;
mod demo;
mod demo_lane;
mod duties;
mod guided;
mod numbers;
mod reader;
mod removals;
mod roads;
mod seats;
mod variable_axle;
mod wheel_ends;
