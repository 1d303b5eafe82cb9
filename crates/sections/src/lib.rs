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
//! fibre and bends the ends up, as wheels do to an axle, and a positive M_z
//! stretches the front (+X) fibre. In terms of the rotations of the section,
//! M_x = E I_x r_x' with u_z' = r_x, and M_z = E I_z r_z' with u_x' = -r_z.

mod edge_reach;
mod error;
mod material;
mod outline;
mod profile;
mod properties;
mod rectangular_tube;
mod round_bar;
mod round_tube;
mod rounded_rectangle;
pub mod shear_coefficient;
mod stress;
mod taper;

pub use edge_reach::EdgeReach;
pub use error::SectionError;
pub use material::Material;
pub use outline::Outline;
pub use profile::Profile;
pub use properties::SectionProperties;
pub use rectangular_tube::RectangularTube;
pub use round_bar::RoundBar;
pub use round_tube::RoundTube;
pub use stress::{StressPoint, von_mises};
pub use taper::taper;
