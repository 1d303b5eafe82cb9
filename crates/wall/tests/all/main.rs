//! All tests of the crate from outside, in one binary: each binary more is linked again.

#![allow(clippy::unwrap_used)] // helpers of tests are tests too

mod example;
mod seat_convergence;
mod seat_stress;
mod seat_table;
