//! Why a quantity was refused.

use std::ops::Range;

use crate::{Kind, unit};

/// A quantity that was refused: what is wrong, where, and what was wanted.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("{fault}; accepted: {}", self.accepted())]
pub struct UnitError {
    /// What is wrong.
    pub fault: Fault,
    /// What was wanted.
    pub wanted: Kind,
    pub(crate) range: Range<usize>,
}

/// What is wrong with a quantity.
#[non_exhaustive]
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum Fault {
    /// The text does not begin with a number.
    #[error("`{}` does not begin with a number", shortened(.text))]
    MissingNumber {
        /// The text.
        text: String,
    },
    /// A number stands alone.
    #[error("the bare number `{}` needs its unit", shortened(.number))]
    MissingUnit {
        /// The number as written.
        number: String,
        /// What was wanted.
        wanted: Kind,
    },
    /// A unit is not in the table.
    #[error("unknown unit `{}`", shortened(.word))]
    UnknownUnit {
        /// The word as written.
        word: String,
    },
    /// The unit measures something else.
    #[error("`{}` measures {}; {} is wanted", shortened(.written), .measures.map_or("something else", Kind::name), .wanted.name())]
    WrongKind {
        /// The unit as written.
        written: String,
        /// What it measures, if that is one of the kinds.
        measures: Option<Kind>,
        /// What was wanted.
        wanted: Kind,
        /// The unit that was likely meant.
        likely: Option<String>,
    },
    /// A comma stands in or after the number.
    #[error("`,` is not used in numbers; write 20000 or 9.5")]
    Comma,
    /// Something else than a unit, an operator or a bracket.
    #[error("{found} is not expected here")]
    Unexpected {
        /// What was found.
        found: String,
    },
    /// A product follows a slash without brackets.
    #[error("it is not clear what the `/` before `{}` covers; write brackets, as in `rad/(kN m)`", shortened(.word))]
    Ambiguous {
        /// The unit that follows.
        word: String,
    },
    /// The value is infinite, not a number, or beyond the range of `f64` in SI.
    #[error("`{}` is not a finite value", shortened(.text))]
    NotFinite {
        /// The text.
        text: String,
    },
}

impl UnitError {
    /// Byte range of the offending part within the text.
    pub fn range(&self) -> Range<usize> {
        self.range.clone()
    }

    /// What is wrong, in a short sentence without the accepted units.
    pub fn message(&self) -> String {
        self.fault.to_string()
    }

    /// What is accepted, as in "a length in mm, m, in, ft".
    pub fn accepted(&self) -> String {
        accepted(self.wanted)
    }

    /// What was likely meant: a unit, or the number with its usual unit.
    pub fn likely(&self) -> Option<String> {
        match &self.fault {
            Fault::UnknownUnit { word } => {
                unit::likely(word).map(|symbol| self.force_for_mass(symbol).to_owned())
            }
            Fault::WrongKind { likely, .. } => likely.clone(),
            Fault::MissingUnit { number, wanted } if number.len() <= SHOWN => {
                Some(format!("{number} {}", wanted.accepted()[0]))
            }
            _ => None,
        }
    }
}

impl UnitError {
    /// The unit of force of the same name where a force is wanted: `lbs` there means `lbf`.
    fn force_for_mass(&self, symbol: &'static str) -> &'static str {
        if symbol == "lb" && self.wanted == Kind::Force { "lbf" } else { symbol }
    }
}

/// Characters of the text that a message repeats, at most.
const SHOWN: usize = 40;

fn shortened(text: &str) -> String {
    match text.char_indices().nth(SHOWN) {
        Some((end, _)) => format!("{}…", &text[..end]),
        None => text.to_owned(),
    }
}

fn accepted(kind: Kind) -> String {
    match kind {
        Kind::Ratio => "a plain number such as 0.3, or a percentage such as 30 %".to_owned(),
        kind => format!("{} in {}", kind.name(), kind.accepted().join(", ")),
    }
}
