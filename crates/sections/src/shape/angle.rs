//! An angle.

use super::accepted_thickness;
use crate::error::accepted_length;
use crate::{Contour, Outline, SectionError};

/// An angle; the outside of its heel is its origin, its legs point forward and up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Angle {
    /// Length of the leg along Z, thickness of the other one included (m).
    pub height: f64,
    /// Length of the leg along X, thickness of the other one included (m).
    pub width: f64,
    /// Thickness of both legs (m).
    pub thickness: f64,
    /// Radius of the fillet between the legs (m); 0 for none.
    pub root_radius: f64,
    /// Radius of the inner edge of each toe (m); 0 for a sharp one.
    pub toe_radius: f64,
}

impl Angle {
    /// Its edges.
    ///
    /// Errors: [`SectionError::Length`], [`SectionError::ShapeThickness`], [`SectionError::FilletTooLarge`].
    pub fn outline(&self) -> Result<Outline, SectionError> {
        let h = accepted_length("height of the angle", self.height)?;
        let b = accepted_length("width of the angle", self.width)?;
        let t = accepted_thickness("thickness of the angle", self.thickness, h.min(b), "the shorter leg")?;
        let (root, toe) = (self.root_radius, self.toe_radius);
        let corners = [
            ([0.0, 0.0], 0.0),
            ([b, 0.0], 0.0),
            ([b, t], toe),
            ([t, t], root),
            ([t, h], toe),
            ([0.0, h], 0.0),
        ];
        Ok(Outline::solid(Contour::rounded(&corners)?))
    }
}
