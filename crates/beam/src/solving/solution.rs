//! A beam under its loads.

use crate::elements::mesh::Mesh;
use crate::error::BeamError;
use crate::hold::Hold;
use crate::parts::line::Line;
use crate::solving::contact;
use crate::solving::system::System;

/// What there is at a place of the beam; signs as in the [crate] documentation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Station {
    /// Where (m).
    pub at: f64,
    /// Upward deflection (m).
    pub deflection: f64,
    /// Rotation of the section (rad).
    pub slope: f64,
    /// w', which is the slope but for shear.
    pub rise: f64,
    /// Sum of the upward forces on the part before it (N).
    pub shear: f64,
    /// Bending moment, positive where the ends bend up (N m).
    pub moment: f64,
    /// Largest bending stress of the section (Pa, tension positive); none of a section without fibers.
    pub stress: Option<f64>,
}

/// What a support does to the beam.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reaction {
    /// Where (m).
    pub at: f64,
    /// The word for its kind.
    pub kind: &'static str,
    /// Upward force on the beam (N).
    pub force: f64,
    /// Moment on the beam, positive where it turns it so that it rises with Y (N m).
    pub moment: f64,
    /// Whether it touches, which only a stop may not.
    pub touches: bool,
}

/// A beam under its loads.
pub struct Solution {
    /// What each support does, in the order of the beam's.
    pub reactions: Vec<Reaction>,
    system: System,
    displacements: Vec<f64>,
    /// Force up and moment on the start of each element.
    starts: Vec<[f64; 2]>,
}

/// Solves a beam under its loads; stops with a gap touch where they are reached.
///
/// # Errors
/// [`BeamError::Mechanism`] where something can move freely, [`BeamError::NoArea`] of a section whose shear is asked
/// for, [`BeamError::TwoNodeNeedsShear`], [`BeamError::Elements`], [`BeamError::Contact`], [`BeamError::Unsolvable`].
pub fn solve(line: &Line, mesh: &Mesh) -> Result<Solution, BeamError> {
    contact::settled(line, mesh)
}

impl Solution {
    /// The solution with given stops touching.
    pub(crate) fn of(line: &Line, mesh: &Mesh, touches: &[bool]) -> Result<Self, BeamError> {
        let system = System::new(line, mesh, touches)?;
        let displacements = system.displacements(line)?;
        let residuals = system.residuals(line, &displacements);
        let reaction = |freedom: usize| match system.holds[freedom] {
            Hold::Free => 0.0,
            Hold::Rigid(_) => residuals[freedom],
            Hold::Elastic { rate, value } => -rate * (displacements[freedom] - value),
        };
        let reactions = line.supports().iter().zip(touches).map(|(support, touches)| {
            let node = system.node(support.at);
            let (force, moment) = (reaction(2 * node), reaction(2 * node + 1));
            Reaction { at: support.at, kind: support.kind.word(), force, moment, touches: *touches }
        });
        let reactions = reactions.collect();
        let starts = (0..system.elements.len()).map(|node| {
            let forces = system.end_forces(node, &displacements);
            [forces[0], forces[1]]
        });
        let starts = starts.collect();
        Ok(Self { reactions, system, displacements, starts })
    }

    /// How many elements there are.
    pub fn elements(&self) -> usize {
        self.system.elements.len()
    }

    /// What there is at a place (m); at a node, right behind it.
    pub fn at(&self, at: f64) -> Station {
        let last = self.system.elements.len() - 1;
        let element = self.system.nodes[1..=last].partition_point(|node| *node <= at);
        self.in_element(element, at)
    }

    /// What there is right before a place (m).
    pub fn before(&self, at: f64) -> Station {
        let last = self.system.elements.len() - 1;
        let element = self.system.nodes[1..=last].partition_point(|node| *node < at);
        self.in_element(element, at)
    }

    /// Stations along the beam, at least `count`: both ends of each element, and evenly between.
    pub fn stations(&self, count: usize) -> Vec<Station> {
        self.places(count).into_iter().flatten().collect()
    }

    /// Stations of each element.
    pub(crate) fn places(&self, count: usize) -> Vec<Vec<Station>> {
        let each = count.div_ceil(self.elements()).max(2);
        let of_element = |element: usize| {
            let (from, to) = (self.system.nodes[element], self.system.nodes[element + 1]);
            (0..=each)
                .map(|i| self.in_element(element, from + (to - from) * i as f64 / each as f64))
                .collect()
        };
        (0..self.elements()).map(of_element).collect()
    }

    /// What there is at a place of an element.
    pub(crate) fn in_element(&self, element: usize, at: f64) -> Station {
        let (own, ends) = (&self.system.elements[element], self.system.ends(element, &self.displacements));
        let s = (at - self.system.nodes[element]).clamp(0.0, own.member.length);
        let field = own.field(s, &ends, true);
        let [shear, moment] = own.internal_forces(s, &ends, self.starts[element]);
        let stress = own.member.section(s).bending_stress(moment);
        Station {
            at,
            deflection: field.deflection,
            slope: field.slope,
            rise: field.rise,
            shear,
            moment,
            stress,
        }
    }
}
