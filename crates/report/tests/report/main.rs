//! Reports of made-up outcomes.

#![allow(clippy::unwrap_used)] // helpers of tests are tests too

mod figures;
mod json;
mod made_up;
mod modes;
mod ride;
mod study;
mod table;
