//! Cross-sections.

pub(crate) mod angles;
pub(crate) mod shear_centers;
pub(crate) mod shear_coefficients;
pub(crate) mod solid_torsion;
pub(crate) mod standard_tubes;
pub(crate) mod torsion;
