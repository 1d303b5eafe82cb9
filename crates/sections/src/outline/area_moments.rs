//! Integrals over an area about a pole.

use crate::outline::edge::Place;

/// Area and its first and second moments about a pole (m², m³, m⁴).
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct AreaMoments {
    pub area: f64,
    /// ∫ x dA.
    pub first_x: f64,
    /// ∫ z dA.
    pub first_z: f64,
    /// ∫ z² dA.
    pub second_x: f64,
    /// ∫ x² dA.
    pub second_z: f64,
    /// ∫ x z dA.
    pub product: f64,
}

impl AreaMoments {
    /// Adds the sector that a small step of the boundary sweeps from the pole: `swept` is x dz - z dx.
    pub fn add_sector(&mut self, [x, z]: Place, swept: f64) {
        self.area += swept / 2.0;
        self.first_x += x * swept / 3.0;
        self.first_z += z * swept / 3.0;
        self.second_x += z * z * swept / 4.0;
        self.second_z += x * x * swept / 4.0;
        self.product += x * z * swept / 4.0;
    }

    /// A small area at a place from the pole.
    pub fn of_point([x, z]: Place, area: f64) -> Self {
        Self {
            area,
            first_x: x * area,
            first_z: z * area,
            second_x: z * z * area,
            second_z: x * x * area,
            product: x * z * area,
        }
    }

    /// The sum of two areas about the same pole.
    pub fn plus(&self, other: &Self) -> Self {
        Self {
            area: self.area + other.area,
            first_x: self.first_x + other.first_x,
            first_z: self.first_z + other.first_z,
            second_x: self.second_x + other.second_x,
            second_z: self.second_z + other.second_z,
            product: self.product + other.product,
        }
    }
}
