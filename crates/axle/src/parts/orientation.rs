//! How a shape sits on the axle.

use axlebow_sections::Shape;

/// How a shape sits on the axle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Orientation {
    /// An angle or a channel with both toes on the wall, closing a cell with it.
    ToesDown,
    /// An angle with the toe of one leg on the wall, that leg standing outward and the other across its end.
    LegDown,
    /// An angle with one leg flat on the wall and the other standing up from its rear edge.
    BackUp,
    /// A flat that stands outward on its edge.
    OnEdge,
    /// A flat, or a channel's web, that lies on the wall.
    Lying,
    /// A tee whose stem stands on the wall.
    StemDown,
    /// A tee whose flange lies on the wall.
    FlangeDown,
    /// A sleeve that fits round the tube.
    Round,
    /// An outline of the user's, sitting as it was drawn.
    AsDrawn,
}

impl Orientation {
    /// The word of files and results.
    pub fn word(self) -> &'static str {
        match self {
            Orientation::ToesDown => "toes-down",
            Orientation::LegDown => "leg-down",
            Orientation::BackUp => "back-up",
            Orientation::OnEdge => "on-edge",
            Orientation::Lying => "lying",
            Orientation::StemDown => "stem-down",
            Orientation::FlangeDown => "flange-down",
            Orientation::Round => "round",
            Orientation::AsDrawn => "as-drawn",
        }
    }

    /// Every orientation.
    pub const ALL: [Orientation; 9] = [
        Orientation::ToesDown,
        Orientation::LegDown,
        Orientation::BackUp,
        Orientation::OnEdge,
        Orientation::Lying,
        Orientation::StemDown,
        Orientation::FlangeDown,
        Orientation::Round,
        Orientation::AsDrawn,
    ];

    /// The orientation of a word.
    pub fn of_word(word: &str) -> Option<Self> {
        Orientation::ALL.into_iter().find(|orientation| orientation.word() == word)
    }

    /// Attitudes that a shape can take; the first is the usual one.
    pub fn of_shape(shape: &Shape) -> &'static [Orientation] {
        match shape {
            Shape::Angle(_) => &[Orientation::ToesDown, Orientation::LegDown, Orientation::BackUp],
            Shape::Flat(_) => &[Orientation::OnEdge, Orientation::Lying],
            Shape::Channel(_) => &[Orientation::ToesDown, Orientation::Lying],
            Shape::Tee(_) => &[Orientation::StemDown, Orientation::FlangeDown],
            Shape::HalfPipe(_) => &[Orientation::Round],
        }
    }
}
