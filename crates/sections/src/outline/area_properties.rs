//! Area, centroid and second moments of any section.

use crate::outline::area_moments::AreaMoments;
use crate::outline::edge::{Place, difference, rotated};
use crate::{Placement, StressField};

/// Area, centroid and second moments about the axes through the centroid; axes as in the [crate] documentation.
///
/// For parts of several materials these are the transformed ones, each part times its modular ratio.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AreaProperties {
    /// Area A (m²).
    pub area: f64,
    /// Centroid (x, z) (m).
    pub centroid: [f64; 2],
    /// I_x = ∫ z² dA about the centroid (m⁴), resists vertical bending.
    pub second_moment_x: f64,
    /// I_z = ∫ x² dA about the centroid (m⁴), resists fore-aft bending.
    pub second_moment_z: f64,
    /// I_xz = ∫ x z dA about the centroid (m⁴); 0 where X or Z is an axis of symmetry.
    pub product_of_inertia: f64,
}

/// The two directions about which a section bends without turning aside.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PrincipalAxes {
    /// Angle of the stiff axis from X, counter-clockwise in (x, z), above -π/2 to π/2 (rad).
    pub angle: f64,
    /// Second moment about the stiff axis (m⁴).
    pub major: f64,
    /// Second moment about the other one (m⁴).
    pub minor: f64,
}

impl AreaProperties {
    /// From integrals about a pole.
    pub(crate) fn from_moments(moments: &AreaMoments, pole: Place) -> Self {
        let (x, z) = (moments.first_x / moments.area, moments.first_z / moments.area);
        Self {
            area: moments.area,
            centroid: [pole[0] + x, pole[1] + z],
            second_moment_x: moments.second_x - z * moments.first_z,
            second_moment_z: moments.second_z - x * moments.first_x,
            product_of_inertia: moments.product - x * moments.first_z,
        }
    }

    /// Several areas as one, each times its weight, by the parallel axis theorem.
    pub fn weighted_sum(parts: &[(Self, f64)]) -> Self {
        let area: f64 = parts.iter().map(|(part, weight)| weight * part.area).sum();
        let mean = |axis: usize| {
            parts.iter().map(|(part, weight)| weight * part.area * part.centroid[axis]).sum::<f64>() / area
        };
        let centroid = [mean(0), mean(1)];
        let mut sum =
            Self { area, centroid, second_moment_x: 0.0, second_moment_z: 0.0, product_of_inertia: 0.0 };
        for (part, weight) in parts {
            let [x, z] = difference(part.centroid, centroid);
            sum.second_moment_x += weight * (part.second_moment_x + part.area * z * z);
            sum.second_moment_z += weight * (part.second_moment_z + part.area * x * x);
            sum.product_of_inertia += weight * (part.product_of_inertia + part.area * x * z);
        }
        sum
    }

    /// The same area moved and turned.
    pub fn placed(&self, placement: &Placement) -> Self {
        let mean = 0.5 * (self.second_moment_x + self.second_moment_z);
        let half = 0.5 * (self.second_moment_x - self.second_moment_z);
        // (I_x - I_z, -2 I_xz) is a vector that turns twice as fast as the section.
        let [half, product] = rotated([half, -self.product_of_inertia], 2.0 * placement.turn);
        Self {
            area: self.area,
            centroid: placement.of(self.centroid),
            second_moment_x: mean + half,
            second_moment_z: mean - half,
            product_of_inertia: -product,
        }
    }

    /// The principal axes.
    ///
    /// tan 2α = -2 I_xz / (I_x - I_z); a section without stiff direction, such as a tube, has angle 0.
    /// Validity: an angle is only as sharp as the two moments are apart.
    /// Source: Gere & Goodno, *Mechanics of Materials*, 8th ed. 2013, ch. 12.
    pub fn principal_axes(&self) -> PrincipalAxes {
        let mean = 0.5 * (self.second_moment_x + self.second_moment_z);
        let half = 0.5 * (self.second_moment_x - self.second_moment_z);
        let radius = half.hypot(self.product_of_inertia);
        let equal = radius <= 1e-12 * mean;
        let angle = if equal { 0.0 } else { 0.5 * (-self.product_of_inertia).atan2(half) };
        PrincipalAxes { angle, major: mean + radius, minor: mean - radius }
    }

    /// Polar second moment about the centroid, I_x + I_z (m⁴).
    pub fn polar_moment(&self) -> f64 {
        self.second_moment_x + self.second_moment_z
    }

    /// Least radius of gyration, √(I_minor / A) (m).
    pub fn least_radius_of_gyration(&self) -> f64 {
        (self.principal_axes().minor / self.area).sqrt()
    }

    /// The normal stress that forces on the section cause, about its centroid.
    ///
    /// s = N/A + a (x - x_c) + b (z - z_c) with a = (M_z I_x + M_x I_xz)/D, b = -(M_x I_z + M_z I_xz)/D and
    /// D = I_x I_z - I_xz²: bending of a section of any shape.
    ///
    /// - `axial`: N (N), tension positive, through the centroid
    /// - `moment_x`, `moment_z`: M_x, M_z (N m), signs as in the [crate] documentation
    ///
    /// Source: A. P. Boresi & R. J. Schmidt, *Advanced Mechanics of Materials*, 6th ed. 2003, ch. 7; from
    /// memory, derived again from N = ∫ s dA, M_x = -∫ z s dA, M_z = ∫ x s dA.
    pub fn stress_field(&self, axial: f64, moment_x: f64, moment_z: f64) -> StressField {
        let (i_x, i_z, i_xz) = (self.second_moment_x, self.second_moment_z, self.product_of_inertia);
        let determinant = i_x * i_z - i_xz * i_xz;
        StressField {
            centroid: self.centroid,
            mean: axial / self.area,
            gradient_x: (moment_z * i_x + moment_x * i_xz) / determinant,
            gradient_z: -(moment_x * i_z + moment_z * i_xz) / determinant,
        }
    }
}
