//! A value that a beam is compared with.

use crate::parts::line::Line;
use crate::solving::modes::Mode;
use crate::solving::peaks::{Peak, PeakKind};
use crate::solving::solution::{Reaction, Solution};

/// What is asked of a beam.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Asked {
    /// A value at a place (m); without one the largest along the beam.
    Along {
        /// Of what.
        kind: PeakKind,
        /// Where (m).
        at: Option<f64>,
    },
    /// Force of the support nearest to a place (m).
    Reaction {
        /// Where (m).
        at: f64,
    },
    /// Moment of the support nearest to a place (m).
    ReactionMoment {
        /// Where (m).
        at: f64,
    },
    /// Natural frequency of an elastic mode, the first is 1.
    Frequency {
        /// Its number.
        number: usize,
    },
    /// Frequency parameter β L of an elastic mode, √(2 π f L² √(ρ A/(E I))) with the section at the start.
    Root {
        /// Its number.
        number: usize,
    },
}

/// A value with which a beam is compared.
#[derive(Debug, Clone, PartialEq)]
pub struct Check {
    /// What it is called.
    pub name: String,
    /// Name of the textbook case that it is.
    pub case: Option<String>,
    /// What is asked.
    pub asked: Asked,
    /// What is expected (m, rad, N, N m, Pa, Hz or a plain number).
    pub expected: f64,
    /// Relative error that is accepted.
    pub tolerance: f64,
    /// Where the expected value comes from.
    pub source: String,
}

/// A value beside what was expected.
#[derive(Debug, Clone, PartialEq)]
pub struct Checked {
    /// What was expected.
    pub check: Check,
    /// What came out; none where there is no such value, of which [`Asked::missing`] says why.
    pub computed: Option<f64>,
}

/// What a beam has to be asked.
pub(crate) struct Results<'a> {
    pub line: &'a Line,
    pub solution: Option<&'a Solution>,
    pub reactions: &'a [Reaction],
    pub peaks: &'a [Peak],
    pub elastic: &'a [&'a Mode],
}

impl Asked {
    /// What it is called.
    pub fn word(self) -> &'static str {
        match self {
            Self::Along { kind, .. } => kind.word(),
            Self::Reaction { .. } => "reaction",
            Self::ReactionMoment { .. } => "reaction moment",
            Self::Frequency { .. } => "natural frequency",
            Self::Root { .. } => "frequency parameter",
        }
    }

    /// Why there may be no such value.
    pub fn missing(self) -> &'static str {
        match self {
            Self::Along { kind: PeakKind::Stress, .. } => {
                "the section has no depth, or nothing loads the beam"
            }
            Self::Along { .. } => "nothing loads the beam",
            Self::Reaction { .. } | Self::ReactionMoment { .. } => {
                "there is no support, or nothing loads the beam"
            }
            Self::Frequency { .. } | Self::Root { .. } => "so many modes were not asked for",
        }
    }

    pub(crate) fn value(self, of: &Results) -> Option<f64> {
        match self {
            Self::Along { kind, at: Some(at) } => kind.of(&of.solution?.at(at)),
            Self::Along { kind, at: None } => {
                of.peaks.iter().find(|peak| peak.kind == kind).map(|peak| peak.value)
            }
            Self::Reaction { at } => nearest(of.reactions, at).map(|reaction| reaction.force),
            Self::ReactionMoment { at } => nearest(of.reactions, at).map(|reaction| reaction.moment),
            Self::Frequency { number } => Some(of.elastic.get(number.checked_sub(1)?)?.frequency),
            Self::Root { number } => {
                let frequency = of.elastic.get(number.checked_sub(1)?)?.frequency;
                let span = of.line.spans().first()?;
                let values = span.section_at(0.0);
                let mass = span.elastic.density * values.area?;
                let wave = (mass / (span.elastic.modulus * values.second_moment)).sqrt();
                Some((std::f64::consts::TAU * frequency * wave).sqrt() * of.line.length())
            }
        }
    }
}

impl Checked {
    /// The error over the size of what was expected, or itself where zero was.
    pub fn error(&self) -> Option<f64> {
        let error = self.computed? - self.check.expected;
        Some(if self.check.expected == 0.0 { error } else { error / self.check.expected.abs() })
    }

    /// Whether the error is accepted.
    pub fn passed(&self) -> bool {
        self.error().is_some_and(|error| error.abs() <= self.check.tolerance)
    }
}

fn nearest(reactions: &[Reaction], at: f64) -> Option<&Reaction> {
    reactions.iter().min_by(|a, b| (a.at - at).abs().total_cmp(&(b.at - at).abs()))
}
