//! Words of tire faces that tables and pictures share.

use axlebow_axle::TireSlot;
use axlebow_axle::tread::DutyName;

use crate::number::{Numbers, Shown, fixed};

/// What a tire of a face is called: `single`, or `outer` and `inner`.
pub(crate) fn tire_name(number: usize, tires: usize) -> &'static str {
    TireSlot::of(number, tires).word()
}

/// A duty with its preposition, such as `on line haul`.
pub(crate) fn duty_words(duty: DutyName) -> &'static str {
    match duty {
        DutyName::LineHaul => "on line haul",
        DutyName::Regional => "in regional service",
        DutyName::City => "in city service",
        DutyName::Stated => "in the stated duty",
    }
}

/// How far a depth of wear is told for: ten thousand of the reader's units of distances along a road.
pub(crate) fn far(n: Numbers) -> String {
    format!("10 000 {}", n.road_unit().0)
}

/// Depth worn off over that distance, by the depth for each distance traveled.
pub(crate) fn worn_so_far(rate: f64, n: Numbers) -> f64 {
    1e4 * n.road_unit().1 * rate
}

/// The same in words, such as "0.512 mm".
pub(crate) fn worn_words(rate: f64, n: Numbers) -> String {
    n.full(worn_so_far(rate, n), Shown::Deflection)
}

/// A relative number; a dash where there is none.
pub(crate) fn index(value: Option<f64>) -> String {
    value.map_or("-".to_owned(), |value| fixed(value, if value.abs() < 10.0 { 3 } else { 1 }))
}
