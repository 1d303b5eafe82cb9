//! The values that a key takes.

use axlebow_units::Kind;

/// A key of the model or of the road files and the values that it takes.
#[derive(Debug, Clone, PartialEq)]
pub struct Varied {
    /// Path of the key, such as `tube.wall`; one of a road file after `road.`, such as `road.speed`.
    pub path: String,
    /// What it measures.
    pub kind: Kind,
    /// The values, SI.
    pub values: Vec<f64>,
}

/// What a path of a key of the road files begins with.
const OF_ROAD: &str = "road.";

impl Varied {
    /// Path of the key in the road files, if it is one of theirs.
    pub fn of_road(&self) -> Option<&str> {
        of_road(&self.path)
    }
}

/// What stands after `road.` in a path that begins so.
pub(crate) fn of_road(path: &str) -> Option<&str> {
    path.strip_prefix(OF_ROAD)
}

/// About `most` of some values, evenly spaced, both ends among them.
pub(crate) fn thinned(values: &[f64], most: usize) -> Vec<f64> {
    let last = values.len().saturating_sub(1);
    let steps = most.saturating_sub(1).clamp(1, last.max(1));
    let places = (0..=steps.min(last)).map(|i| (i * last + steps / 2) / steps);
    places.map(|place| values[place]).collect()
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
    fn thinned_values_keep_their_ends() {
        let values = evenly(0.0, 10.0, 11);
        assert_eq!(thinned(&values, 3), [0.0, 5.0, 10.0]);
        assert_eq!(thinned(&values, 4), [0.0, 3.0, 7.0, 10.0]);
        assert_eq!(thinned(&values, 99), values);
        assert_eq!(thinned(&[4.0], 3), [4.0]);
    }

    #[test]
    fn values_are_evenly_spaced() {
        assert_eq!(evenly(1.0, 2.0, 5), [1.0, 1.25, 1.5, 1.75, 2.0]);
    }
}
