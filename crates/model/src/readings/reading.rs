//! One reading that a shop took of an axle.

use axlebow_axle::{Ground, LoadCase, Side, TireSlot};
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
    /// Depth of tread that a removed tire had left on a rib, m.
    TreadDepth(RemovedRib),
}

/// A rib of a tire that came off.
#[derive(Debug, Clone, PartialEq)]
pub struct RemovedRib {
    /// Wheel end.
    pub side: Side,
    /// Tire.
    pub tire: TireSlot,
    /// Number of the rib, the inner shoulder 0.
    pub rib: usize,
    /// Distance that the tire ran, m.
    pub distance: f64,
    /// Its words, such as `left inner tire, rib 1`.
    pub name: String,
}

impl RemovedRib {
    /// A rib of a tire at a distance (m).
    pub fn of((side, tire): (Side, TireSlot), rib: usize, distance: f64) -> Self {
        let name = format!("{}, rib {}", tire.of_side(side.word()), rib + 1);
        RemovedRib { side, tire, rib, distance, name }
    }
}

impl ReadQuantity {
    /// Words of the column `quantity` of shop readings.
    pub const WORDS: [&'static str; 4] = ["camber", "toe", "bow", "natural-frequency"];

    /// Its word in the column `quantity`.
    pub fn word(&self) -> &'static str {
        match self {
            Self::Camber(_) => Self::WORDS[0],
            Self::Toe(_) => Self::WORDS[1],
            Self::Bow => Self::WORDS[2],
            Self::NaturalFrequency(_) => Self::WORDS[3],
            Self::TreadDepth(_) => "tread-depth",
        }
    }

    /// Its entry in the column `of`.
    pub fn of(&self) -> &str {
        match self {
            Self::Camber(side) | Self::Toe(side) => side.word(),
            Self::Bow => "middle",
            Self::NaturalFrequency(mode) => mode,
            Self::TreadDepth(rib) => &rib.name,
        }
    }

    /// What it measures.
    pub fn kind(&self) -> Kind {
        match self {
            Self::Camber(_) | Self::Toe(_) => Kind::Angle,
            Self::Bow | Self::TreadDepth(_) => Kind::Length,
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
