//! All tests of the crate from outside, in one binary: each binary more is linked again.

#![allow(clippy::unwrap_used)] // helpers of tests are tests too

mod depth;
mod growth;
mod properties;
mod ride;
mod specialist;
mod trends;
