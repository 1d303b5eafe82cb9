//! Hub and bearings on a spindle.

use crate::AxleError;
use crate::bearing_play::BearingPlace;
use crate::error::{finite, not_negative, positive};

/// Steepest cup, rad: at 45 degrees a hub moves as far radially as along the axle, the most that an endplay can
/// do to the lean of a wheel.
pub const STEEPEST_CUP: f64 = std::f64::consts::FRAC_PI_4;

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
    /// Endplay of the hub: how far it moves along the spindle from stop to stop, m. A practice accepts 0.025 to
    /// 0.127 mm (TMC RP 618, 0.001 to 0.005 in).
    pub endplay: f64,
    /// Angle of the bearings' cups to the spindle, rad.
    pub cup_angle: f64,
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
        not_negative("endplay", self.endplay, "m")?;
        let angle = self.cup_angle;
        if !(0.0..=STEEPEST_CUP).contains(&angle) {
            let accepted = "0 to 0.785 (45 degrees)";
            return Err(AxleError::Value { what: "cup angle", value: angle, unit: "rad", accepted });
        }
        not_negative("hub mass", self.hub_mass, "kg")?;
        finite("manufactured camber", self.camber, "rad")?;
        finite("manufactured toe", self.toe, "rad")?;
        Ok(self)
    }

    /// Sum of the radial clearances of the two bearings, m: endplay by the tangent of the cup angle.
    pub fn radial_play(&self) -> f64 {
        self.endplay * self.cup_angle.tan()
    }

    /// Distance of a bearing's load centre from the centre line, m.
    pub(crate) fn bearing_at(&self, place: BearingPlace) -> f64 {
        match place {
            BearingPlace::Inner => self.inner_bearing,
            BearingPlace::Outer => self.outer_bearing,
        }
    }
}
