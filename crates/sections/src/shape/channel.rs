//! A channel.

use super::accepted_thickness;
use crate::error::accepted_length;
use crate::{Contour, Outline, SectionError};

/// A channel with parallel flanges; the middle of its web's back is its origin, its flanges point forward.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Channel {
    /// Size along Z (m).
    pub height: f64,
    /// Size along X, web included (m).
    pub width: f64,
    /// Thickness of the web (m).
    pub web: f64,
    /// Thickness of the flanges (m).
    pub flange: f64,
    /// Radius of the fillets between web and flanges (m); 0 for none.
    pub root_radius: f64,
}

impl Channel {
    /// Its edges.
    ///
    /// Errors: [`SectionError::Length`], [`SectionError::ShapeThickness`], [`SectionError::FilletTooLarge`].
    pub fn outline(&self) -> Result<Outline, SectionError> {
        let half = 0.5 * accepted_length("height of the channel", self.height)?;
        let b = accepted_length("width of the channel", self.width)?;
        let web = accepted_thickness("web of the channel", self.web, b, "its width")?;
        let flange = accepted_thickness("flange of the channel", self.flange, half, "half its height")?;
        let inner = half - flange;
        let corners = [
            ([0.0, -half], 0.0),
            ([b, -half], 0.0),
            ([b, -inner], 0.0),
            ([web, -inner], self.root_radius),
            ([web, inner], self.root_radius),
            ([b, inner], 0.0),
            ([b, half], 0.0),
            ([0.0, half], 0.0),
        ];
        Ok(Outline::solid(Contour::rounded(&corners)?))
    }
}
