//! A check and where it is made.

use axlebow_strength::Check;

/// A check and where it is made.
#[derive(Debug, Clone, PartialEq)]
pub struct PlacedCheck {
    /// Name of the station or the part.
    pub place: String,
    /// Position, m; none for a part as a whole.
    pub y: Option<f64>,
    /// The check.
    pub check: Check,
}
