//! Hub and bearings on a spindle.

use crate::AxleError;
use crate::error::{finite, not_negative, positive};

/// One end of the axle outboard of the tube: two bearings on the spindle carry a hub.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WheelEnd {
    /// Distance of the inner bearing's load centre from the centre line, m.
    pub inner_bearing: f64,
    /// Distance of the outer bearing's load centre from the centre line, m.
    pub outer_bearing: f64,
    /// Distance of the hub's wheel mounting face from the centre line, m.
    pub mounting_face: f64,
    /// Radial stiffness of one bearing, N/m.
    pub radial_stiffness: f64,
    /// Axial stiffness of one bearing, N/m.
    pub axial_stiffness: f64,
    /// Mass of hub, bearings and brake drum or disc, kg.
    pub hub_mass: f64,
    /// Manufactured camber of the unloaded spindle, rad.
    pub camber: f64,
    /// Manufactured toe of the unloaded spindle, rad.
    pub toe: f64,
}

impl WheelEnd {
    /// The same wheel end when every value is in range.
    ///
    /// # Errors
    /// [`AxleError::Value`] names the quantity out of range.
    pub fn checked(self) -> Result<Self, AxleError> {
        positive("inner bearing place", self.inner_bearing, "m")?;
        positive("outer bearing place", self.outer_bearing, "m")?;
        positive("mounting face place", self.mounting_face, "m")?;
        positive("bearing radial stiffness", self.radial_stiffness, "N/m")?;
        positive("bearing axial stiffness", self.axial_stiffness, "N/m")?;
        not_negative("hub mass", self.hub_mass, "kg")?;
        finite("manufactured camber", self.camber, "rad")?;
        finite("manufactured toe", self.toe, "rad")?;
        Ok(self)
    }
}
