//! Half of a round tube.

use std::f64::consts::PI;

use crate::{Contour, Corner, Outline, RoundTube, SectionError};

/// The upper half of a round tube, cut along its axis, which is its origin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HalfPipe {
    /// The tube that is cut.
    pub tube: RoundTube,
}

impl HalfPipe {
    /// Its edges.
    ///
    /// Errors: none that a tube does not refuse already.
    pub fn outline(&self) -> Result<Outline, SectionError> {
        let (outer, inner) = (0.5 * self.tube.outside_diameter(), 0.5 * self.tube.inside_diameter());
        let corner = |x, turn| Corner { x, z: 0.0, turn };
        let corners = vec![corner(outer, PI), corner(-outer, 0.0), corner(-inner, -PI), corner(inner, 0.0)];
        Ok(Outline::solid(Contour::new(corners)?))
    }
}
