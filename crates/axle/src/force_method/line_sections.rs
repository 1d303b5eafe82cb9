//! Sections along a bare axle, those of uniform pieces found once.

use axlebow_fe::EndForce;
use axlebow_sections::{EdgeReach, SectionProperties};

use crate::Body;

/// A section, and how far its fibers reach.
#[derive(Debug, Clone, Copy)]
pub(crate) struct LineSection {
    pub properties: SectionProperties,
    pub reach: EdgeReach,
    /// One over area, second moment about Z and about X: stress is asked for more often than sections are.
    reciprocals: [f64; 3],
}

impl LineSection {
    fn of(body: &Body, piece: usize, distance: f64) -> Self {
        let piece = &body.pieces()[piece];
        let profile = piece.profile_at(distance);
        let properties = profile.properties(body.material(piece.part).poisson_ratio());
        let SectionProperties { area, second_moment_z, second_moment_x, .. } = properties;
        let reciprocals = [area, second_moment_z, second_moment_x].map(f64::recip);
        LineSection { properties, reach: profile.edge_reach(), reciprocals }
    }
}

impl LineSection {
    /// Stress of largest magnitude under the force on a cut, Pa.
    #[inline]
    pub(crate) fn extreme_stress(&self, force: &EndForce) -> f64 {
        let [per_area, per_z, per_x] = self.reciprocals;
        let gradients = [force.bending_2 * per_z, -force.bending_3 * per_x];
        self.reach.extreme_stress(force.axial * per_area, gradients)
    }
}

/// Sections of the pieces of a body.
#[derive(Debug)]
pub(crate) struct LineSections {
    /// By piece; none where it tapers.
    uniform: Vec<Option<LineSection>>,
}

impl LineSections {
    pub(crate) fn of(body: &Body) -> Self {
        let each = body.pieces().iter().enumerate();
        let uniform = each
            .map(|(number, piece)| (!piece.is_tapered()).then(|| LineSection::of(body, number, piece.from)));
        LineSections { uniform: uniform.collect() }
    }

    /// The section of a piece of the same body at a distance from the center line.
    pub(crate) fn at(&self, body: &Body, piece: usize, distance: f64) -> LineSection {
        self.uniform[piece].unwrap_or_else(|| LineSection::of(body, piece, distance))
    }

    /// The section of a piece, if it is the same all along.
    pub(crate) fn uniform(&self, piece: usize) -> Option<&LineSection> {
        self.uniform[piece].as_ref()
    }
}
