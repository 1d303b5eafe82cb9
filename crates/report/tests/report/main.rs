//! Reports of made-up outcomes.

#![allow(clippy::unwrap_used)] // helpers of tests are tests too

mod animation;
mod figures;
mod json;
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
