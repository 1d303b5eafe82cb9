//! Materials and cross-sections; does not know elements or files.
//!
//! # Axes
//! A section lies in the X-Z plane, with its centroid at the origin: the axle
//! runs along Y, X points forward, Z up (ISO 8855). `second_moment_x` is the
//! integral of z² and resists vertical bending (moment about X);
//! `second_moment_z` is the integral of x² and resists fore-aft bending.
//!
//! # Signs
//! Internal forces act on the face whose outward normal is +Y. With the normal
//! stress s (tension positive) they are
//!
//! ```text
//! N = ∫ s dA,   M_x = -∫ z s dA,   M_z = ∫ x s dA
//! s = N/A - M_x z/I_x + M_z x/I_z
//! ```
//!
//! which is r × s for r = (x, 0, z). So a positive M_x compresses the top (+Z)
//! fiber and bends the ends up, as wheels do to an axle, and a positive M_z
//! stretches the front (+X) fiber. In terms of the rotations of the section,
//! M_x = E I_x r_x' with u_z' = r_x, and M_z = E I_z r_z' with u_x' = -r_z.

mod composite;
mod error;
mod material;
mod outline;
mod profile;
mod resting;
pub mod shape;
mod standard_size;
mod torsion;

pub use composite::{Composite, Part, PeakStress};
pub use error::{SECTION_LENGTHS, SectionError};
pub use material::Material;
pub use outline::Outline;
pub use outline::area_properties::{AreaProperties, PrincipalAxes};
pub use outline::contour::{Contour, Corner};
pub use outline::overlap::{Overlap, overlap};
pub use outline::placement::Placement;
pub use outline::stress_field::{NeutralAxis, StressField};
pub use profile::Profile;
pub use profile::edge_reach::EdgeReach;
pub use profile::equivalent_stress::ShearForces;
pub use profile::properties::SectionProperties;
pub use profile::rectangular_tube::RectangularTube;
pub use profile::round_bar::RoundBar;
pub use profile::round_tube::RoundTube;
pub use profile::shear_coefficient;
pub use profile::stress::{StressPoint, von_mises};
pub use profile::taper::taper;
pub use shape::Shape;
pub use standard_size::StandardSize;
pub use torsion::saint_venant::SaintVenant;
pub use torsion::thin_walled::{ShearFlow, ThinWalled, ThinWalledTorsion, Wall};
