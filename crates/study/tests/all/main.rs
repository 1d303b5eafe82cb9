//! All tests of the crate from outside, in one binary: each binary more is linked again.

#![allow(clippy::unwrap_used)] // helpers of tests are tests too

mod causes;
mod cups;
mod explain;
mod fit;
mod mutations;
mod payback;
mod rated_and_lasting;
mod rating;
mod remedies;
mod removals;
mod rides;
mod sampled;
mod search;
mod sensitivities;
mod sweep;
