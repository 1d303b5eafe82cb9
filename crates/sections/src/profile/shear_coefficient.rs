//! Shear coefficients of G. R. Cowper, "The shear coefficient in Timoshenko's
//! beam theory", *Journal of Applied Mechanics* 33 (1966) 335-340.
//!
//! The coefficient k makes G k A the shear stiffness of a Timoshenko beam.

/// Hollow circle, exact for any wall.
///
/// k = 6 (1 + nu) (1 + m²)² / ((7 + 6 nu) (1 + m²)² + (20 + 12 nu) m²)
///
/// - `bore_ratio`: m, inside over outside diameter, 0 (solid) to 1 (thin)
/// - `poisson_ratio`: nu
pub fn hollow_circle(bore_ratio: f64, poisson_ratio: f64) -> f64 {
    let (m2, nu) = (bore_ratio * bore_ratio, poisson_ratio);
    let square = (1.0 + m2) * (1.0 + m2);
    6.0 * (1.0 + nu) * square / ((7.0 + 6.0 * nu) * square + (20.0 + 12.0 * nu) * m2)
}

/// Thin-walled box with equal walls.
///
/// k = 10 (1 + nu) (1 + 3m)² / (12 + 72m + 150m² + 90m³
///     + nu (11 + 66m + 135m² + 90m³) + 10 n² ((3 + nu) m + 3m²))
///
/// With equal walls the ratio m of flange to web area is the ratio n of the
/// midline sides.
///
/// - `side_ratio`: n = m = b/h, the midline side across the shear force over
///   the midline side along it
/// - `poisson_ratio`: nu
pub fn thin_box(side_ratio: f64, poisson_ratio: f64) -> f64 {
    let (m, n, nu) = (side_ratio, side_ratio, poisson_ratio);
    let (m2, m3) = (m * m, m * m * m);
    let webs = 12.0 + 72.0 * m + 150.0 * m2 + 90.0 * m3;
    let contraction = 11.0 + 66.0 * m + 135.0 * m2 + 90.0 * m3;
    let flanges = 10.0 * n * n * ((3.0 + nu) * m + 3.0 * m2);
    10.0 * (1.0 + nu) * (1.0 + 3.0 * m).powi(2) / (webs + nu * contraction + flanges)
}
