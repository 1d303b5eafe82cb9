//! One of several parts that a study is run in.

use std::fmt;
use std::str::FromStr;

use super::error::StoreError;

/// Most parts of a study.
const MOST: usize = 100_000;

/// One of several parts of a study, each for a machine or process of its own; every chunk is of exactly one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Part {
    number: usize,
    of: usize,
}

impl Part {
    /// The one part of a study that is run as a whole.
    pub const WHOLE: Part = Part { number: 1, of: 1 };

    /// Part `number`, from 1 to `of`.
    ///
    /// # Errors
    /// [`StoreError::NoPart`] for a number out of that range, and for too many parts.
    pub fn new(number: usize, of: usize) -> Result<Part, StoreError> {
        let is_one = (1..=of).contains(&number) && of <= MOST;
        let refused = || StoreError::NoPart { text: format!("{number}/{of}"), most: MOST };
        if is_one { Ok(Part { number, of }) } else { Err(refused()) }
    }

    /// Its number, from 1.
    pub fn number(&self) -> usize {
        self.number
    }

    /// How many there are.
    pub fn of(&self) -> usize {
        self.of
    }

    /// Whether a chunk is of this part: every `of`-th one, so that parts take about as long as one another where one
    /// end of a study is harder than the other.
    pub fn has(&self, chunk: usize) -> bool {
        chunk % self.of == self.number - 1
    }

    /// What the name of its file ends in, such as `part-2-of-8`.
    pub fn suffix(&self) -> String {
        format!("part-{}-of-{}", self.number, self.of)
    }
}

impl fmt::Display for Part {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}/{}", self.number, self.of)
    }
}

impl FromStr for Part {
    type Err = StoreError;

    fn from_str(text: &str) -> Result<Part, StoreError> {
        let numbers = text.split_once('/').and_then(|(k, n)| Some((k.parse().ok()?, n.parse().ok()?)));
        let refused = || StoreError::NoPart { text: text.to_owned(), most: MOST };
        let (number, of) = numbers.ok_or_else(refused)?;
        Part::new(number, of)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)] // tests
mod tests {
    use super::*;

    #[test]
    fn every_chunk_is_of_exactly_one_part() {
        let parts: Vec<Part> = (1..=7).map(|number| Part::new(number, 7).unwrap()).collect();
        for chunk in 0..100 {
            assert_eq!(parts.iter().filter(|part| part.has(chunk)).count(), 1);
        }
        assert!((0..100).all(|chunk| Part::WHOLE.has(chunk)));
    }

    #[test]
    fn parts_are_read_and_written() {
        let part: Part = "2/8".parse().unwrap();
        assert_eq!((part.to_string(), part.suffix()), ("2/8".to_owned(), "part-2-of-8".to_owned()));
        for wrong in ["0/4", "5/4", "2", "a/b", "-1/4", "1/0", "1/100001", ""] {
            assert!(wrong.parse::<Part>().is_err(), "{wrong}");
        }
    }
}
