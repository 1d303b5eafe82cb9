//! A rectangular tube with rounded corners and one wall thickness.

use std::f64::consts::PI;

use crate::error::accepted_length;
use crate::profile::rounded_rectangle::RoundedRectangle;
use crate::{SectionError, SectionProperties, shear_coefficient};

/// A rectangular tube with rounded corners and one wall thickness.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RectangularTube {
    width: f64,
    height: f64,
    wall: f64,
    corner_radius: f64,
}

impl RectangularTube {
    /// A rectangular tube.
    ///
    /// - `width`: outside size along X, b (m), above 0
    /// - `height`: outside size along Z, h (m), above 0
    /// - `wall`: t (m), above 0 and below half the smaller side
    /// - `corner_radius`: outside radius (m), 0 (sharp) to half the smaller side;
    ///   the inside radius is this less the wall, or 0
    ///
    /// Errors: [`SectionError::Length`], [`SectionError::WallTooThick`], [`SectionError::CornerRadius`].
    pub fn new(width: f64, height: f64, wall: f64, corner_radius: f64) -> Result<Self, SectionError> {
        let width = accepted_length("width", width)?;
        let height = accepted_length("height", height)?;
        let wall = accepted_length("wall", wall)?;
        let limit = 0.5 * width.min(height);
        if wall >= limit {
            return Err(SectionError::WallTooThick { wall, limit });
        }
        if !(0.0..=limit).contains(&corner_radius) {
            let radius = corner_radius;
            return Err(SectionError::CornerRadius { radius, limit });
        }
        Ok(Self { width, height, wall, corner_radius })
    }

    /// Outside size along X (m).
    pub fn width(&self) -> f64 {
        self.width
    }

    /// Outside size along Z (m).
    pub fn height(&self) -> f64 {
        self.height
    }

    /// Wall (m).
    pub fn wall(&self) -> f64 {
        self.wall
    }

    /// Outside corner radius (m).
    pub fn corner_radius(&self) -> f64 {
        self.corner_radius
    }

    /// Area and second moments are exact, arcs included. Torsion is Bredt's
    /// closed thin wall, J = 4 Am² t / s and T/tau = 2 Am t, on the midline with
    /// its corners rounded (Boresi & Schmidt, *Advanced Mechanics of Materials*,
    /// 6th ed. 2003, ch. 6). The shear coefficients are Cowper's thin box on the
    /// midline sides as if its corners were sharp; a rounded corner takes area
    /// from both walls alike, so that it hardly moves the ratio.
    pub(crate) fn properties(&self, poisson_ratio: f64) -> SectionProperties {
        let (outside, inside) = (self.outside(), self.inside());
        let midline = self.midline();
        let (b, h, t) = (midline.width, midline.height, self.wall);
        let enclosed = midline.area();
        let length = 2.0 * (b + h) - (8.0 - 2.0 * PI) * midline.radius;
        SectionProperties {
            area: outside.area() - inside.area(),
            second_moment_x: outside.second_moment() - inside.second_moment(),
            second_moment_z: outside.turned().second_moment() - inside.turned().second_moment(),
            torsion_constant: 4.0 * enclosed * enclosed * t / length,
            shear_coefficient_x: shear_coefficient::thin_box(h / b, poisson_ratio),
            shear_coefficient_z: shear_coefficient::thin_box(b / h, poisson_ratio),
            torsion_modulus: 2.0 * enclosed * t,
            plastic_modulus_x: 2.0 * (outside.first_moment() - inside.first_moment()),
            width: self.width,
            height: self.height,
        }
    }

    /// V Q / (2 t I) at mid-height and at mid-width, added: each wall's own peak
    /// lies where the other force gives none, so the sum bounds the true peak.
    pub(crate) fn transverse_shear_peak(&self, shear_x: f64, shear_z: f64) -> f64 {
        let [first_x, first_z] = self.first_moments();
        let (outside, inside) = (self.outside(), self.inside());
        let peak = |outside: RoundedRectangle, inside: RoundedRectangle, first: f64, shear: f64| {
            let second = outside.second_moment() - inside.second_moment();
            shear.abs() * first / (2.0 * self.wall * second)
        };
        peak(outside, inside, first_x, shear_z) + peak(outside.turned(), inside.turned(), first_z, shear_x)
    }

    /// First moments of the upper half about X and of the front half about Z (m³).
    pub(crate) fn first_moments(&self) -> [f64; 2] {
        let (outside, inside) = (self.outside(), self.inside());
        let less = |outside: RoundedRectangle, inside: RoundedRectangle| {
            outside.first_moment() - inside.first_moment()
        };
        [less(outside, inside), less(outside.turned(), inside.turned())]
    }

    pub(crate) fn outside(&self) -> RoundedRectangle {
        self.shrunk(0.0)
    }

    pub(crate) fn inside(&self) -> RoundedRectangle {
        self.shrunk(self.wall)
    }

    fn midline(&self) -> RoundedRectangle {
        self.shrunk(0.5 * self.wall)
    }

    fn shrunk(&self, depth: f64) -> RoundedRectangle {
        RoundedRectangle {
            width: self.width - 2.0 * depth,
            height: self.height - 2.0 * depth,
            radius: (self.corner_radius - depth).max(0.0),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ends_of_the_ranges_are_accepted_and_just_past_them_refused() {
        let tube = |wall, radius| RectangularTube::new(0.12, 0.15, wall, radius);
        assert!(tube(0.008, 0.0).is_ok());
        assert!(tube(0.0599, 0.06).is_ok());
        assert!(tube(0.06, 0.0).is_err());
        assert!(tube(0.008, -0.001).is_err());
        assert!(tube(0.008, f64::NAN).is_err());
        assert_eq!(
            tube(0.008, 0.0601).unwrap_err().to_string(),
            "corner radius is 60.1 mm; accepted is 0 mm to 60 mm, half the smaller side"
        );
    }
}
