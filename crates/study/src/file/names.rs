//! What expressions may name: varied keys and results.

use axlebow_numerics::{is_name, plain_name};

use crate::ask::{Named, Varied};
use crate::solve::{Cost, QUANTITIES};

/// Every name that an expression may use, with what it stands for.
#[derive(Debug, Clone, Default)]
pub(crate) struct Names {
    pub words: Vec<String>,
    pub stand_for: Vec<Named>,
}

impl Names {
    /// Those of varied keys; a choice has no number.
    pub fn of_varied(varied: &[Varied]) -> Names {
        let mut names = Names::default();
        for (place, own) in varied.iter().enumerate() {
            // A choice keeps its place, so that expressions find the values of a point in their order.
            let word = if own.choices.is_empty() { own.name.clone() } else { String::new() };
            names.add(word, Named::Varied(place));
        }
        names
    }

    /// The same and those of results: of a lone ride by their names, of several after the ride's; of a duty where there is one.
    pub fn with_results(mut self, rides: &[String], duty: bool) -> Names {
        for quantity in QUANTITIES.iter().filter(|own| duty || own.cost != Cost::Life) {
            let word = plain_name(&quantity.name);
            match (quantity.is_of_ride(), rides) {
                (false, _) => self.add(word, Named::Result(&quantity.name, None)),
                (true, [_]) => self.add(word, Named::Result(&quantity.name, Some(0))),
                (true, rides) => {
                    for (place, ride) in rides.iter().enumerate() {
                        self.add(
                            format!("{}.{word}", plain_name(ride)),
                            Named::Result(&quantity.name, Some(place)),
                        );
                    }
                }
            }
        }
        self
    }

    pub fn add(&mut self, word: String, named: Named) {
        self.words.push(word);
        self.stand_for.push(named);
    }

    /// Whether a word would stand for two things, or cannot be written in an expression.
    pub fn refuse(&self, word: &str) -> Option<String> {
        if !is_name(word) {
            return Some(format!("an expression cannot write {word:?}"));
        }
        self.words.iter().any(|own| own == word).then(|| format!("something else is called {word:?} already"))
    }
}

/// Whether a result has a name, as expressions write it.
pub(crate) fn is_result(word: &str) -> bool {
    QUANTITIES.iter().any(|quantity| plain_name(&quantity.name) == word)
}
