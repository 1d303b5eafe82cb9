//! A bump, or a dip if its height is negative.

use std::f64::consts::PI;

use crate::RoadError;
use crate::error::{accepted_height, accepted_length};
use crate::event::Shape;

/// A half-sine bump, z = h sin(πx/l) for x from 0 to l: its ends are kinks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HalfSineBump {
    height: f64,
    length: f64,
}

/// A haversine bump, z = h (1 - cos(2πx/l))/2 for x from 0 to l: its ends are smooth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HaversineBump {
    height: f64,
    length: f64,
}

impl HalfSineBump {
    /// A half-sine bump that begins at x = 0.
    ///
    /// - `height`: h (m), up to 10 m either way; negative for a dip
    /// - `length`: l (m), 1 mm to 100 km
    ///
    /// Errors: [`RoadError::Range`].
    pub fn new(height: f64, length: f64) -> Result<Self, RoadError> {
        let height = accepted_height("height of the bump", height)?;
        Ok(Self { height, length: accepted_length("length of the bump", length)? })
    }

    /// Height h (m).
    pub fn height(&self) -> f64 {
        self.height
    }

    /// Length l (m).
    pub fn length(&self) -> f64 {
        self.length
    }
}

impl HaversineBump {
    /// A haversine bump that begins at x = 0.
    ///
    /// - `height`: h (m), up to 10 m either way; negative for a dip
    /// - `length`: l (m), 1 mm to 100 km
    ///
    /// Errors: [`RoadError::Range`].
    pub fn new(height: f64, length: f64) -> Result<Self, RoadError> {
        let height = accepted_height("height of the bump", height)?;
        Ok(Self { height, length: accepted_length("length of the bump", length)? })
    }

    /// Height h (m).
    pub fn height(&self) -> f64 {
        self.height
    }

    /// Length l (m).
    pub fn length(&self) -> f64 {
        self.length
    }
}

impl Shape for HalfSineBump {
    fn end(&self) -> f64 {
        self.length
    }

    fn height(&self, x: f64) -> f64 {
        self.height * (PI * x / self.length).sin()
    }

    fn area(&self, from: f64, to: f64) -> f64 {
        // cos a - cos b as a product keeps every digit of a short stretch.
        let (sum, difference) = (to + from, to - from);
        let half = 0.5 * PI / self.length;
        self.height * self.length / PI * 2.0 * (half * sum).sin() * (half * difference).sin()
    }
}

impl Shape for HaversineBump {
    fn end(&self) -> f64 {
        self.length
    }

    fn height(&self, x: f64) -> f64 {
        self.height * (PI * x / self.length).sin().powi(2)
    }

    fn area(&self, from: f64, to: f64) -> f64 {
        let (sum, difference) = (to + from, to - from);
        let whole = PI / self.length;
        let wave = (whole * sum).cos() * (whole * difference).sin() / whole;
        0.5 * self.height * (difference - wave)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    #[test]
    fn both_bumps_reach_their_height_in_the_middle() {
        let (half_sine, haversine) =
            (HalfSineBump::new(0.1, 3.0).unwrap(), HaversineBump::new(0.1, 3.0).unwrap());
        assert_relative_eq!(Shape::height(&half_sine, 1.5), 0.1);
        assert_relative_eq!(Shape::height(&haversine, 1.5), 0.1);
        assert_relative_eq!(Shape::height(&half_sine, 0.75), 0.1 * 0.5_f64.sqrt(), max_relative = 1e-15);
        assert_relative_eq!(Shape::height(&haversine, 0.75), 0.05, max_relative = 1e-15);
    }

    #[test]
    fn whole_areas_are_two_over_pi_and_one_half_of_height_times_length() {
        let (half_sine, haversine) =
            (HalfSineBump::new(0.1, 3.0).unwrap(), HaversineBump::new(0.1, 3.0).unwrap());
        assert_relative_eq!(half_sine.area(0.0, 3.0), 0.6 / PI, max_relative = 1e-15);
        assert_relative_eq!(haversine.area(0.0, 3.0), 0.15, max_relative = 1e-15);
    }

    #[test]
    fn sizes_out_of_range_are_refused() {
        for (height, length) in [(f64::NAN, 1.0), (11.0, 1.0), (0.1, 0.0), (0.1, -1.0), (0.1, f64::INFINITY)]
        {
            assert!(HalfSineBump::new(height, length).is_err(), "{height} {length}");
            assert!(HaversineBump::new(height, length).is_err(), "{height} {length}");
        }
    }
}
