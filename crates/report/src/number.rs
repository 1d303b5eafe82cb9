//! How numbers are written in tables and figures.

mod digits;
mod drawn;
mod numbers;
mod shown;

pub(crate) use digits::{fixed, significant};
pub(crate) use drawn::{tick, typographic, with_power, with_sign};
pub(crate) use numbers::Numbers;
pub(crate) use shown::Shown;
