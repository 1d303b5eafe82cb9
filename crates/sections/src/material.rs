//! A linear elastic, isotropic material.

use crate::SectionError;

/// A linear elastic, isotropic material.
#[derive(Debug, Clone, PartialEq)]
pub struct Material {
    name: String,
    elastic_modulus: f64,
    poisson_ratio: f64,
    density: f64,
    loss_factor: f64,
    yield_strength: Option<f64>,
    ultimate_strength: Option<f64>,
    carbon_equivalent: Option<f64>,
    cold_cracking_equivalent: Option<f64>,
}

impl Material {
    /// A material that turns no energy into heat, without stated strengths and composition.
    ///
    /// - `name`: how messages call it
    /// - `elastic_modulus`: E (Pa), above 0
    /// - `poisson_ratio`: nu, 0 to 0.5
    /// - `density`: rho (kg/m³), above 0
    ///
    /// Errors: [`SectionError::MaterialProperty`] for a value out of range or not a number.
    pub fn new(
        name: impl Into<String>,
        elastic_modulus: f64,
        poisson_ratio: f64,
        density: f64,
    ) -> Result<Self, SectionError> {
        let material = Self {
            name: name.into(),
            elastic_modulus,
            poisson_ratio,
            density,
            loss_factor: 0.0,
            yield_strength: None,
            ultimate_strength: None,
            carbon_equivalent: None,
            cold_cracking_equivalent: None,
        };
        material.positive("elastic modulus", elastic_modulus, "Pa")?;
        material.positive("density", density, "kg/m³")?;
        if !(0.0..=0.5).contains(&poisson_ratio) {
            return Err(material.refusal("Poisson's ratio", poisson_ratio, "", "0 to 0.5"));
        }
        Ok(material)
    }

    /// The same material with a loss factor η: the energy that a cycle turns into heat over 2π times the greatest that is
    /// stored, from 0 to 1.
    ///
    /// Errors: [`SectionError::MaterialProperty`] for a value out of range or not a number.
    pub fn with_loss_factor(mut self, loss_factor: f64) -> Result<Self, SectionError> {
        if !(0.0..=1.0).contains(&loss_factor) {
            return Err(self.refusal("loss factor", loss_factor, "", "0 to 1"));
        }
        self.loss_factor = loss_factor;
        Ok(self)
    }

    /// The same material with a yield strength (Pa), above 0.
    ///
    /// Errors: [`SectionError::MaterialProperty`] for zero, a negative value or not a number.
    pub fn with_yield(mut self, yield_strength: f64) -> Result<Self, SectionError> {
        self.positive("yield strength", yield_strength, "Pa")?;
        self.yield_strength = Some(yield_strength);
        Ok(self)
    }

    /// The same material with an ultimate strength (Pa), above 0.
    ///
    /// Errors: [`SectionError::MaterialProperty`] for zero, a negative value or not a number.
    pub fn with_ultimate(mut self, ultimate_strength: f64) -> Result<Self, SectionError> {
        self.positive("ultimate strength", ultimate_strength, "Pa")?;
        self.ultimate_strength = Some(ultimate_strength);
        Ok(self)
    }

    /// The same material with a carbon equivalent (per cent), above 0.
    ///
    /// Errors: [`SectionError::MaterialProperty`] for zero, a negative value or not a number.
    pub fn with_carbon_equivalent(mut self, carbon_equivalent: f64) -> Result<Self, SectionError> {
        self.positive("carbon equivalent", carbon_equivalent, "%")?;
        self.carbon_equivalent = Some(carbon_equivalent);
        Ok(self)
    }

    /// The same material with a carbon equivalent of cold cracking, CET (per cent), above 0.
    ///
    /// Errors: [`SectionError::MaterialProperty`] for zero, a negative value or not a number.
    pub fn with_cold_cracking_equivalent(mut self, cet: f64) -> Result<Self, SectionError> {
        self.positive("carbon equivalent CET", cet, "%")?;
        self.cold_cracking_equivalent = Some(cet);
        Ok(self)
    }

    /// How messages call it.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Elastic modulus E (Pa).
    pub fn elastic_modulus(&self) -> f64 {
        self.elastic_modulus
    }

    /// Poisson's ratio nu.
    pub fn poisson_ratio(&self) -> f64 {
        self.poisson_ratio
    }

    /// Density rho (kg/m³).
    pub fn density(&self) -> f64 {
        self.density
    }

    /// Loss factor η.
    pub fn loss_factor(&self) -> f64 {
        self.loss_factor
    }

    /// Yield strength (Pa), where one is stated.
    pub fn yield_strength(&self) -> Option<f64> {
        self.yield_strength
    }

    /// Ultimate strength (Pa), where one is stated.
    pub fn ultimate_strength(&self) -> Option<f64> {
        self.ultimate_strength
    }

    /// Carbon equivalent (per cent), where the composition is known.
    pub fn carbon_equivalent(&self) -> Option<f64> {
        self.carbon_equivalent
    }

    /// Carbon equivalent of cold cracking, CET (per cent), where the composition is known.
    pub fn cold_cracking_equivalent(&self) -> Option<f64> {
        self.cold_cracking_equivalent
    }

    /// Shear modulus G = E / (2 (1 + nu)) (Pa).
    pub fn shear_modulus(&self) -> f64 {
        self.elastic_modulus / (2.0 * (1.0 + self.poisson_ratio))
    }

    fn positive(&self, thing: &'static str, value: f64, unit: &'static str) -> Result<(), SectionError> {
        if value.is_finite() && value > 0.0 {
            return Ok(());
        }
        Err(self.refusal(thing, value, unit, "a finite number above 0"))
    }

    fn refusal(
        &self,
        thing: &'static str,
        value: f64,
        unit: &'static str,
        accepted: &'static str,
    ) -> SectionError {
        SectionError::MaterialProperty { material: self.name.clone(), thing, value, unit, accepted }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shear_modulus_of_an_incompressible_material_is_a_third() {
        let rubber = Material::new("rubber", 3.0e6, 0.5, 1100.0).unwrap();
        assert_eq!(rubber.shear_modulus(), 1.0e6);
    }

    #[test]
    fn values_out_of_range_are_refused() {
        for (e, nu, rho) in [
            (0.0, 0.3, 7850.0),
            (f64::NAN, 0.3, 7850.0),
            (f64::INFINITY, 0.3, 7850.0),
            (200e9, -0.01, 7850.0),
            (200e9, 0.501, 7850.0),
            (200e9, f64::NAN, 7850.0),
            (200e9, 0.3, -1.0),
        ] {
            assert!(Material::new("steel", e, nu, rho).is_err(), "{e} {nu} {rho}");
        }
    }

    #[test]
    fn loss_factors_out_of_range_are_refused() {
        let steel = Material::new("steel", 200e9, 0.3, 7850.0).unwrap();
        assert_eq!(steel.loss_factor(), 0.0);
        assert_eq!(steel.clone().with_loss_factor(0.004).unwrap().loss_factor(), 0.004);
        for value in [-1e-9, 1.1, f64::NAN] {
            assert!(steel.clone().with_loss_factor(value).is_err(), "{value}");
        }
    }

    #[test]
    fn refusal_names_the_material_and_the_property() {
        let steel = Material::new("steel", 200e9, 0.3, 7850.0).unwrap();
        assert_eq!(
            steel.with_yield(-1.0).unwrap_err().to_string(),
            "yield strength of steel is -1 Pa; accepted is a finite number above 0"
        );
    }
}
