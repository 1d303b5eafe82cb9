//! Where a shear force does not twist a section.

use crate::AreaProperties;

/// The shear center by E. Trefftz: warping about it neither bends nor stretches the section.
///
/// With ω the warping about the centroid for unit twist (in x, z from the centroid, mean 0) and
/// ω_s = ω - z_s x + x_s z, ∫ ω_s x dA = ∫ ω_s z dA = 0. It does not depend on Poisson's ratio.
///
/// - `area`: of the section
/// - `warping_x`, `warping_z`: ∫ ω x dA, ∫ ω z dA (m⁵)
///
/// Returns the shear center from the centroid (x_s, z_s) (m).
/// Source: E. Trefftz, "Über den Schubmittelpunkt in einem durch eine Einzellast gebogenen Balken", *ZAMM* 15
/// (1935) 220-225; from memory.
pub(crate) fn shear_center(area: &AreaProperties, warping_x: f64, warping_z: f64) -> [f64; 2] {
    let (i_x, i_z, i_xz) = (area.second_moment_x, area.second_moment_z, area.product_of_inertia);
    let determinant = i_x * i_z - i_xz * i_xz;
    [(i_xz * warping_x - i_z * warping_z) / determinant, (i_x * warping_x - i_xz * warping_z) / determinant]
}
