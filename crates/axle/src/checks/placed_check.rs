//! A check and where it is made.

use axlebow_strength::Check;

use crate::parts::body::Part;

/// A check and where it is made.
#[derive(Debug, Clone, PartialEq)]
pub struct PlacedCheck {
    /// What is checked there.
    pub part: CheckedPart,
    /// Name of the station or the part.
    pub place: String,
    /// Position, m; none for a part as a whole.
    pub y: Option<f64>,
    /// The check.
    pub check: Check,
}

/// What a check is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CheckedPart {
    /// Tube, housing or spindle: its section or its walls.
    Body(Part),
    /// A fillet of the spindle.
    Fillet,
    /// A stiffener.
    Stiffener,
    /// The weld of a stiffener.
    Weld,
    /// The wall at a seat, by shells, and the clamp on it.
    Seat,
    /// A wheel bearing.
    Bearing,
    /// A detail that cracks under a duty; rated, and not among the checks of [`crate::strength`].
    Fatigue,
}

impl CheckedPart {
    /// Every part, in the order of tables.
    pub const ALL: [Self; 9] = [
        Self::Body(Part::Tube),
        Self::Body(Part::Housing),
        Self::Body(Part::Spindle),
        Self::Fillet,
        Self::Stiffener,
        Self::Weld,
        Self::Seat,
        Self::Bearing,
        Self::Fatigue,
    ];

    /// The word of results.
    pub fn word(self) -> &'static str {
        match self {
            Self::Body(part) => part.word(),
            Self::Fillet => "spindle fillet",
            Self::Stiffener => "stiffener",
            Self::Weld => "weld",
            Self::Seat => "seat wall",
            Self::Bearing => "wheel bearing",
            Self::Fatigue => "fatigue",
        }
    }
}
