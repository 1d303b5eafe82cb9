//! Parts of one or several materials that bend as one section.

use crate::{AreaProperties, Material, Outline, SectionError, StressField, overlap};

/// Overlap of two parts that counts as touching, as a share of the smaller one's area.
const TOUCHING: f64 = 1e-6;

/// A part of a composite.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// How messages call it.
    pub name: String,
    /// Its edges, where it lies in the section.
    pub outline: Outline,
    /// Its material.
    pub material: Material,
}

/// Parts of one or several materials that bend as one section: plane stays plane across all of them.
#[derive(Debug, Clone, PartialEq)]
pub struct Composite {
    parts: Vec<Part>,
    areas: Vec<AreaProperties>,
}

/// The normal stress of greatest magnitude.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PeakStress {
    /// Which part it acts in, by its place in the list.
    pub part: usize,
    /// Where, (x, z) (m).
    pub place: [f64; 2],
    /// Its value (Pa, tension positive).
    pub value: f64,
}

impl Composite {
    /// A composite of parts that touch or stay clear of each other; the first one's material is the reference.
    ///
    /// Parts that overlap by no more than a millionth of the smaller one's area count as touching.
    ///
    /// Errors: [`SectionError::NoParts`], [`SectionError::PartsOverlap`].
    pub fn new(parts: Vec<Part>) -> Result<Self, SectionError> {
        if parts.is_empty() {
            return Err(SectionError::NoParts);
        }
        let areas: Vec<AreaProperties> = parts.iter().map(|part| part.outline.area_properties()).collect();
        for second in 1..parts.len() {
            for first in 0..second {
                let shared = overlap(&parts[first].outline, &parts[second].outline);
                if shared.area > TOUCHING * areas[first].area.min(areas[second].area) {
                    return Err(SectionError::PartsOverlap {
                        first: parts[first].name.clone(),
                        second: parts[second].name.clone(),
                        area: shared.area,
                        place: shared.centroid,
                    });
                }
            }
        }
        Ok(Self { parts, areas })
    }

    /// The parts, the reference first.
    pub fn parts(&self) -> &[Part] {
        &self.parts
    }

    /// Modular ratio n = E / E_reference of a part, by its place in the list.
    pub fn modular_ratio(&self, part: usize) -> f64 {
        self.parts[part].material.elastic_modulus() / self.parts[0].material.elastic_modulus()
    }

    /// Properties of the transformed section, in which each part counts n times.
    ///
    /// E_reference times a second moment is the bending stiffness.
    /// Source: Gere & Goodno, *Mechanics of Materials*, 8th ed. 2013, ch. 6 (transformed section).
    pub fn area_properties(&self) -> AreaProperties {
        let weights = (0..self.parts.len()).map(|part| (self.areas[part], self.modular_ratio(part)));
        AreaProperties::weighted_sum(&weights.collect::<Vec<_>>())
    }

    /// The same parts, one of them of another material, by its place in the list.
    pub fn with_material(mut self, part: usize, material: Material) -> Self {
        self.parts[part].material = material;
        self
    }

    /// Mass per length of each part (kg/m).
    pub fn masses_per_length(&self) -> impl Iterator<Item = f64> + '_ {
        self.parts.iter().zip(&self.areas).map(|(part, area)| part.material.density() * area.area)
    }

    /// Mass per length (kg/m).
    pub fn mass_per_length(&self) -> f64 {
        self.masses_per_length().sum()
    }

    /// Normal stress in a part, n times that of the transformed section.
    ///
    /// - `part`: its place in the list
    /// - `field`: of the transformed section, [`AreaProperties::stress_field`] of [`Composite::area_properties`]
    pub fn stress_in(&self, part: usize, field: &StressField) -> StressField {
        field.times(self.modular_ratio(part))
    }

    /// The normal stress of greatest magnitude in any part, arcs searched too.
    ///
    /// - `field`: of the transformed section
    pub fn peak_stress(&self, field: &StressField) -> PeakStress {
        let ends = [1.0, -1.0].map(|side| [side * field.gradient_x, side * field.gradient_z]);
        let mut peak = PeakStress { part: 0, place: field.centroid, value: 0.0 };
        for (part, Part { outline, .. }) in self.parts.iter().enumerate() {
            for place in ends.map(|direction| outline.farthest_place(direction)) {
                let value = self.stress_in(part, field).at(place);
                if value.abs() > peak.value.abs() {
                    peak = PeakStress { part, place, value };
                }
            }
        }
        peak
    }
}
