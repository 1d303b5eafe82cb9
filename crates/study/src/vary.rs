//! The values that a key takes.

use axlebow_units::Kind;

/// A key of the model and the values that it takes.
#[derive(Debug, Clone, PartialEq)]
pub struct Varied {
    /// Path of the key, such as `tube.wall`.
    pub path: String,
    /// What it measures.
    pub kind: Kind,
    /// The values, SI.
    pub values: Vec<f64>,
}

/// Evenly spaced values, from + (to − from) i / (n − 1), the last exactly `to`.
///
/// Arguments: `from` and `to`, any finite values; `count`, n, at least 2.
pub(crate) fn evenly(from: f64, to: f64, count: u32) -> Vec<f64> {
    let last = count.saturating_sub(1);
    let value = |i: u32| if i == last { to } else { from + (to - from) * f64::from(i) / f64::from(last) };
    (0..count).map(value).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ends_are_exact() {
        for (from, to, count) in [(0.006, 0.016, 41), (0.1, 0.3, 1_000_000), (0.3, 0.1, 7), (-1.0, 1e-9, 2)] {
            let values = evenly(from, to, count);
            assert_eq!(values.len(), count as usize);
            assert_eq!((values[0], values[values.len() - 1]), (from, to));
        }
    }

    #[test]
    fn values_are_evenly_spaced() {
        assert_eq!(evenly(1.0, 2.0, 5), [1.0, 1.25, 1.5, 1.75, 2.0]);
    }
}
