//! The values that a key takes.

use axlebow_units::Kind;

use crate::{Distribution, Expression};

/// A key of the model or of the road files, or a choice among several, and the values that it takes.
#[derive(Debug, Clone, PartialEq)]
pub struct Varied {
    /// Path of the key, such as `tube.wall`; one of a road file after `road.`, such as `road.speed`; its name where it is a
    /// choice.
    pub path: String,
    /// Further keys that take the same value.
    pub others: Vec<String>,
    /// What expressions call it.
    pub name: String,
    /// Whether the file gives it that name.
    pub is_named: bool,
    /// What it measures.
    pub kind: Kind,
    /// The values, SI; none where they are drawn from a distribution; of a choice the places of its entries.
    pub values: Vec<f64>,
    /// Entries of the catalogue, if it is a choice.
    pub choices: Vec<Choice>,
    /// What its values are drawn from, if they are not listed.
    pub distribution: Option<Distribution>,
}

/// One entry of a catalogue.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Choice {
    /// What it is called.
    pub name: String,
    /// Paths with what is to stand there.
    pub changes: Vec<(String, String)>,
}

/// Keys that follow the varied ones.
#[derive(Debug, Clone, PartialEq)]
pub struct Link {
    /// Their paths.
    pub paths: Vec<String>,
    /// Their value, by the values of [`Study::varied`](crate::Study::varied).
    pub value: Expression,
}

/// What a path of a key of the road files begins with.
const OF_ROAD: &str = "road.";

impl Varied {
    /// A key with listed values that is called by the last word of its path.
    pub fn of_key(path: &str, kind: Kind, values: Vec<f64>) -> Varied {
        Varied {
            path: path.to_owned(),
            others: Vec::new(),
            name: last_word(path).to_owned(),
            is_named: false,
            kind,
            values,
            choices: Vec::new(),
            distribution: None,
        }
    }

    /// Path of the key in the road files, if it is one of theirs.
    pub fn of_road(&self) -> Option<&str> {
        of_road(&self.path).filter(|_| self.choices.is_empty())
    }

    /// The keys that take its value; none of a choice.
    pub fn paths(&self) -> impl Iterator<Item = &str> {
        let own = self.choices.is_empty().then_some(self.path.as_str());
        own.into_iter().chain(self.others.iter().map(String::as_str))
    }

    /// Whether an axle is another one for another of its values.
    pub(crate) fn is_of_axle(&self) -> bool {
        let changes = self.choices.iter().flat_map(|choice| &choice.changes);
        self.paths().chain(changes.map(|(path, _)| path.as_str())).any(|path| of_road(path).is_none())
    }

    /// The value at a share of its distribution, or of its list.
    ///
    /// Arguments: `share`, above 0 and below 1.
    pub fn at_share(&self, share: f64) -> f64 {
        match &self.distribution {
            Some(distribution) => distribution.quantile(share),
            None => {
                let place = (share * self.values.len() as f64) as usize;
                self.values[place.min(self.values.len() - 1)]
            }
        }
    }
}

/// What stands after `road.` in a path that begins so.
pub(crate) fn of_road(path: &str) -> Option<&str> {
    path.strip_prefix(OF_ROAD)
}

/// What stands after the last point of a path.
pub(crate) fn last_word(path: &str) -> &str {
    path.rsplit('.').next().unwrap_or(path)
}

/// About `most` of some values, evenly spaced, both ends among them.
pub(crate) fn thinned(values: &[f64], most: usize) -> Vec<f64> {
    thinned_places(values.len(), most.max(2)).into_iter().map(|place| values[place]).collect()
}

/// Places of at most so many out of `count`, evenly spaced, both ends among them; of one, the middle.
pub(crate) fn thinned_places(count: usize, most: usize) -> Vec<usize> {
    let last = count.saturating_sub(1);
    let steps = most.saturating_sub(1).min(last);
    if steps == 0 {
        return (0..count).skip(last / 2).take(1).collect();
    }
    (0..=steps).map(|i| (i * last + steps / 2) / steps).collect()
}

/// How values between two ends are spaced.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Spacing {
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

    #[test]
    fn listed_values_are_taken_alike() {
        let varied = Varied::of_key("tube.wall", Kind::Length, vec![1.0, 2.0, 4.0, 8.0]);
        assert_eq!([0.01, 0.26, 0.74, 0.99].map(|share| varied.at_share(share)), [1.0, 2.0, 4.0, 8.0]);
        assert_eq!((varied.name.as_str(), varied.paths().collect::<Vec<_>>()), ("wall", vec!["tube.wall"]));
    }
}
