//! The catalog of results: what each outcome of an axle gives, under which name, in which unit, and what it means.
//!
//! Documents, their schemas and the keys of CSV files and studies come from these tables ([`axlebow_results`]). Order is
//! that of the documents. Signs are those of [`crate::outcome`]; left is positive.

mod growth;
mod life;
mod modes;
mod response;
mod ride;
mod static_case;
mod stiffening;
mod strength;
mod tires;

use axlebow_results::{Field, Part, Record, Shape, part};

use crate::Sides;

impl<S: Shape + 'static> Record for Sides<S> {
    const FIELDS: &'static [Field<Self>] = &[
        part("left", "Left of the vehicle.", &Part(|sides: &Self| &sides.left)),
        part("right", "Right of the vehicle.", &Part(|sides: &Self| &sides.right)),
    ];
}
