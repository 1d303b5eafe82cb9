//! Bump stops: what ends the travel of a suspension.

use crate::AxleError;
use crate::parts::error::{not_negative, positive};

/// A bump stop between axle and body at a seat: it pushes once the suspension has closed its clearance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BumpStop {
    /// Distance from stop to axle while the axle rests under its rated load on a level road, m: what a tape
    /// measures at ride height. Under another load the springs stand elsewhere and so does the axle.
    pub clearance: f64,
    /// Stiffness, N/m.
    pub stiffness: f64,
    /// Damping while it is pressed, N s/m.
    pub damping: f64,
}

impl BumpStop {
    /// The same bump stop when every value is in range.
    ///
    /// # Errors
    /// [`AxleError::Value`] names the quantity out of range.
    pub fn checked(self) -> Result<Self, AxleError> {
        not_negative("bump stop clearance", self.clearance, "m")?;
        positive("bump stop stiffness", self.stiffness, "N/m")?;
        not_negative("bump stop damping", self.damping, "N s/m")?;
        Ok(self)
    }
}
