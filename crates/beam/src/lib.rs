//! A straight beam of one's own: spans, supports, loads, modes and convergence; does not know axles, files or units
//! of files.
//!
//! # Axes and signs
//! The beam lies along Y from 0 on and bends in the Y-Z plane, Z up, as in [`axlebow_sections`]. With w the deflection
//! (up), θ the slope (rotation of the section, positive where it rises with Y), q the load per length (up), k the
//! foundation modulus, κ₀ a free curvature (of a temperature difference):
//!
//! ```text
//! V' = q − k w        V: sum of the upward forces on the part before the cut
//! M' = V              M: positive where it bends the ends up (sagging)
//! θ' = M/EI + κ₀
//! w' = θ − V/κGA      Timoshenko; w' = θ in Euler-Bernoulli theory, which also has no rotary inertia
//! ```
//!
//! # From a beam to results
//! [`Line`] (checked on construction) → pieces between places where something happens → elements ([`Element`]) →
//! [`Solution`], [`Modes`]; several meshes → [`Convergence`].
//!
//! ```
//! use axlebow_beam::{Elastic, Line, LineParts, Load, Mesh, SectionValues, Span, SpanSection, Support, SupportKind, solve};
//! let section = SectionValues { area: Some(4e-3), second_moment: 7e-6, shear_coefficient: 0.5, fibers: None };
//! let steel = Elastic { modulus: 200e9, poisson_ratio: 0.3, density: 7850.0 };
//! let line = Line::new(LineParts {
//!     spans: vec![Span::new(2.0, SpanSection::Uniform(section), steel)?],
//!     supports: vec![Support { at: 0.0, kind: SupportKind::FIXED }],
//!     loads: vec![Load::Force { at: 2.0, force: -1000.0 }],
//!     ..LineParts::default()
//! })?;
//! let solution = solve(&line, &Mesh::default())?;
//! let tip = solution.at(2.0).deflection;
//! assert!((tip + 1000.0 * 8.0 / (3.0 * 200e9 * 7e-6)).abs() < 1e-12);
//! # Ok::<(), axlebow_beam::BeamError>(())
//! ```

mod answers;
mod catalog;
mod elements;
mod error;
mod exact;
mod hold;
mod parts;
mod quadrature;
mod solving;

pub use answers::asked::{Asked, Check, Checked};
pub use answers::outcome::{BeamOptions, BeamOutcome, Bent, Vibrating, work_out};
pub use elements::mesh::{Element, Mesh, Theory};
pub use error::{BeamError, FreeMotion, Part};
pub use exact::closed_form::{ClosedForm, ClosedFormValue, closed_forms};
pub use exact::closed_modes::{ClosedModes, closed_modes};
pub use exact::convergence::{Convergence, ConvergenceRow, Quantity, Reference, convergence};
pub use parts::line::{Line, LineParts};
pub use parts::load::{Load, PointMass};
pub use parts::section::{SectionValues, SpanSection};
pub use parts::span::{Elastic, Span};
pub use parts::support::{StopSide, Support, SupportKind};
pub use solving::harmonic::{Shaken, Shaking, shaken};
pub use solving::modes::{Mode, Modes, modes};
pub use solving::moving::{MovingForce, Passage, passage};
pub use solving::peaks::{Peak, PeakKind, peaks};
pub use solving::solution::{Reaction, Solution, Station, solve};
