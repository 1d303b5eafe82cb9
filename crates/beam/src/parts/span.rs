//! A span: a length of beam of one material.

use crate::error::{BeamError, Part};
use crate::parts::section::{SectionValues, SpanSection};

/// Elastic constants and density of a span.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Elastic {
    /// Young's modulus E (Pa).
    pub modulus: f64,
    /// Poisson's ratio, 0 to 0.5; G = E/(2 (1 + nu)).
    pub poisson_ratio: f64,
    /// Density (kg/m³); only modes and the beam's own weight need it.
    pub density: f64,
}

/// A length of beam of one material, between steps of the section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// Length (m).
    pub length: f64,
    /// Section along it.
    pub section: SpanSection,
    /// What it is made of.
    pub elastic: Elastic,
    /// Foundation modulus under it, force per length and deflection (N/m²); zero for none.
    pub foundation: f64,
}

impl Elastic {
    /// Shear modulus G = E/(2 (1 + nu)) (Pa).
    pub fn shear_modulus(&self) -> f64 {
        self.modulus / (2.0 * (1.0 + self.poisson_ratio))
    }
}

impl Span {
    /// A span without a foundation.
    ///
    /// # Errors
    /// [`BeamError`] for a length, section or elastic constant that there cannot be; the place in it is that of the
    /// first span.
    pub fn new(length: f64, section: SpanSection, elastic: Elastic) -> Result<Self, BeamError> {
        let span = Self { length, section, elastic, foundation: 0.0 };
        span.check(0)?;
        Ok(span)
    }

    /// The same span on a foundation of a modulus (N/m²), which pushes and pulls in proportion to the deflection
    /// (E. Winkler).
    pub fn on_foundation(self, modulus: f64) -> Self {
        Self { foundation: modulus, ..self }
    }

    /// The section at a distance from its start (m).
    pub fn section_at(&self, distance: f64) -> SectionValues {
        self.section.at(distance / self.length, self.elastic.poisson_ratio)
    }

    pub(crate) fn check(&self, number: usize) -> Result<(), BeamError> {
        let part = Part::Span(number);
        let refuse =
            |thing, value, unit, accepted| Err(BeamError::Value { part, thing, value, unit, accepted });
        let above_0 = "a finite number above 0";
        if !(self.length > 0.0 && self.length.is_finite()) {
            return refuse("length", self.length, "m", above_0);
        }
        let Elastic { modulus, poisson_ratio, density } = self.elastic;
        if !(modulus > 0.0 && modulus.is_finite()) {
            return refuse("elastic modulus", modulus, "Pa", above_0);
        }
        if !(0.0..=0.5).contains(&poisson_ratio) {
            return refuse("Poisson's ratio", poisson_ratio, "", "0 to 0.5");
        }
        if !(density > 0.0 && density.is_finite()) {
            return refuse("density", density, "kg/m3", above_0);
        }
        if !(self.foundation >= 0.0 && self.foundation.is_finite()) {
            return refuse("foundation modulus", self.foundation, "N/m2", "0 or a finite number above 0");
        }
        self.section.check(part)
    }
}
