//! Finite elements, assembly and solution; does not know axles, files or units.
//!
//! Each room uses only those before it: `linalg`; the `node`, the `element` and the `model` of a whole structure; its
//! motion in time, `transient`; and every other `analysis` of it.
//!
//! # Axes, signs, freedoms
//! Global axes are right-handed: X, Y, Z. A node has six freedoms in the order
//! `ux uy uz rx ry rz`: displacements along, and right-handed rotations about, the global axes.
//! Displacements and rotations are small.
//!
//! A beam runs from its start to its end. Its local axis 1 points from start to end, axis 2 is the part of
//! the given `up` direction that is square to axis 1, and axis 3 = 1 × 2. Resultants act on the face whose
//! outward normal is +1: an axial force is tension when positive; `bending_3` is the moment about axis 3
//! that goes with the curvature d(r3)/ds, so a beam along +Y with `up` = +Z has axis 3 = +X and `bending_3` is
//! positive where the beam is hollow on its upper side.
//!
//! A shell's local axis 3 is its normal, axes 1 and 2 lie along it (1 along its edge from corner 0 to 1, where it is
//! square). Its moment `m₁₁` is positive where its upper face, toward the normal, is pulled along axis 1. Pressure is
//! positive along the normal.
//!
//! Everything is in consistent units; the rest of the workspace uses SI.
//!
//! # Example
//! A cantilever of length 2 along Y with a force of 1000 at its tip:
//! ```
//! use axlebow_fe::{Attachment, Beam, Flexibility, Freedom, Loads, Rigidity, StaticSystem, Structure};
//! let mut structure = Structure::new();
//! let root = structure.add_node("root", [0.0, 0.0, 0.0]);
//! let tip = structure.add_node("tip", [0.0, 2.0, 0.0]);
//! let rigidity = Rigidity { axial: 1e9, torsion: 1e6, bending_2: 2e6, bending_3: 2e6, shear_2: 1e8, shear_3: 1e8 };
//! structure.add_beam(Beam::between(root, tip, [0.0, 0.0, 1.0], Flexibility::uniform(2.0, &rigidity)))?;
//! structure.hold(root, &Freedom::ALL);
//! let mut loads = Loads::new(&structure, 1);
//! loads.add_force(0, &Attachment::at(tip), [0.0, 0.0, 1000.0]);
//! let mut system = StaticSystem::new();
//! system.prepare(&structure)?;
//! let displacements = system.solve(&structure, loads)?;
//! let uz = displacements.of(tip, 0)[2];
//! assert!((uz - (1000.0 * 8.0 / (3.0 * 2e6) + 1000.0 * 2.0 / 1e8)).abs() < 1e-12);
//! # Ok::<(), axlebow_fe::FeError>(())
//! ```

mod analysis;
mod element;
pub mod linalg;
mod model;
mod node;
mod transient;

pub use analysis::buckling::{Buckling, BucklingMode, buckling};
pub use analysis::harmonic::{Excitation, FrequencyResponse};
pub use analysis::modal::{Mode, Modes, natural_modes, natural_modes_by, natural_modes_up_to};
pub use analysis::motion_reader::MotionReader;
pub use analysis::statics::{Displacements, StaticSystem};
pub use element::beam::Beam;
pub use element::beam_forces::{BeamForces, EndForce};
pub use element::flexibility::{Flexibility, GAUSS, PlaneFlexibility, Rigidity};
pub use element::mass::{LumpedMass, RigidBody};
pub use element::shell::{DRILLING, Face, Wall, WallForces};
pub use element::spring::Spring;
pub use model::assembly::{assemble_mass, assemble_stiffness};
pub use model::direction::Direction;
pub use model::loads::Loads;
pub use model::state::State;
pub use model::structure::Structure;
pub use node::coupling::Attachment;
pub use node::error::FeError;
pub use node::freedom::Freedom;
pub use node::ids::{BeamId, NodeId, ShellId, SpringId};
pub use transient::{
    Counts, DynamicSystem, Ended, EnergyBalance, ForceLaw, LinearDamper, LocalLaw, Motion, Record,
    ReducedBasis, Sample, Scheme, Start, TimedLoad, Transient, TransientSettings,
};
