//! A ramp to another level.

use crate::RoadError;
use crate::error::{accepted_height, accepted_length};
use crate::event::Shape;

/// A ramp, z = h x/l for x from 0 to l and h beyond.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ramp {
    height: f64,
    length: f64,
}

impl Ramp {
    /// A ramp that begins at x = 0.
    ///
    /// - `height`: h (m), up to 10 m either way; negative for a way down
    /// - `length`: l (m), 1 mm to 100 km
    ///
    /// Errors: [`RoadError::Range`].
    pub fn new(height: f64, length: f64) -> Result<Self, RoadError> {
        let height = accepted_height("height of the ramp", height)?;
        Ok(Self { height, length: accepted_length("length of the ramp", length)? })
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

impl Shape for Ramp {
    fn end(&self) -> f64 {
        self.length
    }

    fn after(&self) -> f64 {
        self.height
    }

    fn height(&self, x: f64) -> f64 {
        self.height * (x / self.length)
    }

    fn area(&self, from: f64, to: f64) -> f64 {
        0.5 * self.height * ((from + to) / self.length) * (to - from)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Event;

    #[test]
    fn a_ramp_rises_evenly_and_stays_up() {
        let ramp = Event::from(Ramp::new(0.5, 4.0).unwrap());
        for (x, z) in [(-1.0, 0.0), (0.0, 0.0), (1.0, 0.125), (4.0, 0.5), (1e4, 0.5)] {
            assert_eq!(ramp.height(x), z, "{x}");
        }
    }

    #[test]
    fn sizes_out_of_range_are_refused() {
        assert!(Ramp::new(0.1, 0.0).is_err());
        assert!(Ramp::new(f64::NEG_INFINITY, 1.0).is_err());
    }
}
