//! Quantities, unit strings and display units; knows nothing else.
//!
//! Text such as `"152.4 mm"` or `"300 lbf ft"` becomes an SI value by [`parse`], and an SI value becomes
//! text by [`show`]. What is measured is a [`Kind`]; a unit of another kind is an error that says what the
//! unit measures and what is accepted.
//!
//! # Unit text
//! A number, then a unit expression; the space between them may be left out.
//!
//! | part | written |
//! | --- | --- |
//! | number | `9.5`, `-3`, `.5`, `2.1e5`; decimal point only, no digit grouping; `3/8`, `5-3/4` and `5 3/4` |
//! | length | `6"`, `5'` and `5' 3-1/2"` as well |
//! | product | space, `*` or `·`: `lbf ft`, `N*m` |
//! | quotient | `/`, once or more, left to right: `N/mm`, `m/s/s` |
//! | power | `m2`, `m^2`, `m²`, `s^-1` |
//! | brackets | `rad/(kN m)`; needed where a product follows a `/` |
//!
//! `g` is the gram and `gn` the standard acceleration of gravity. `lb` is mass and `lbf` is force.
//! Where a load is wanted, [`parse_load`] takes a mass for its weight.
//! Angle is a dimension of its own, so `N m` is a moment and `N m/rad` a rotational stiffness.
//!
//! # Source of the factors
//! [`mod@unit`] names the authority for each factor.

mod dimension;
mod display;
mod error;
mod expression;
mod kind;
mod load;
mod number;
mod parse;
pub mod unit;

pub use dimension::Dimension;
pub use display::{DisplayUnit, UnitSystem, display_unit, show};
pub use error::{Fault, UnitError};
pub use kind::Kind;
pub use load::{ParsedLoad, accepted_loads, parse_load};
pub use parse::{Parsed, is_bare_zero, parse, parse_or_zero};
