//! What is wrong with a beam.

/// A part of a beam, to say where something is wrong; numbers count from 0 in the order in which the parts are given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// A span.
    Span(usize),
    /// A support.
    Support(usize),
    /// A load.
    Load(usize),
    /// A mass.
    Mass(usize),
    /// A moving or shaking force.
    Response,
    /// The beam as a whole.
    Beam,
}

impl std::fmt::Display for Part {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Span(number) => write!(f, "span {}", number + 1),
            Self::Support(number) => write!(f, "support {}", number + 1),
            Self::Load(number) => write!(f, "load {}", number + 1),
            Self::Mass(number) => write!(f, "mass {}", number + 1),
            Self::Response => f.write_str("the moving or shaking force"),
            Self::Beam => f.write_str("the beam"),
        }
    }
}

/// A motion that nothing resists.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FreeMotion {
    /// Nothing holds the beam at all.
    All,
    /// It can move up and down without turning.
    UpAndDown,
    /// It can turn about a place (m).
    TurningAbout {
        /// The place.
        at: f64,
    },
}

impl std::fmt::Display for FreeMotion {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::All => f.write_str("nothing holds the beam, neither up and down nor against turning"),
            Self::UpAndDown => {
                f.write_str("nothing holds the beam up and down; what there is only keeps it from turning")
            }
            Self::TurningAbout { at } => {
                write!(f, "nothing holds the beam against turning about its only support at {at} m")
            }
        }
    }
}

/// Why a beam has no answer.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum BeamError {
    /// A value that no beam can have.
    #[error("{part} has {thing} {value} {unit}; accepted is {accepted}")]
    Value {
        /// Where.
        part: Part,
        /// What it is called.
        thing: &'static str,
        /// What was given, SI.
        value: f64,
        /// SI unit.
        unit: &'static str,
        /// What is accepted.
        accepted: &'static str,
    },
    /// A section that there cannot be, or a taper between unlike ones.
    #[error("{part}: {reason}")]
    Section {
        /// Where.
        part: Part,
        /// What is wrong with it.
        reason: axlebow_sections::SectionError,
    },
    /// A beam without a span.
    #[error("a beam has at least one span")]
    NoSpan,
    /// Something beside the beam.
    #[error("{part} is at {at} m, but the beam runs from 0 to {length} m; give a place on the beam")]
    OffTheBeam {
        /// What.
        part: Part,
        /// Where it is (m).
        at: f64,
        /// Length of the beam (m).
        length: f64,
    },
    /// Two supports at one place.
    #[error("{part} is at {at} m, where there is a support already; make one support of the two")]
    SamePlace {
        /// The later one.
        part: Part,
        /// Where (m).
        at: f64,
    },
    /// A line load whose end is not behind its start.
    #[error("{part} runs from {from} m to {to} m; its end must lie behind its start")]
    Backward {
        /// What.
        part: Part,
        /// Start (m).
        from: f64,
        /// End (m).
        to: f64,
    },
    /// A section without an area, where shear or mass is asked for.
    #[error("{part} has no area, which {what} needs; give the area of its section, or leave that out")]
    NoArea {
        /// Where.
        part: Part,
        /// What needs it.
        what: &'static str,
    },
    /// A mechanism.
    #[error("{motion}; add a support, a spring or a foundation that does")]
    Mechanism {
        /// What is free.
        motion: FreeMotion,
    },
    /// A two-node element without shear.
    #[error(
        "the two-node element has shear and cannot do without; choose Timoshenko theory, or another element"
    )]
    TwoNodeNeedsShear,
    /// A mesh without elements, or one that is too fine.
    #[error("{value} elements in a piece; accepted are 1 to {most}")]
    Elements {
        /// What was asked for.
        value: usize,
        /// Most that is accepted.
        most: usize,
    },
    /// Supports with a gap that open and close for ever.
    #[error("supports with a gap still open and close after {steps} steps; give one of them a stiffness")]
    Contact {
        /// Steps taken.
        steps: usize,
    },
    /// Matrices that cannot be solved.
    #[error(
        "the equations of the beam cannot be solved: {reason}; look for stiffnesses that differ by more than 1e12"
    )]
    Unsolvable {
        /// What the solver says.
        reason: String,
    },
}
