//! The values that a key takes.

use axlebow_numerics::{Distribution, Expression};
use axlebow_units::Kind;

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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn listed_values_are_taken_alike() {
        let varied = Varied::of_key("tube.wall", Kind::Length, vec![1.0, 2.0, 4.0, 8.0]);
        assert_eq!([0.01, 0.26, 0.74, 0.99].map(|share| varied.at_share(share)), [1.0, 2.0, 4.0, 8.0]);
        assert_eq!((varied.name.as_str(), varied.paths().collect::<Vec<_>>()), ("wall", vec!["tube.wall"]));
    }
}
