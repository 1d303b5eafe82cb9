//! Words of tire faces that tables and pictures share.

use crate::number::fixed;

/// What a tire of a face is called: `single`, or `outer` and `inner`.
pub(crate) fn tire_name(number: usize, tires: usize) -> &'static str {
    match (number, tires) {
        (_, 1) => "single",
        (0, _) => "outer",
        _ => "inner",
    }
}

/// A relative number; a dash where there is none.
pub(crate) fn index(value: Option<f64>) -> String {
    value.map_or("-".to_owned(), |value| fixed(value, if value.abs() < 10.0 { 3 } else { 1 }))
}
