//! Sections along a bare axle, those of uniform pieces found once.

use axlebow_sections::{EdgeReach, SectionProperties};

use crate::Body;

/// A section, and how far its fibres reach.
#[derive(Debug, Clone, Copy)]
pub(crate) struct LineSection {
    pub properties: SectionProperties,
    pub reach: EdgeReach,
}

impl LineSection {
    fn of(body: &Body, piece: usize, distance: f64) -> Self {
        let piece = &body.pieces()[piece];
        let profile = piece.profile_at(distance);
        let properties = profile.properties(body.material(piece.part).poisson_ratio());
        LineSection { properties, reach: profile.edge_reach() }
    }
}

/// Sections of the pieces of a body.
#[derive(Debug)]
pub(crate) struct LineSections<'a> {
    body: &'a Body,
    /// By piece; none where it tapers.
    uniform: Vec<Option<LineSection>>,
}

impl<'a> LineSections<'a> {
    pub(crate) fn of(body: &'a Body) -> Self {
        let each = body.pieces().iter().enumerate();
        let uniform = each
            .map(|(number, piece)| (!piece.is_tapered()).then(|| LineSection::of(body, number, piece.from)));
        LineSections { body, uniform: uniform.collect() }
    }

    /// The section of a piece at a distance from the centre line.
    pub(crate) fn at(&self, piece: usize, distance: f64) -> LineSection {
        self.uniform[piece].unwrap_or_else(|| LineSection::of(self.body, piece, distance))
    }

    /// Whether a piece has the same section all along.
    pub(crate) fn is_uniform(&self, piece: usize) -> bool {
        self.uniform[piece].is_some()
    }
}
