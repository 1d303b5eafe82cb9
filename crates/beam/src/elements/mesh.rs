//! How a beam is cut into elements.

use crate::elements::member::Member;
use crate::error::BeamError;
use crate::parts::line::Line;
use crate::parts::load::Load;

/// Most elements of a piece.
const MOST_ELEMENTS: usize = 1000;

/// Whether a beam shears as well as bends.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Theory {
    /// Sections stay square to the bent line, and have no rotary inertia.
    #[default]
    EulerBernoulli,
    /// Sections shear, and have rotary inertia.
    Timoshenko,
}

/// What stands for a stretch of beam.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Element {
    /// Stiffness from the flexibility integrals: exact in statics without a foundation, whatever the section does.
    #[default]
    Flexibility,
    /// Cubic deflections; with shear those of the uniform beam of its middle section.
    Hermite,
    /// Linear deflections and slopes, shear taken at the middle.
    TwoNode,
}

/// How a beam is cut into elements.
///
/// A piece runs between places where something happens: ends of spans and of line loads, supports, point loads, masses.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Mesh {
    /// Theory.
    pub theory: Theory,
    /// Kind of all elements.
    pub element: Element,
    /// Elements of each piece, of equal length.
    pub elements: usize,
}

impl Default for Mesh {
    fn default() -> Self {
        Self { theory: Theory::default(), element: Element::default(), elements: 1 }
    }
}

impl Element {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Flexibility => "flexibility",
            Self::Hermite => "hermite",
            Self::TwoNode => "two-node",
        }
    }
}

impl Theory {
    /// The words for it.
    pub fn words(self) -> &'static str {
        match self {
            Self::EulerBernoulli => "Euler-Bernoulli",
            Self::Timoshenko => "Timoshenko",
        }
    }
}

impl Mesh {
    /// The members of a beam, each with where it starts.
    ///
    /// # Errors
    /// [`BeamError::Elements`], [`BeamError::TwoNodeNeedsShear`], [`BeamError::NoArea`].
    pub(crate) fn members(&self, line: &Line) -> Result<Vec<(f64, Member)>, BeamError> {
        if !(1..=MOST_ELEMENTS).contains(&self.elements) {
            return Err(BeamError::Elements { value: self.elements, most: MOST_ELEMENTS });
        }
        if self.theory == Theory::Timoshenko {
            line.check_areas("shear")?;
        } else if self.element == Element::TwoNode {
            return Err(BeamError::TwoNodeNeedsShear);
        }
        let mut members = Vec::new();
        for piece in line.piece_ends().windows(2) {
            let place =
                |number: usize| piece[0] + (piece[1] - piece[0]) * number as f64 / self.elements as f64;
            for number in 0..self.elements {
                let from = place(number);
                members.push((from, self.member(line, from, place(number + 1))));
            }
        }
        Ok(members)
    }

    fn member(&self, line: &Line, from: f64, to: f64) -> Member {
        let middle = 0.5 * (from + to);
        let ends = line.span_ends();
        let number = ends[1..].iter().position(|end| middle < *end).unwrap_or(line.spans().len() - 1);
        let mut member = Member {
            span: line.spans()[number],
            offset: from - ends[number],
            length: to - from,
            theory: self.theory,
            load: [0.0; 2],
            curvature: 0.0,
            gravity: 0.0,
        };
        for load in line.loads() {
            add_load(&mut member, load, [from, to]);
        }
        member
    }
}

/// Adds what of a load lies along a member that it covers whole or not at all.
fn add_load(member: &mut Member, load: &Load, ends: [f64; 2]) {
    let middle = 0.5 * (ends[0] + ends[1]);
    match *load {
        Load::Force { .. } | Load::Moment { .. } => {}
        Load::Distributed { from, to, start, end } if from < middle && middle < to => {
            for (sum, place) in member.load.iter_mut().zip(ends) {
                *sum += start + (end - start) * (place - from) / (to - from);
            }
        }
        Load::Thermal { from, to, curvature } if from < middle && middle < to => {
            member.curvature += curvature
        }
        Load::Distributed { .. } | Load::Thermal { .. } => {}
        Load::Weight { gravity } => member.gravity += gravity,
    }
}
