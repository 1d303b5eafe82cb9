//! Why a text is no expression.

use std::ops::Range;

/// Why a text is not an expression, and which of its bytes are at fault.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{fault}")]
pub struct ExpressionError {
    /// What is wrong.
    pub fault: ExpressionFault,
    /// Bytes of the text.
    pub span: Range<usize>,
}

/// What is wrong with an expression.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ExpressionFault {
    /// There is nothing to read.
    #[error("the expression is empty")]
    Empty,
    /// Brackets, signs or powers nest further than is accepted.
    #[error("the expression goes more than {most} deep")]
    TooDeep {
        /// How deep they may go.
        most: usize,
    },
    /// The text ends too early.
    #[error("the expression ends where {wanted} is wanted")]
    Ends {
        /// What is missing.
        wanted: &'static str,
    },
    /// A number that is not finite, or not written as one.
    #[error("`{word}` is not a number")]
    NotANumber {
        /// What is written.
        word: String,
    },
    /// A name that stands for nothing.
    #[error("no number is named `{word}`")]
    UnknownName {
        /// What is written.
        word: String,
        /// The names that stand for a number.
        known: Vec<String>,
    },
    /// A call of no function.
    #[error("no function is named `{word}`")]
    UnknownFunction {
        /// What is written.
        word: String,
        /// The functions.
        known: Vec<&'static str>,
    },
    /// A function without its bracket.
    #[error("`{function}` wants `(`")]
    NoBracket {
        /// The function.
        function: &'static str,
    },
    /// A function with too few arguments or too many.
    #[error("`{function}` takes {wanted} {}, not {given}", if *wanted == 1 { "number" } else { "numbers" })]
    Arguments {
        /// The function.
        function: &'static str,
        /// How many it takes.
        wanted: usize,
        /// How many are written.
        given: usize,
    },
    /// Something that cannot stand there.
    #[error("`{}` is not expected here", found.escape_debug())]
    Unexpected {
        /// What is written.
        found: String,
        /// What can stand there.
        accepted: &'static str,
    },
}

impl ExpressionFault {
    /// What is accepted, if that is not plain from the message.
    pub fn accepted(&self) -> Option<String> {
        match self {
            Self::TooDeep { most } => Some(format!("{most} brackets, signs and powers within one another")),
            Self::UnknownName { known, .. } if known.is_empty() => Some("numbers only".to_owned()),
            Self::UnknownName { known, .. } => Some(known.join(", ")),
            Self::UnknownFunction { known, .. } => Some(known.join(", ")),
            Self::Unexpected { accepted, .. } => Some((*accepted).to_owned()),
            _ => None,
        }
    }

    /// A word that stands for nothing, with those that could stand there.
    pub fn unknown(&self) -> Option<(&str, Vec<&str>)> {
        match self {
            Self::UnknownName { word, known } => Some((word, known.iter().map(String::as_str).collect())),
            Self::UnknownFunction { word, known } => Some((word, known.clone())),
            _ => None,
        }
    }
}
