//! A tee.

use super::accepted_thickness;
use crate::error::accepted_length;
use crate::{Contour, Outline, SectionError};

/// A tee; the end of its stem is its origin, the stem stands up and carries the flange.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tee {
    /// Size along Z, flange included (m).
    pub height: f64,
    /// Size of the flange along X (m).
    pub width: f64,
    /// Thickness of the stem (m).
    pub stem: f64,
    /// Thickness of the flange (m).
    pub flange: f64,
    /// Radius of the fillets between stem and flange (m); 0 for none.
    pub root_radius: f64,
}

impl Tee {
    /// Its edges.
    ///
    /// Errors: [`SectionError::Length`], [`SectionError::ShapeThickness`], [`SectionError::FilletTooLarge`].
    pub fn outline(&self) -> Result<Outline, SectionError> {
        let h = accepted_length("height of the tee", self.height)?;
        let half = 0.5 * accepted_length("width of the tee", self.width)?;
        let stem = 0.5 * accepted_thickness("stem of the tee", self.stem, 2.0 * half, "its width")?;
        let under = h - accepted_thickness("flange of the tee", self.flange, h, "its height")?;
        let corners = [
            ([-stem, 0.0], 0.0),
            ([stem, 0.0], 0.0),
            ([stem, under], self.root_radius),
            ([half, under], 0.0),
            ([half, h], 0.0),
            ([-half, h], 0.0),
            ([-half, under], 0.0),
            ([-stem, under], self.root_radius),
        ];
        Ok(Outline::solid(Contour::rounded(&corners)?))
    }
}
