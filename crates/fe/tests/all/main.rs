//! All tests of the crate from outside, in one binary: each binary more is linked again.

#![allow(clippy::unwrap_used)] // helpers of tests are tests too

mod buckling;
mod chain;
mod convergence;
mod harmonic;
mod linalg;
mod modal;
mod properties;
mod shell;
mod tie;
mod transient;
mod tube;
mod unsupported;
