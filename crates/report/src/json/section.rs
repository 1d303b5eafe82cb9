//! The document of the sections along the axle, `axlebow/section/1`.

use axlebow_strength::WELDING_CAUTIONS;
use serde::Serialize;

use super::{AssumedEntry, ModelEntry, assumed, model, pretty};
use crate::{ModelCard, SectionCard, StiffenedCard};

#[derive(Serialize)]
struct SectionDocument {
    schema: &'static str,
    model: ModelEntry,
    sections: Vec<SectionEntry>,
    stiffened_sections: Vec<StiffenedEntry>,
    cautions: Vec<&'static str>,
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

/// A stretch with stiffeners; areas and second moments in terms of the axle's modulus.
#[derive(Serialize)]
struct StiffenedEntry {
    parts: Vec<String>,
    from_y_m: f64,
    to_y_m: f64,
    area_m2: f64,
    second_moment_x_m4: f64,
    second_moment_z_m4: f64,
    product_of_inertia_m4: f64,
    principal_angle_rad: f64,
    torsion_constant_m4: f64,
    centroid_x_m: f64,
    centroid_z_m: f64,
    shear_centre_x_m: Option<f64>,
    shear_centre_z_m: Option<f64>,
    mass_per_length_kg_m: f64,
    stress: Option<StressEntry>,
}

/// Stress where a stretch is bent most.
#[derive(Serialize)]
struct StressEntry {
    case: String,
    y_m: f64,
    points: Vec<StressPointEntry>,
}

/// Stress at a corner of a part, or where it is lowest or highest, tension positive.
#[derive(Serialize)]
struct StressPointEntry {
    part: String,
    x_m: f64,
    z_m: f64,
    stress_pa: f64,
}

/// An outside point at which fibre stress is looked at, from the centroid.
#[derive(Serialize)]
struct PointEntry {
    name: &'static str,
    x_m: f64,
    z_m: f64,
}

/// The sections as JSON text.
pub fn section_document(sections: &[SectionCard], stiffened: &[StiffenedCard], card: &ModelCard) -> String {
    pretty(&SectionDocument {
        schema: "axlebow/section/1",
        model: model(card),
        sections: sections.iter().map(entry).collect(),
        stiffened_sections: stiffened.iter().map(stiffened_entry).collect(),
        cautions: if stiffened.is_empty() { Vec::new() } else { WELDING_CAUTIONS.to_vec() },
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

fn stiffened_entry(card: &StiffenedCard) -> StiffenedEntry {
    let (stretch, section) = (&card.stretch, &card.stretch.section);
    let area = &section.area;
    StiffenedEntry {
        parts: section.composite.parts().iter().map(|part| part.name.clone()).collect(),
        from_y_m: stretch.to,
        to_y_m: stretch.from,
        area_m2: area.area,
        second_moment_x_m4: area.second_moment_x,
        second_moment_z_m4: area.second_moment_z,
        product_of_inertia_m4: area.product_of_inertia,
        principal_angle_rad: area.principal_axes().angle,
        torsion_constant_m4: section.torsion_constant,
        centroid_x_m: area.centroid[0],
        centroid_z_m: area.centroid[1],
        shear_centre_x_m: section.shear_centre.map(|[x, _]| x),
        shear_centre_z_m: section.shear_centre.map(|[_, z]| z),
        mass_per_length_kg_m: section.mass_per_length,
        stress: stress_entry(card),
    }
}

fn stress_entry(card: &StiffenedCard) -> Option<StressEntry> {
    let stress = card.stress.as_ref()?;
    let parts = card.stretch.section.composite.parts().iter().enumerate();
    let points = parts.flat_map(|(number, part)| {
        let places = card.corner_stresses(number).into_iter().flatten();
        places.map(|([x, z], value)| StressPointEntry {
            part: part.name.clone(),
            x_m: x,
            z_m: z,
            stress_pa: value,
        })
    });
    Some(StressEntry { case: stress.case.clone(), y_m: stress.y, points: points.collect() })
}
