//! Phrases that answers share.

use axlebow_axle::Sides;
use axlebow_units::Kind;

use crate::number::{Numbers, Shown, fixed, significant};

/// Angle that is nothing, rad: half of the last digit that tables show of a degree.
const NOTHING: f64 = 8.7e-6;

/// Whether an angle is too small to be spoken of.
pub(super) fn is_nothing(angle: f64) -> bool {
    angle.abs() < NOTHING
}

/// The magnitude of an angle to two digits, such as "0.44 deg".
pub(super) fn angle(value: f64, n: Numbers) -> String {
    let size = n.scaled(value.abs(), Kind::Angle);
    let number = if size < 0.1 { fixed(size, 3) } else { fixed(size, 2) };
    format!("{number} {}", n.unit(Kind::Angle))
}

/// The magnitude of a quantity to three digits, without decimals that its table would not have.
pub(super) fn size(size: f64, shown: impl Into<Shown>, n: Numbers) -> String {
    value(size.abs(), shown, n)
}

/// A length along the axle with its sign, such as "y = -480.0 mm".
pub(super) fn place(y: f64, n: Numbers) -> String {
    format!("y = {}", n.full(y, Shown::Place))
}

/// A share in words, such as "95 %".
pub(crate) fn percent(share: f64) -> String {
    let decimals = if (1e-4..0.01).contains(&share.abs()) { 1 } else { 0 };
    format!("{} %", fixed(100.0 * share, decimals))
}

/// How often, such as "1.4 times".
pub(super) fn times(ratio: f64) -> String {
    format!("{} times", fixed(ratio, if ratio < 10.0 { 2 } else { 0 }))
}

/// Which way a camber leans a tire's top.
pub(crate) fn way(camber: f64) -> &'static str {
    if camber < 0.0 { "in" } else { "out" }
}

/// Whether two angles read the same.
pub(super) fn reads_alike(one: f64, other: f64, n: Numbers) -> bool {
    let both_nothing = is_nothing(one) && is_nothing(other);
    both_nothing || (angle(one, n) == angle(other, n) && (one < 0.0) == (other < 0.0))
}

/// How the tops of both wheels lean, such as "Tops lean in 0.44 deg".
pub(super) fn tops(camber: &Sides<f64>, n: Numbers) -> String {
    let (left, right) = (camber.left, camber.right);
    if is_nothing(left) && is_nothing(right) {
        return "Neither wheel leans".to_owned();
    }
    if reads_alike(left, right, n) {
        return format!("Tops lean {} {}", way(left), angle(left, n));
    }
    format!("The left wheel's top {} and the right wheel's {}", leans(left, n), leans(right, n))
}

/// How one top leans, such as "leans in 0.44 deg".
pub(crate) fn leans(camber: f64, n: Numbers) -> String {
    if is_nothing(camber) {
        return "does not lean".to_owned();
    }
    format!("leans {} {}", way(camber), angle(camber, n))
}

/// A count with its noun, such as "1 check" and "23 checks".
pub(super) fn several(count: usize, noun: &str) -> String {
    format!("{count} {noun}{}", if count == 1 { "" } else { "s" })
}

/// A frequency to three digits.
pub(super) fn hertz(frequency: f64) -> String {
    format!("{} Hz", significant(frequency, 3))
}

/// A result for each unit of length, such as "0.012 deg/mm".
pub(super) fn per_length(value: f64, shown: impl Into<Shown>, n: Numbers) -> String {
    let shown = shown.into();
    let length = n.scaled(1.0, Shown::Deflection);
    let number = significant(n.scaled(value.abs(), shown) / length, 3);
    format!("{number} {}/{}", n.unit(shown), n.unit(Shown::Deflection))
}

/// A value in the reader's units to three digits.
pub(super) fn value(value: f64, shown: impl Into<Shown>, n: Numbers) -> String {
    let shown = shown.into();
    format!("{} {}", significant(n.scaled(value, shown), 3), n.unit(shown)).trim_end().to_owned()
}

/// A name from a file, without control codes.
pub(crate) fn plain(name: &str) -> String {
    name.replace(char::is_control, "\u{fffd}")
}

/// Items in a row, such as "a, b and c".
pub(super) fn listed(items: &[String]) -> String {
    match items {
        [] => String::new(),
        [one] => one.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}
