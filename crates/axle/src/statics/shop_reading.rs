//! What a shop reads off a standing axle.

use crate::{AxleError, LoadCase, Sides, StaticDesign};

/// What gauges on the wheels and a straightedge along the axle read in one load case.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShopReading {
    /// Camber of each wheel against the road, positive with the tire's top outward, rad.
    pub camber: Sides<f64>,
    /// Toe of each wheel, positive toe-in, rad.
    pub toe: Sides<f64>,
    /// Height of the axle's center above the line through the hubs, m.
    pub bow: f64,
}

impl StaticDesign<'_> {
    /// Camber, toe and bow in one case, and nothing else: the short way for fits.
    ///
    /// # Errors
    /// As [`StaticDesign::case`].
    pub fn shop_reading(&self, case: &LoadCase) -> Result<ShopReading, AxleError> {
        let (contact, state) = self.loaded(case)?;
        let line = self.hub_line(&state);
        let roll = line.lean() + contact.body_roll;
        let end = |side| self.axle.wheel_ends.of(side);
        let camber = Sides::each(|side| end(side).camber + line.camber_change(side) - side.sign() * roll);
        let toe = Sides::each(|side| end(side).toe + line.toe_change(side));
        Ok(ShopReading { camber, toe, bow: line.bow() })
    }
}
