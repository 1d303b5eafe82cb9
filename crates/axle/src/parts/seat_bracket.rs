//! What bears on the axle's wall at a seat.

use crate::AxleError;
use crate::parts::error::positive;

/// A welded bracket, or a saddle with a block held by U-bolts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SeatBracket {
    /// Breadth of bracket, saddle and block round the middle line of the wall, m.
    pub breadth: f64,
    /// Diameter of the legs of the U-bolts, m; of a clamped seat.
    pub u_bolt_diameter: f64,
    /// Number of U-bolts, each with two legs.
    pub u_bolts: u32,
    /// Torque on each nut of the U-bolts where it is known, N m.
    pub torque: Option<f64>,
    /// Nut factor K: torque over force and diameter of a leg.
    pub nut_factor: f64,
}

impl SeatBracket {
    /// Refuses impossible sizes.
    pub(crate) fn check(&self) -> Result<(), AxleError> {
        positive("bracket breadth", self.breadth, "m")?;
        positive("U-bolt diameter", self.u_bolt_diameter, "m")?;
        self.torque.map(|torque| positive("U-bolt torque", torque, "N m")).transpose()?;
        positive("nut factor", self.nut_factor, "")?;
        positive("number of U-bolts", f64::from(self.u_bolts), "").map(|_| ())
    }
}
