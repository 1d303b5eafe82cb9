//! Words of tires on axles that tables and pictures share.

use axlebow_study::{CompatibilityOutcome, TireColumn};
use axlebow_units::{Kind, show};

use crate::number::Numbers;

/// What the cells of the map say.
pub(crate) const AGAINST_UPRIGHT: &str = "Wear of the inner shoulder over that of the same rib upright and straight: how little the tire forgives the axle";
/// What the cells of a picture say.
pub(crate) const EXCESS: &str = "How much more the inner shoulder wears than the same rib upright and straight, %; 0: as upright; \
     outlined: the least";
/// What the cells of the second table say.
pub(crate) const RATE: &str = "How fast the inner shoulder uses its tread up; 1 is the mean of the first axle on the first \
     tire, upright and straight";

/// What was put together.
pub(crate) fn heading(outcome: &CompatibilityOutcome) -> String {
    let columns = match outcome.columns.len() {
        1 => String::new(),
        several => format!("{several} tires and offsets, "),
    };
    format!("{} axles, {columns}{}", outcome.axles.len(), outcome.case)
}

/// Tire and offset of a column.
pub(crate) fn column_name(column: &TireColumn, n: Numbers) -> String {
    let tire = column.tire.clone().unwrap_or("own tires".to_owned());
    let offset = match column.offset {
        None => return tire,
        Some(0.0) => "zeroset".to_owned(),
        Some(offset) => {
            let word = if offset > 0.0 { "outset" } else { "inset" };
            format!("{} {word}", show(offset.abs(), Kind::Length, n.system))
        }
    };
    format!("{tire}, {offset}")
}
