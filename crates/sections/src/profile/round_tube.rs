//! A round tube.

use std::f64::consts::PI;

use crate::error::accepted_length;
use crate::profile::rounded_rectangle::RoundedRectangle;
use crate::{SectionError, SectionProperties, shear_coefficient};

/// A round tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RoundTube {
    outside_diameter: f64,
    wall: f64,
}

impl RoundTube {
    /// A round tube; for a solid round use [`crate::RoundBar`].
    ///
    /// - `outside_diameter`: D (m), above 0
    /// - `wall`: t (m), above 0 and below D/2
    ///
    /// Errors: [`SectionError::Length`], [`SectionError::WallTooThick`].
    pub fn new(outside_diameter: f64, wall: f64) -> Result<Self, SectionError> {
        let outside_diameter = accepted_length("outside diameter", outside_diameter)?;
        let wall = accepted_length("wall", wall)?;
        let limit = 0.5 * outside_diameter;
        if wall >= limit {
            return Err(SectionError::WallTooThick { wall, limit });
        }
        Ok(Self { outside_diameter, wall })
    }

    /// Outside diameter D (m).
    pub fn outside_diameter(&self) -> f64 {
        self.outside_diameter
    }

    /// Wall t (m).
    pub fn wall(&self) -> f64 {
        self.wall
    }

    /// Inside diameter D - 2 t (m).
    pub fn inside_diameter(&self) -> f64 {
        self.outside_diameter - 2.0 * self.wall
    }

    pub(crate) fn properties(&self, poisson_ratio: f64) -> SectionProperties {
        round_properties(self.outside_diameter, self.wall, poisson_ratio)
    }

    pub(crate) fn outside(&self) -> RoundedRectangle {
        RoundedRectangle::circle(self.outside_diameter)
    }

    pub(crate) fn inside(&self) -> RoundedRectangle {
        RoundedRectangle::circle(self.inside_diameter())
    }

    pub(crate) fn transverse_shear_peak(&self, shear_x: f64, shear_z: f64) -> f64 {
        round_shear_peak(self.outside_diameter, self.wall, shear_x.hypot(shear_z))
    }
}

/// Exact properties of a round section whose wall reaches half the diameter when solid.
pub(crate) fn round_properties(diameter: f64, wall: f64, poisson_ratio: f64) -> SectionProperties {
    let (d_o, d_i) = (diameter, diameter - 2.0 * wall);
    let area = PI * wall * (diameter - wall);
    let second_moment = area * (d_o * d_o + d_i * d_i) / 16.0;
    let shear_coefficient = shear_coefficient::hollow_circle(d_i / d_o, poisson_ratio);
    SectionProperties {
        area,
        second_moment_x: second_moment,
        second_moment_z: second_moment,
        torsion_constant: 2.0 * second_moment,
        shear_coefficient_x: shear_coefficient,
        shear_coefficient_z: shear_coefficient,
        torsion_modulus: 4.0 * second_moment / d_o,
        plastic_modulus_x: wall * (d_o * d_o + d_o * d_i + d_i * d_i) / 3.0,
        width: d_o,
        height: d_o,
    }
}

/// Greatest V Q / (I b) of a round section, 4/3 (Do² + Do Di + Di²) / (Do² + Di²) V/A (Pa).
pub(crate) fn round_shear_peak(diameter: f64, wall: f64, shear: f64) -> f64 {
    let (d_o, d_i) = (diameter, diameter - 2.0 * wall);
    let area = PI * wall * (diameter - wall);
    let shape = (d_o * d_o + d_o * d_i + d_i * d_i) / (d_o * d_o + d_i * d_i);
    4.0 / 3.0 * shape * shear.abs() / area
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn wall_up_to_but_not_at_the_radius_is_accepted() {
        assert!(RoundTube::new(0.1, 0.04999).is_ok());
        assert_eq!(
            RoundTube::new(0.127, 0.0635).unwrap_err().to_string(),
            "wall is 63.5 mm; accepted is less than 63.5 mm, half the outside size \
             (for a solid section use a round bar)"
        );
    }

    #[test]
    fn sizes_that_are_no_positive_numbers_are_refused() {
        for (diameter, wall) in [
            (0.0, 0.01),
            (-0.1, 0.01),
            (f64::NAN, 0.01),
            (f64::INFINITY, 0.01),
            (0.1, 0.0),
            (0.1, -0.01),
            (0.1, f64::NAN),
            (0.1, f64::INFINITY),
        ] {
            assert!(RoundTube::new(diameter, wall).is_err(), "{diameter} {wall}");
        }
    }
}
