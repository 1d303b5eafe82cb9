//! Words of fits that tables and pictures share.

use axlebow_axle::{Ground, Side};
use axlebow_model::{ReadQuantity, Reading};
use axlebow_units::Kind;

use crate::number::{Numbers, Shown};

/// How a quantity that was read is shown.
pub(crate) fn shown(quantity: &ReadQuantity) -> Shown {
    match quantity {
        ReadQuantity::Camber(_) | ReadQuantity::Toe(_) => Shown::Usual(Kind::Angle),
        ReadQuantity::Bow | ReadQuantity::TreadDepth(_) => Shown::Deflection,
        ReadQuantity::NaturalFrequency(_) => Shown::Usual(Kind::Frequency),
    }
}

/// What was read and of what, such as `left camber`.
pub(crate) fn thing(quantity: &ReadQuantity) -> String {
    match quantity {
        ReadQuantity::Camber(side) | ReadQuantity::Toe(side) => of_wheel(quantity.word(), *side),
        ReadQuantity::Bow => "bow of the middle".to_owned(),
        ReadQuantity::NaturalFrequency(mode) => format!("frequency of {mode}"),
        ReadQuantity::TreadDepth(rib) => rib.name.clone(),
    }
}

fn of_wheel(word: &str, side: Side) -> String {
    format!("{} {word}", side.word())
}

/// The word of a ground.
pub(crate) fn ground(ground: Ground) -> &'static str {
    match ground {
        Ground::Standing => "standing",
        Ground::Rolling => "rolling",
    }
}

/// What was read, of what, and under what load on what ground.
pub(crate) fn full(reading: &Reading) -> String {
    format!("{}, {}, {}", thing(&reading.quantity), reading.load.name, ground(reading.ground))
}

/// A value with its unit.
pub(crate) fn value(value: f64, quantity: &ReadQuantity, n: Numbers) -> String {
    n.full(value, shown(quantity))
}
