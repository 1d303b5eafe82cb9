//! Words of tire faces that tables and pictures share.

use axlebow_axle::TireSlot;
use axlebow_axle::tread::DutyName;

use crate::number::fixed;

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

/// A relative number; a dash where there is none.
pub(crate) fn index(value: Option<f64>) -> String {
    value.map_or("-".to_owned(), |value| fixed(value, if value.abs() < 10.0 { 3 } else { 1 }))
}
