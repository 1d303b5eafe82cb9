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

mod area_moments;
mod area_properties;
mod composite;
mod contour;
mod edge;
mod edge_reach;
mod equivalent_stress;
mod error;
mod material;
mod meeting;
mod outline;
mod overlap;
mod placement;
mod profile;
mod properties;
mod rectangular_tube;
mod resting;
mod round_bar;
mod round_tube;
mod rounded_rectangle;
mod saint_venant;
mod scalar_system;
pub mod shape;
mod shear_center;
pub mod shear_coefficient;
mod standard_size;
mod stress;
mod stress_field;
mod taper;
mod thin_walled;
mod triangulation;

pub use area_properties::{AreaProperties, PrincipalAxes};
pub use composite::{Composite, Part, PeakStress};
pub use contour::{Contour, Corner};
pub use edge_reach::EdgeReach;
pub use equivalent_stress::ShearForces;
pub use error::SectionError;
pub use material::Material;
pub use outline::Outline;
pub use overlap::{Overlap, overlap};
pub use placement::Placement;
pub use profile::Profile;
pub use properties::SectionProperties;
pub use rectangular_tube::RectangularTube;
pub use round_bar::RoundBar;
pub use round_tube::RoundTube;
pub use saint_venant::SaintVenant;
pub use shape::Shape;
pub use standard_size::StandardSize;
pub use stress::{StressPoint, von_mises};
pub use stress_field::{NeutralAxis, StressField};
pub use taper::taper;
pub use thin_walled::{ShearFlow, ThinWalled, ThinWalledTorsion, Wall};
