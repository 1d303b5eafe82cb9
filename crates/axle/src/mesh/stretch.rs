//! A stretch of axle and the beams along it.

use std::sync::Arc;

use axlebow_fe::{BeamId, EndForce, NodeId};

use crate::parts::body::Piece;
use crate::parts::stiffener::Seated;
use crate::sections::resultants::Resultants;
use crate::sections::stiffened::StiffenedSection;

/// Parts of a tapered stretch that are integrated apart: two leave 2e-9 of the deflection when a stretch
/// tapers two to one (`crates/fe/tests/all/convergence.rs`), and stations divide a taper further.
pub(crate) const TAPER_PARTS: usize = 2;

/// A stretch of axle between two neighboring places.
#[derive(Debug, Clone)]
pub(crate) struct Stretch {
    pub beam: BeamId,
    /// Node at its right end.
    pub start: NodeId,
    /// Node at its left end.
    pub end: NodeId,
    pub start_y: f64,
    pub end_y: f64,
    /// Piece of the body that it belongs to.
    pub piece: Piece,
    /// The section with stiffeners, where they are one section with the axle.
    pub stiffened: Option<Stiffened>,
    /// Stiffeners that their welds tie to it.
    pub bars: Vec<BarBeam>,
}

impl Stretch {
    /// Where the axle's own beam runs.
    pub(crate) fn line(&self) -> BeamLine {
        let (angle, centroid) =
            self.stiffened.as_ref().map_or((0.0, [0.0; 2]), |own| (own.angle, own.section.area.centroid));
        BeamLine { beam: self.beam, angle, centroid }
    }

    /// The axle's own beam, then those of the stiffeners.
    pub(crate) fn lines(&self) -> impl Iterator<Item = BeamLine> {
        std::iter::once(self.line()).chain(self.bars.iter().map(|bar| bar.line))
    }
}

/// A beam, and where it runs in the section.
#[derive(Debug, Clone, Copy)]
pub(crate) struct BeamLine {
    pub beam: BeamId,
    /// Angle of its stiff axis from X, rad.
    pub angle: f64,
    /// (x, z) of its centroid from the axle's own line, m.
    pub centroid: [f64; 2],
}

impl BeamLine {
    /// What it carries, about the axle's own line: beam axes 1, 2, 3 are Y, Z, X, turned by its angle.
    pub(crate) fn resultants(&self, force: &EndForce) -> Resultants {
        let own = Resultants {
            axial: force.axial,
            shear_x: force.shear_3,
            shear_z: force.shear_2,
            moment_x: force.bending_3,
            moment_z: force.bending_2,
            torsion: force.torsion,
        };
        if self.angle == 0.0 && self.centroid == [0.0; 2] {
            return own;
        }
        own.turned(self.angle).moved(self.centroid)
    }
}

/// The beam of a tied stiffener beside a stretch.
#[derive(Debug, Clone)]
pub(crate) struct BarBeam {
    pub line: BeamLine,
    pub seated: Arc<Seated>,
}

/// A stiffened section and how its beam lies.
#[derive(Debug, Clone)]
pub(crate) struct Stiffened {
    pub section: Arc<StiffenedSection>,
    /// Angle of its stiff axis from X, rad.
    pub angle: f64,
}
