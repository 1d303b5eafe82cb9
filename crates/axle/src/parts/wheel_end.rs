//! Hub and bearings on a spindle.

use crate::AxleError;
use crate::parts::bearing_place::BearingPlace;
use crate::parts::bearing_stiffness::{BearingStiffness, accepted_cup};
use crate::parts::error::{finite, not_negative, positive};

/// Least share of a wheel's load at which the stiffness of a bearing is taken.
const LEAST_SHARE: f64 = 0.1;

/// One end of the axle outboard of the tube: two bearings on the spindle carry a hub.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WheelEnd {
    /// Distance of the inner bearing's load center from the center line, m.
    pub inner_bearing: f64,
    /// Distance of the outer bearing's load center from the center line, m.
    pub outer_bearing: f64,
    /// Distance of the hub's wheel mounting face from the center line, m.
    pub mounting_face: f64,
    /// Stiffness of the inner bearing.
    pub inner_stiffness: BearingStiffness,
    /// Stiffness of the outer bearing.
    pub outer_stiffness: BearingStiffness,
    /// Endplay of the hub: how far it moves along the spindle from stop to stop, m. A practice accepts 0.025 to
    /// 0.127 mm (TMC RP 618, 0.001 to 0.005 in).
    pub endplay: f64,
    /// Force that presses both bearings together when nothing else acts, N; 0 where they have endplay.
    pub preload: f64,
    /// Angle of the bearings' cups to the spindle, rad.
    pub cup_angle: f64,
    /// Basic dynamic radial load rating of the inner bearing, N; none where it is not known.
    pub inner_rating: Option<f64>,
    /// That of the outer bearing, N.
    pub outer_rating: Option<f64>,
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
        for stiffness in [self.inner_stiffness, self.outer_stiffness] {
            positive("bearing radial stiffness", stiffness.radial, "N/m")?;
            positive("bearing axial stiffness", stiffness.axial, "N/m")?;
        }
        not_negative("endplay", self.endplay, "m")?;
        not_negative("preload", self.preload, "N")?;
        if self.preload > 0.0 && self.endplay > 0.0 {
            return Err(AxleError::PreloadedLoose { endplay: self.endplay, preload: self.preload });
        }
        accepted_cup(self.cup_angle)?;
        for rating in [self.inner_rating, self.outer_rating].into_iter().flatten() {
            positive("bearing load rating", rating, "N")?;
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

    /// Distance of a bearing's load center from the center line, m.
    pub(crate) fn bearing_at(&self, place: BearingPlace) -> f64 {
        match place {
            BearingPlace::Inner => self.inner_bearing,
            BearingPlace::Outer => self.outer_bearing,
        }
    }

    /// Load rating of a bearing, N.
    pub(crate) fn rating(&self, place: BearingPlace) -> Option<f64> {
        match place {
            BearingPlace::Inner => self.inner_rating,
            BearingPlace::Outer => self.outer_rating,
        }
    }

    /// Radial load of the inner and the outer bearing (N) for a load of the wheel, by the lever rule; at least a tenth of
    /// the wheel's load, which preload and side forces put on a bearing that the lever rule leaves without any.
    ///
    /// - `outset`: tire center outboard of the mounting face, m
    /// - `wheel_load`: N
    pub fn bearing_loads(&self, outset: f64, wheel_load: f64) -> [f64; 2] {
        let span = self.outer_bearing - self.inner_bearing;
        // An axle refuses bearings at one place, or the outer one inboard; any share will do until then.
        let share = if span > 0.0 { (self.mounting_face + outset - self.inner_bearing) / span } else { 0.5 };
        [1.0 - share, share].map(|share| wheel_load * share.abs().max(LEAST_SHARE))
    }

    /// Stiffness of a bearing.
    pub(crate) fn bearing_stiffness(&self, place: BearingPlace) -> BearingStiffness {
        match place {
            BearingPlace::Inner => self.inner_stiffness,
            BearingPlace::Outer => self.outer_stiffness,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const STIFFNESS: BearingStiffness = BearingStiffness { radial: 1e9, axial: 3e8 };
    const END: WheelEnd = WheelEnd {
        inner_bearing: 0.90,
        outer_bearing: 1.00,
        mounting_face: 0.93,
        inner_stiffness: STIFFNESS,
        outer_stiffness: STIFFNESS,
        endplay: 0.0,
        preload: 0.0,
        cup_angle: 0.26,
        inner_rating: None,
        outer_rating: None,
        hub_mass: 80.0,
        camber: 0.0,
        toe: 0.0,
    };

    /// By hand: the load acts 30 and 80 mm outboard of the inner bearing on a span of 100 mm, then just at it, and 60 mm
    /// outboard of the outer one.
    #[test]
    fn bearings_share_a_wheels_load_by_the_lever_and_none_carries_nothing() {
        for (outset, inner, outer) in
            [(0.0, 70.0, 30.0), (0.05, 20.0, 80.0), (-0.03, 100.0, 10.0), (0.13, 60.0, 160.0)]
        {
            let loads = END.bearing_loads(outset, 100.0);
            let off = (loads[0] - inner).abs() + (loads[1] - outer).abs();
            assert!(off < 1e-9, "{outset}: {loads:?}");
        }
    }
}
