//! Values between two ends, and a few of many.

/// How values between two ends are spaced.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spacing {
    /// Equal steps.
    Even,
    /// Equal ratios; both ends are above 0.
    Log,
}

impl Spacing {
    /// Values from one end to the other, both of them exactly.
    ///
    /// ```text
    /// from + (to − from) i/(n − 1),   from (to/from)^(i/(n − 1))
    /// ```
    ///
    /// Arguments: `from` and `to`, any finite values; `count`, n, at least 2.
    pub fn values(self, from: f64, to: f64, count: u32) -> Vec<f64> {
        let last = count.saturating_sub(1);
        let value = |i: u32| match (i, self) {
            (i, _) if i == last => to,
            (0, _) => from,
            (i, Self::Even) => from + (to - from) * f64::from(i) / f64::from(last),
            (i, Self::Log) => from * (to / from).powf(f64::from(i) / f64::from(last)),
        };
        (0..count).map(value).collect()
    }
}

/// About `most` of some values, evenly spaced, both ends among them.
pub fn thinned(values: &[f64], most: usize) -> Vec<f64> {
    thinned_places(values.len(), most.max(2)).into_iter().map(|place| values[place]).collect()
}

/// Places of at most so many out of `count`, evenly spaced, both ends among them; of one, the middle.
pub fn thinned_places(count: usize, most: usize) -> Vec<usize> {
    let last = count.saturating_sub(1);
    let steps = most.saturating_sub(1).min(last);
    if steps == 0 {
        return (0..count).skip(last / 2).take(1).collect();
    }
    (0..=steps).map(|i| (i * last + steps / 2) / steps).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ends_are_exact() {
        for (from, to, count) in [(0.006, 0.016, 41), (0.1, 0.3, 1_000_000), (0.3, 0.1, 7), (3.0, 1e-9, 2)] {
            for spacing in [Spacing::Even, Spacing::Log] {
                let values = spacing.values(from, to, count);
                assert_eq!(values.len(), count as usize);
                assert_eq!((values[0], values[values.len() - 1]), (from, to));
            }
        }
    }

    #[test]
    fn thinned_values_keep_their_ends() {
        let values = Spacing::Even.values(0.0, 10.0, 11);
        assert_eq!(thinned(&values, 3), [0.0, 5.0, 10.0]);
        assert_eq!(thinned(&values, 4), [0.0, 3.0, 7.0, 10.0]);
        assert_eq!(thinned(&values, 99), values);
        assert_eq!(thinned(&[4.0], 3), [4.0]);
        assert_eq!(thinned(&[], 3), [0.0; 0]);
        assert_eq!((thinned_places(5, 1), thinned_places(5, 2)), (vec![2], vec![0, 4]));
    }

    #[test]
    fn values_are_spaced_as_they_say() {
        assert_eq!(Spacing::Even.values(1.0, 2.0, 5), [1.0, 1.25, 1.5, 1.75, 2.0]);
        let log = Spacing::Log.values(1.0, 16.0, 5);
        for (own, wanted) in log.iter().zip([1.0, 2.0, 4.0, 8.0, 16.0]) {
            approx::assert_relative_eq!(*own, wanted, max_relative = 1e-14);
        }
    }
}
