//! Checks of the crate from outside.

#![allow(clippy::unwrap_used)] // helpers of tests are tests too

mod closed_forms;
mod contact;
mod errors;
mod foundation;
mod frequencies;
mod orders;
mod outcome;
mod properties;
mod recomputed;
mod responses;
mod tapers;

use axlebow_beam::{
    Elastic, Line, LineParts, Load, Mesh, SectionValues, Span, SpanSection, Support, SupportKind, Theory,
};
use axlebow_sections::{Profile, RoundTube};

/// The tube of the beam cases of the project's reference list: 5 in outside, 0.5 in wall, in psi.
pub const STEEL: Elastic = Elastic { modulus: 29.0e6, poisson_ratio: 0.3, density: 7.3e-4 };

/// Euler-Bernoulli, one flexibility element a piece.
pub const BENDING: Mesh =
    Mesh { theory: Theory::EulerBernoulli, element: axlebow_beam::Element::Flexibility, elements: 1 };
/// Timoshenko, one flexibility element a piece.
pub const SHEAR: Mesh = Mesh { theory: Theory::Timoshenko, ..BENDING };

/// Its values.
pub fn tube() -> SectionValues {
    SectionValues::of_profile(&Profile::from(RoundTube::new(5.0, 0.5).unwrap()), 0.3)
}

/// A span of it.
pub fn tube_span(length: f64) -> Span {
    Span::new(length, SpanSection::Uniform(tube()), STEEL).unwrap()
}

/// A beam of the tube.
pub fn line(length: f64, supports: &[(f64, SupportKind)], loads: &[Load]) -> Line {
    of_spans(vec![tube_span(length)], supports, loads)
}

/// A beam of any spans.
pub fn of_spans(spans: Vec<Span>, supports: &[(f64, SupportKind)], loads: &[Load]) -> Line {
    let supports = supports.iter().map(|(at, kind)| Support { at: *at, kind: *kind }).collect();
    Line::new(LineParts { spans, supports, loads: loads.to_vec(), masses: Vec::new() }).unwrap()
}

/// Refuses a value that is off by more than a share of what is expected.
pub fn assert_near(computed: f64, expected: f64, share: f64) {
    let error = (computed - expected).abs();
    assert!(error <= share * expected.abs().max(1e-300), "{computed} for {expected}: off by {error:e}");
}
