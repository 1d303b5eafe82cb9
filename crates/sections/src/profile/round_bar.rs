//! A solid round bar.

use crate::error::accepted_length;
use crate::profile::round_tube::{round_properties, round_shear_peak};
use crate::profile::rounded_rectangle::RoundedRectangle;
use crate::{SectionError, SectionProperties};

/// A solid round bar; a bored one is a [`crate::RoundTube`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RoundBar {
    diameter: f64,
}

impl RoundBar {
    /// A solid round bar of diameter D (m), above 0.
    ///
    /// Errors: [`SectionError::Length`].
    pub fn new(diameter: f64) -> Result<Self, SectionError> {
        let diameter = accepted_length("diameter", diameter)?;
        Ok(Self { diameter })
    }

    /// Diameter D (m).
    pub fn diameter(&self) -> f64 {
        self.diameter
    }

    pub(crate) fn properties(&self, poisson_ratio: f64) -> SectionProperties {
        round_properties(self.diameter, 0.5 * self.diameter, poisson_ratio)
    }

    pub(crate) fn outside(&self) -> RoundedRectangle {
        RoundedRectangle::circle(self.diameter)
    }

    pub(crate) fn transverse_shear_peak(&self, shear_x: f64, shear_z: f64) -> f64 {
        let wall = 0.5 * self.diameter;
        round_shear_peak(self.diameter, wall, shear_x.hypot(shear_z))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_diameter_that_is_no_positive_number_is_refused() {
        for bad in [0.0, -0.05, f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert!(RoundBar::new(bad).is_err(), "{bad}");
        }
    }
}
