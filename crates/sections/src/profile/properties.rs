//! What a beam needs to know of its section.

/// What a beam needs to know of its section; axes as in the [crate] documentation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SectionProperties {
    /// Area A (m²).
    pub area: f64,
    /// I_x = ∫ z² dA (m⁴), resists vertical bending.
    pub second_moment_x: f64,
    /// I_z = ∫ x² dA (m⁴), resists fore-aft bending.
    pub second_moment_z: f64,
    /// Saint-Venant torsion constant J (m⁴).
    pub torsion_constant: f64,
    /// Share of the area that carries a shear force along X, Cowper (1966).
    pub shear_coefficient_x: f64,
    /// Share of the area that carries a shear force along Z, Cowper (1966).
    pub shear_coefficient_z: f64,
    /// Torque over greatest shear stress, T / tau (m³).
    pub torsion_modulus: f64,
    /// Fully plastic moment about X over yield strength, Z_x (m³).
    pub plastic_modulus_x: f64,
    /// Outside size along X (m).
    pub width: f64,
    /// Outside size along Z (m).
    pub height: f64,
}

impl SectionProperties {
    /// Elastic section modulus about X, S_x = 2 I_x / height (m³).
    pub fn section_modulus_x(&self) -> f64 {
        2.0 * self.second_moment_x / self.height
    }

    /// Elastic section modulus about Z, S_z = 2 I_z / width (m³).
    pub fn section_modulus_z(&self) -> f64 {
        2.0 * self.second_moment_z / self.width
    }

    /// Radius of gyration about X, √(I_x / A) (m).
    pub fn radius_of_gyration_x(&self) -> f64 {
        (self.second_moment_x / self.area).sqrt()
    }

    /// Radius of gyration about Z, √(I_z / A) (m).
    pub fn radius_of_gyration_z(&self) -> f64 {
        (self.second_moment_z / self.area).sqrt()
    }

    /// Mass per length, rho A (kg/m), for a density (kg/m³).
    pub fn mass_per_length(&self, density: f64) -> f64 {
        density * self.area
    }
}
