//! How the tires of one end are inflated and matched, and how they give way sideways.

use crate::AxleError;
use crate::parts::error::positive;

/// Largest difference of the radii of a dual, m: more would not stand on the road together (common practice, no source).
const LARGEST_MISMATCH: f64 = 0.05;

/// Inflation, match and side compliance of the tires of one end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TireFit {
    /// Inflation of each tire, outermost first, Pa; the rated one where there is none.
    pub inflation: [Option<f64>; 2],
    /// Radius of the unloaded outer tire less that of the inner one, m; zero for a single.
    pub outer_less_inner: f64,
    /// Share of a tire's lateral compliance that is its belt tilting about the line of travel, 0 to 1.
    ///
    /// A belt as a rigid ring on its sidewalls moves aside and tilts (H. B. Pacejka, Tire and Vehicle Dynamics, 3rd ed.
    /// 2012, ch. 9; from memory); a half for each is assumed.
    pub tilt_share: f64,
}

impl Default for TireFit {
    fn default() -> Self {
        TireFit { inflation: [None; 2], outer_less_inner: 0.0, tilt_share: 0.5 }
    }
}

impl TireFit {
    /// The same when every value is in range.
    ///
    /// # Errors
    /// [`AxleError::Value`] names the quantity out of range.
    pub fn checked(self) -> Result<Self, AxleError> {
        for inflation in self.inflation.into_iter().flatten() {
            positive("inflation of a tire", inflation, "Pa")?;
        }
        let value = |what, value, unit, accepted| Err(AxleError::Value { what, value, unit, accepted });
        if !(0.0..=1.0).contains(&self.tilt_share) {
            return value("share of tilt in the lateral compliance", self.tilt_share, "", "0 to 1");
        }
        if self.outer_less_inner.abs() > LARGEST_MISMATCH || self.outer_less_inner.is_nan() {
            let millimeters = 1e3 * self.outer_less_inner;
            return value("difference of the radii of a dual", millimeters, "mm", "-50 to 50 mm");
        }
        Ok(self)
    }
}
