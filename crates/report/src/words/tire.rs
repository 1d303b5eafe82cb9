//! Words of tire faces that tables and pictures share.

use axlebow_axle::TireSlot;

use crate::number::fixed;

/// What a tire of a face is called: `single`, or `outer` and `inner`.
pub(crate) fn tire_name(number: usize, tires: usize) -> &'static str {
    TireSlot::of(number, tires).word()
}

/// A relative number; a dash where there is none.
pub(crate) fn index(value: Option<f64>) -> String {
    value.map_or("-".to_owned(), |value| fixed(value, if value.abs() < 10.0 { 3 } else { 1 }))
}
