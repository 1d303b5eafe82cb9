//! A step to another level.

use crate::RoadError;
use crate::error::accepted_height;
use crate::event::Shape;

/// A step, z = h from x = 0 on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Step {
    height: f64,
}

impl Step {
    /// A step at x = 0.
    ///
    /// - `height`: h (m), up to 10 m either way; negative for a step down
    ///
    /// Errors: [`RoadError::Range`].
    pub fn new(height: f64) -> Result<Self, RoadError> {
        Ok(Self { height: accepted_height("height of the step", height)? })
    }

    /// Height h (m).
    pub fn height(&self) -> f64 {
        self.height
    }
}

impl Shape for Step {
    fn end(&self) -> f64 {
        0.0
    }

    fn after(&self) -> f64 {
        self.height
    }

    fn height(&self, _: f64) -> f64 {
        self.height
    }

    fn area(&self, from: f64, to: f64) -> f64 {
        self.height * (to - from)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Event;

    #[test]
    fn a_step_is_up_from_its_place_on() {
        let step = Event::from(Step::new(0.05).unwrap());
        assert_eq!([-1e-12, 0.0, 1.0].map(|x| step.height(x)), [0.0, 0.05, 0.05]);
    }

    #[test]
    fn a_height_that_is_no_number_is_refused() {
        assert!(Step::new(f64::NAN).is_err());
    }
}
