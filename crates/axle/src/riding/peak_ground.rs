//! What a peak of a curve stands on.

/// The higher of the lowest values on both sides between a top and what is higher, or the end: that over which the
/// top stands out.
pub(crate) fn peak_ground(values: &[f64], top: usize) -> f64 {
    let lowest = |side: &mut dyn Iterator<Item = &f64>| {
        side.take_while(|value| **value <= values[top]).copied().fold(values[top], f64::min)
    };
    lowest(&mut values[..top].iter().rev()).max(lowest(&mut values[top + 1..].iter()))
}
