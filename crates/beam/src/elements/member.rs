//! A stretch of beam for which one element stands.

use crate::elements::mesh::Theory;
use crate::parts::section::SectionValues;
use crate::parts::span::Span;
use crate::quadrature::integrate;

/// Parts in which a tapered member is integrated: a taper of 2 to 1 comes out to 1e-13.
const TAPER_PARTS: usize = 4;

/// A stretch of beam for which one element stands; s counts from its start.
#[derive(Debug, Clone, Copy)]
pub struct Member {
    /// The span in which it lies.
    pub span: Span,
    /// Its start, from that of the span (m).
    pub offset: f64,
    /// Its length (m).
    pub length: f64,
    /// Theory.
    pub theory: Theory,
    /// Upward load per length at its start and end (N/m).
    pub load: [f64; 2],
    /// Free curvature κ₀ (1/m).
    pub curvature: f64,
    /// Acceleration of gravity whose weight loads it (m/s²).
    pub gravity: f64,
}

impl Member {
    /// EI (N m²).
    pub fn bending_stiffness(&self, s: f64) -> f64 {
        self.span.elastic.modulus * self.section(s).second_moment
    }

    /// 1/κGA (1/N), zero without shear.
    pub fn shear_flexibility(&self, s: f64) -> f64 {
        match (self.theory, self.section(s).area) {
            (Theory::Timoshenko, Some(area)) => {
                1.0 / (self.section(s).shear_coefficient * self.span.elastic.shear_modulus() * area)
            }
            _ => 0.0,
        }
    }

    /// ρA (kg/m), zero of a section without an area.
    pub fn mass_per_length(&self, s: f64) -> f64 {
        self.span.elastic.density * self.section(s).area.unwrap_or(0.0)
    }

    /// ρI (kg m), zero in Euler-Bernoulli theory.
    pub fn rotary_inertia(&self, s: f64) -> f64 {
        match self.theory {
            Theory::EulerBernoulli => 0.0,
            Theory::Timoshenko => self.span.elastic.density * self.section(s).second_moment,
        }
    }

    /// Upward load per length, weight included, foundation not (N/m).
    pub fn load_at(&self, s: f64) -> f64 {
        let [start, end] = self.load;
        let weight = if self.gravity == 0.0 { 0.0 } else { self.gravity * self.mass_per_length(s) };
        start + (end - start) * s / self.length - weight
    }

    /// The section.
    pub fn section(&self, s: f64) -> SectionValues {
        self.span.section_at(self.offset + s)
    }

    /// `∫ f ds` over 0 to s, exact for polynomials of a uniform member.
    pub fn integral<const N: usize>(&self, s: f64, f: impl FnMut(f64) -> [f64; N]) -> [f64; N] {
        integrate((0.0, s), if self.span.section.is_uniform() { 1 } else { TAPER_PARTS }, f)
    }

    /// `∫ q dt` and `∫ (s − t) q dt` over 0 to s: shear and moment that a load on the part before s makes there.
    ///
    /// - `load`: q (N/m), upward
    pub fn load_resultants(&self, s: f64, mut load: impl FnMut(f64) -> f64) -> [f64; 2] {
        self.integral(s, |t| {
            let q = load(t);
            [q, (s - t) * q]
        })
    }
}
