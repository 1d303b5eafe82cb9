//! A filled rectangle with rounded corners: a wall is one less another.

use std::f64::consts::{FRAC_PI_2, PI};

use crate::{Contour, Corner, StressPoint};

/// A filled rectangle with rounded corners, centered on the origin; a circle when the straight parts vanish.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct RoundedRectangle {
    /// Size along X (m).
    pub width: f64,
    /// Size along Z (m).
    pub height: f64,
    /// Corner radius (m), 0 to half the smaller size.
    pub radius: f64,
}

impl RoundedRectangle {
    pub fn circle(diameter: f64) -> Self {
        Self { width: diameter, height: diameter, radius: 0.5 * diameter }
    }

    /// The same figure turned by a quarter, so that its X takes the place of Z.
    pub fn turned(&self) -> Self {
        Self { width: self.height, height: self.width, radius: self.radius }
    }

    /// b h - (4 - pi) r² (m²).
    pub fn area(&self) -> f64 {
        self.width * self.height - (4.0 - PI) * self.radius * self.radius
    }

    /// First moment of the upper half about the X axis (m³).
    pub fn first_moment(&self) -> f64 {
        let (b, h, r) = (self.width, self.height, self.radius);
        let d = 0.5 * h - r;
        let square = r * r * (d + 0.5 * r);
        let quarter_circle = 0.25 * PI * r * r * d + r * r * r / 3.0;
        b * h * h / 8.0 - 2.0 * (square - quarter_circle)
    }

    /// ∫ z² dA (m⁴).
    pub fn second_moment(&self) -> f64 {
        let (b, h, r) = (self.width, self.height, self.radius);
        let (d, r2) = (0.5 * h - r, r * r);
        let square = r2 * r2 / 12.0 + r2 * (d + 0.5 * r).powi(2);
        let quarter_circle = PI * r2 * r2 / 16.0 + 2.0 * d * r2 * r / 3.0 + 0.25 * PI * r2 * d * d;
        b * h * h * h / 12.0 - 4.0 * (square - quarter_circle)
    }

    /// The point of the edge that lies farthest along a direction; the middle of a side that is square to it.
    pub fn farthest_point(&self, direction_x: f64, direction_z: f64) -> StressPoint {
        let length = direction_x.hypot(direction_z);
        if length == 0.0 {
            return self.farthest_point(0.0, 1.0);
        }
        let along = |half: f64, direction: f64| {
            let straight = if direction == 0.0 { 0.0 } else { (half - self.radius).copysign(direction) };
            straight + self.radius * direction / length
        };
        StressPoint { x: along(0.5 * self.width, direction_x), z: along(0.5 * self.height, direction_z) }
    }

    /// The edge, counter-clockwise.
    pub fn contour(&self) -> Contour {
        let (half_x, half_z, r) = (0.5 * self.width, 0.5 * self.height, self.radius);
        let turn = if r > 0.0 { FRAC_PI_2 } else { 0.0 };
        let corner = |x, z, turn| Corner { x, z, turn };
        Contour::trusted(vec![
            corner(half_x, half_z - r, turn),
            corner(half_x - r, half_z, 0.0),
            corner(r - half_x, half_z, turn),
            corner(-half_x, half_z - r, 0.0),
            corner(-half_x, r - half_z, turn),
            corner(r - half_x, -half_z, 0.0),
            corner(half_x - r, -half_z, turn),
            corner(half_x, r - half_z, 0.0),
        ])
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    #[test]
    fn a_rectangle_of_no_straight_parts_is_a_circle() {
        let circle = RoundedRectangle::circle(2.0);
        assert_relative_eq!(circle.area(), PI, max_relative = 1e-14);
        assert_relative_eq!(circle.first_moment(), 2.0 / 3.0, max_relative = 1e-14);
        assert_relative_eq!(circle.second_moment(), PI / 4.0, max_relative = 1e-14);
    }

    #[test]
    fn arcs_agree_with_the_sum_over_a_fine_polygon() {
        let figure = RoundedRectangle { width: 0.12, height: 0.15, radius: 0.024 };
        let points = figure.contour().polygon(4000);
        let (mut area, mut second) = (0.0, 0.0);
        for (index, a) in points.iter().enumerate() {
            let b = points[(index + 1) % points.len()];
            let cross = a[0] * b[1] - b[0] * a[1];
            area += cross / 2.0;
            second += cross * (a[1] * a[1] + a[1] * b[1] + b[1] * b[1]) / 12.0;
        }
        // A polygon of chords loses about (step angle)²/6 of each arc.
        assert_relative_eq!(figure.area(), area, max_relative = 1e-8);
        assert_relative_eq!(figure.second_moment(), second, max_relative = 1e-8);
    }
}
