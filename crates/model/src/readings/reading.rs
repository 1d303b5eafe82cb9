//! One reading that a shop took of an axle.

use axlebow_axle::{Ground, LoadCase, Side};
use axlebow_units::Kind;

/// What was read, and of what.
#[derive(Debug, Clone, PartialEq)]
pub enum ReadQuantity {
    /// Camber of a wheel against the road, manufactured camber included; positive with the tire's top outward, rad.
    Camber(Side),
    /// Toe of a wheel, manufactured toe included; positive toe-in, rad.
    Toe(Side),
    /// Height of the axle's center above the line through the hubs, m.
    Bow,
    /// Natural frequency of the mode of this name, Hz.
    NaturalFrequency(String),
}

impl ReadQuantity {
    /// Words of the column `quantity`.
    pub const WORDS: [&'static str; 4] = ["camber", "toe", "bow", "natural-frequency"];

    /// Its word in the column `quantity`.
    pub fn word(&self) -> &'static str {
        match self {
            Self::Camber(_) => Self::WORDS[0],
            Self::Toe(_) => Self::WORDS[1],
            Self::Bow => Self::WORDS[2],
            Self::NaturalFrequency(_) => Self::WORDS[3],
        }
    }

    /// Its entry in the column `of`.
    pub fn of(&self) -> &str {
        match self {
            Self::Camber(side) | Self::Toe(side) => side.word(),
            Self::Bow => "middle",
            Self::NaturalFrequency(mode) => mode,
        }
    }

    /// What it measures.
    pub fn kind(&self) -> Kind {
        match self {
            Self::Camber(_) | Self::Toe(_) => Kind::Angle,
            Self::Bow => Kind::Length,
            Self::NaturalFrequency(_) => Kind::Frequency,
        }
    }
}

/// Under what a reading is taken.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// What was read.
    pub quantity: ReadQuantity,
    /// What the axle carried.
    pub load: LoadCase,
    /// What the ground did to the tires sideways.
    pub ground: Ground,
    /// The value read, SI.
    pub value: f64,
    /// Its standard error, SI.
    pub standard_error: f64,
    /// Line of the file, from 1; 0 for one that is not of a file.
    pub line: usize,
}
