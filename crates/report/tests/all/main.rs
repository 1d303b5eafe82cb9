//! All tests of the crate from outside, of made-up outcomes, in one binary: each binary more is linked again.

#![allow(clippy::unwrap_used)] // helpers of tests are tests too

mod animation;
mod answer;
mod answer_of_demo;
mod catalog;
mod figures;
mod json;
mod life_figure;
mod made_up;
mod modes;
#[cfg(feature = "parquet")]
mod parquet;
mod response;
mod ride;
mod spectrum;
mod study;
mod table;
mod uncertainty;
