//! What holds a beam.

use crate::error::{BeamError, Part};
use crate::hold::Hold;

/// A support at a place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Support {
    /// Where, from the start of the beam (m).
    pub at: f64,
    /// How it holds.
    pub kind: SupportKind,
}

/// How a support holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SupportKind {
    /// Height and slope are held.
    Fixed {
        /// How far it has moved up (m).
        settlement: f64,
        /// How far it has turned (rad).
        rotation: f64,
    },
    /// The height is held; turning freely or against a spring.
    Pinned {
        /// How far it has moved up (m).
        settlement: f64,
        /// Stiffness against turning (N m/rad), 0 for none.
        turning_stiffness: f64,
    },
    /// The slope is held; the beam slides up and down.
    Sliding {
        /// How far it has turned (rad).
        rotation: f64,
    },
    /// A spring up and down and one against turning; one of them may be zero.
    Elastic {
        /// Stiffness up and down (N/m).
        stiffness: f64,
        /// Stiffness against turning (N m/rad).
        turning_stiffness: f64,
        /// How far its foot has moved up (m).
        settlement: f64,
    },
    /// A stop that touches only once a gap has closed, and then holds the height; it can push, not pull.
    Stop {
        /// On which side of the beam it is.
        side: StopSide,
        /// Gap under no load (m), 0 for one that lies on.
        gap: f64,
        /// Stiffness (N/m); none for a rigid one.
        stiffness: Option<f64>,
    },
}

/// On which side of the beam a stop is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StopSide {
    /// Below: it pushes up.
    Below,
    /// Above: it pushes down.
    Above,
}

impl StopSide {
    /// Sign of the force with which it can push.
    pub(crate) fn push(self) -> f64 {
        match self {
            Self::Below => 1.0,
            Self::Above => -1.0,
        }
    }
}

impl SupportKind {
    /// A clamp that has not moved.
    pub const FIXED: Self = Self::Fixed { settlement: 0.0, rotation: 0.0 };
    /// A pin that has not moved.
    pub const PINNED: Self = Self::Pinned { settlement: 0.0, turning_stiffness: 0.0 };
    /// A slide that has not turned.
    pub const SLIDING: Self = Self::Sliding { rotation: 0.0 };

    /// The word for it.
    pub fn word(&self) -> &'static str {
        match self {
            Self::Fixed { .. } => "fixed",
            Self::Pinned { .. } => "pinned",
            Self::Sliding { .. } => "sliding",
            Self::Elastic { .. } => "elastic",
            Self::Stop { .. } => "stop",
        }
    }

    /// How it holds height and slope; a stop only where it touches.
    pub(crate) fn holds(&self, touches: bool) -> [Hold; 2] {
        let turning = |rate| if rate > 0.0 { Hold::Elastic { rate, value: 0.0 } } else { Hold::Free };
        match *self {
            Self::Fixed { settlement, rotation } => [Hold::Rigid(settlement), Hold::Rigid(rotation)],
            Self::Pinned { settlement, turning_stiffness } => {
                [Hold::Rigid(settlement), turning(turning_stiffness)]
            }
            Self::Sliding { rotation } => [Hold::Free, Hold::Rigid(rotation)],
            Self::Elastic { stiffness, turning_stiffness, settlement } => {
                let up = Hold::Elastic { rate: stiffness, value: settlement };
                [if stiffness > 0.0 { up } else { Hold::Free }, turning(turning_stiffness)]
            }
            Self::Stop { .. } if !touches => [Hold::Free; 2],
            Self::Stop { side, gap, stiffness } => {
                let value = -side.push() * gap;
                [stiffness.map_or(Hold::Rigid(value), |rate| Hold::Elastic { rate, value }), Hold::Free]
            }
        }
    }

    /// Whether it holds only while it touches.
    pub fn is_stop(&self) -> bool {
        matches!(self, Self::Stop { .. })
    }

    pub(crate) fn check(&self, number: usize) -> Result<(), BeamError> {
        let part = Part::Support(number);
        let check = |thing, value: f64, unit, least: f64, accepted| {
            if value.is_finite() && value >= least {
                return Ok(());
            }
            Err(BeamError::Value { part, thing, value, unit, accepted })
        };
        let moved = |value| check("settlement", value, "m", f64::MIN, "a finite number");
        let turned = |value| check("rotation", value, "rad", f64::MIN, "a finite number");
        let stiff = |value| check("stiffness", value, "N/m", 0.0, "0 or a finite number above 0");
        let turning =
            |value| check("turning stiffness", value, "N m/rad", 0.0, "0 or a finite number above 0");
        match *self {
            Self::Fixed { settlement, rotation } => moved(settlement).and(turned(rotation)),
            Self::Pinned { settlement, turning_stiffness } => {
                moved(settlement).and(turning(turning_stiffness))
            }
            Self::Sliding { rotation } => turned(rotation),
            Self::Elastic { stiffness, turning_stiffness, settlement } => {
                stiff(stiffness).and(turning(turning_stiffness)).and(moved(settlement))
            }
            Self::Stop { gap, stiffness, .. } => {
                check("gap", gap, "m", 0.0, "0 or a finite number above 0")?;
                stiffness.map_or(Ok(()), |rate| {
                    check("stiffness", rate, "N/m", f64::MIN_POSITIVE, "a finite number above 0")
                })
            }
        }
    }
}
