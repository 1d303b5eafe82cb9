//! What can be wrong with a wall at its seat.

use axlebow_fe::FeError;

/// Errors of this crate; lengths in messages are in millimeters.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum WallError {
    /// A value is out of its range.
    #[error("{what} is {value} {unit}; {accepted} is accepted")]
    Value {
        /// What it is.
        what: &'static str,
        /// Value in `unit`.
        value: f64,
        /// Unit of the message.
        unit: &'static str,
        /// Accepted range in words.
        accepted: &'static str,
    },
    /// A bar has no wall.
    #[error("a solid bar has no wall that could give way; a round tube or a rectangular tube is accepted")]
    Solid,
    /// A wall is so thick that it is no shell.
    #[error(
        "the wall of {:.1} mm is {ratio:.2} times the radius of its middle line: no shell any more; up to {limit} is accepted",
        thickness * 1e3
    )]
    TooThick {
        /// Thickness, m.
        thickness: f64,
        /// Thickness over radius.
        ratio: f64,
        /// Largest accepted.
        limit: f64,
    },
    /// A patch does not fit round the tube.
    #[error(
        "the {patch} is {:.1} mm broad, but round the wall there are {:.1} mm for it; a narrower one is accepted",
        breadth * 1e3,
        room * 1e3
    )]
    PatchTooBroad {
        /// Name of the patch.
        patch: &'static str,
        /// Its breadth round the wall, m.
        breadth: f64,
        /// Room for it, m.
        room: f64,
    },
    /// A patch reaches past the piece of tube.
    #[error(
        "the {patch} reaches {:.1} mm along the axle from the seat's center, beyond the {:.1} mm of wall that are modeled",
        reach * 1e3,
        room * 1e3
    )]
    PatchTooLong {
        /// Name of the patch.
        patch: &'static str,
        /// Its reach, m.
        reach: f64,
        /// Half the length of the piece of tube, m.
        room: f64,
    },
    /// Two patches lie on each other.
    #[error("the {one} and the {other} overlap on the wall by {:.1} mm; patches that leave wall between them are accepted", by * 1e3)]
    PatchesOverlap {
        /// Name of one.
        one: &'static str,
        /// Name of the other.
        other: &'static str,
        /// Overlap round the wall, m.
        by: f64,
    },
    /// Elements are too large for what the wall does beside a patch.
    #[error(
        "elements of {:.1} mm beside the {patch} are too coarse: the wall bends within √(r t) = {:.1} mm of its edge; up to half of that is accepted",
        size * 1e3,
        decay * 1e3
    )]
    TooCoarse {
        /// Name of the patch.
        patch: &'static str,
        /// Size of the elements there, m.
        size: f64,
        /// Length over which an edge disturbance dies away, m.
        decay: f64,
    },
    /// An element bends too far round the tube.
    #[error("one element spans {:.0} deg of the wall's curve at {place}; up to {:.0} deg are accepted: take smaller elements", angle.to_degrees(), limit.to_degrees())]
    Warped {
        /// Where.
        place: String,
        /// Angle, rad.
        angle: f64,
        /// Largest accepted, rad.
        limit: f64,
    },
    /// A mesh would be larger than is reasonable.
    #[error(
        "the mesh of this wall would have {unknowns} unknowns; up to {limit} are accepted: take larger elements or a shorter seat"
    )]
    TooManyUnknowns {
        /// Number of unknowns.
        unknowns: usize,
        /// Largest accepted.
        limit: usize,
    },
    /// The equations could not be solved.
    #[error(transparent)]
    Fe(#[from] FeError),
}

/// Accepts a finite value above zero.
pub(crate) fn positive(what: &'static str, value: f64, unit: &'static str) -> Result<f64, WallError> {
    if value.is_finite() && value > 0.0 {
        return Ok(value);
    }
    Err(WallError::Value { what, value, unit, accepted: "a finite value greater than zero" })
}
