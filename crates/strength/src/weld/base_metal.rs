//! The steel beside a weld.

use crate::StrengthError;
use crate::error::positive;

/// The steel beside a weld, where the weld's load enters a part.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BaseMetal {
    name: &'static str,
    thickness: f64,
    yield_strength: f64,
    ultimate_strength: f64,
}

impl BaseMetal {
    /// A part beside a weld; strengths after [`crate::HeatAffectedZone`] where heat weakens it.
    ///
    /// - `name`: as checks call it, such as `wall`
    /// - `thickness`: t (m), above 0
    /// - `yield_strength`: f_y (Pa), above 0
    /// - `ultimate_strength`: f_u (Pa), above 0
    ///
    /// Errors: [`StrengthError::NotPositive`].
    pub fn new(
        name: &'static str,
        thickness: f64,
        yield_strength: f64,
        ultimate_strength: f64,
    ) -> Result<Self, StrengthError> {
        Ok(Self {
            name,
            thickness: positive("thickness beside the weld", thickness, "m")?,
            yield_strength: positive("yield strength beside the weld", yield_strength, "Pa")?,
            ultimate_strength: positive("ultimate strength beside the weld", ultimate_strength, "Pa")?,
        })
    }

    /// What checks call it.
    pub fn name(&self) -> &'static str {
        self.name
    }

    /// Thickness t (m).
    pub fn thickness(&self) -> f64 {
        self.thickness
    }

    /// Yield strength f_y (Pa).
    pub fn yield_strength(&self) -> f64 {
        self.yield_strength
    }

    /// Ultimate strength f_u (Pa).
    pub fn ultimate_strength(&self) -> f64 {
        self.ultimate_strength
    }
}
