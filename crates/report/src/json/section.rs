//! The document of the sections along the axle, `axlebow/section/1`.

use serde::Serialize;

use super::{AssumedEntry, ModelEntry, assumed, model, pretty};
use crate::{ModelCard, SectionCard};

#[derive(Serialize)]
struct SectionDocument {
    schema: &'static str,
    model: ModelEntry,
    sections: Vec<SectionEntry>,
    assumed: Vec<AssumedEntry>,
}

#[derive(Serialize)]
struct SectionEntry {
    name: String,
    kind: &'static str,
    from_y_m: f64,
    to_y_m: f64,
    width_m: f64,
    height_m: f64,
    area_m2: f64,
    second_moment_x_m4: f64,
    second_moment_z_m4: f64,
    torsion_constant_m4: f64,
    section_modulus_x_m3: f64,
    section_modulus_z_m3: f64,
    plastic_modulus_x_m3: f64,
    torsion_modulus_m3: f64,
    shear_coefficient_x: f64,
    shear_coefficient_z: f64,
    mass_per_length_kg_m: f64,
    stress_points: Vec<PointEntry>,
}

/// An outside point at which fibre stress is looked at, from the centroid.
#[derive(Serialize)]
struct PointEntry {
    name: &'static str,
    x_m: f64,
    z_m: f64,
}

/// The sections as JSON text.
pub fn section_document(sections: &[SectionCard], card: &ModelCard) -> String {
    pretty(&SectionDocument {
        schema: "axlebow/section/1",
        model: model(card),
        sections: sections.iter().map(entry).collect(),
        assumed: assumed(card),
    })
}

fn entry(section: &SectionCard) -> SectionEntry {
    let p = &section.properties;
    let points = section.profile.stress_points();
    SectionEntry {
        name: section.name.clone(),
        kind: section.profile.kind(),
        from_y_m: section.reach[0],
        to_y_m: section.reach[1],
        width_m: p.width,
        height_m: p.height,
        area_m2: p.area,
        second_moment_x_m4: p.second_moment_x,
        second_moment_z_m4: p.second_moment_z,
        torsion_constant_m4: p.torsion_constant,
        section_modulus_x_m3: p.section_modulus_x(),
        section_modulus_z_m3: p.section_modulus_z(),
        plastic_modulus_x_m3: p.plastic_modulus_x,
        torsion_modulus_m3: p.torsion_modulus,
        shear_coefficient_x: p.shear_coefficient_x,
        shear_coefficient_z: p.shear_coefficient_z,
        mass_per_length_kg_m: section.mass_per_length,
        stress_points: points
            .iter()
            .map(|at| PointEntry { name: at.place(), x_m: at.x, z_m: at.z })
            .collect(),
    }
}
