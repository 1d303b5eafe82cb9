//! A flat bar.

use crate::error::accepted_length;
use crate::{Contour, Outline, SectionError};

/// A flat bar, centered on its origin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Flat {
    /// Size along X (m).
    pub width: f64,
    /// Size along Z (m).
    pub thickness: f64,
}

impl Flat {
    /// Its edges.
    ///
    /// Errors: [`SectionError::Length`].
    pub fn outline(&self) -> Result<Outline, SectionError> {
        let x = 0.5 * accepted_length("width of the flat", self.width)?;
        let z = 0.5 * accepted_length("thickness of the flat", self.thickness)?;
        let corners = [[-x, -z], [x, -z], [x, z], [-x, z]].map(|place| (place, 0.0));
        Ok(Outline::solid(Contour::rounded(&corners)?))
    }
}
