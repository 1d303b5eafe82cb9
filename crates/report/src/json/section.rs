//! The document of the sections along the axle, `axlebow/section/1`.

use axlebow_axle::Warning;
use axlebow_strength::WELDING_CAUTIONS;
use schemars::JsonSchema;
use serde::Serialize;

use super::{AssumedEntry, ModelEntry, WarningEntry, assumed, model, pretty, schema_of};
use crate::{ModelCard, SectionCard, StiffenedCard};

/// Name and version of the document.
const SECTION_SCHEMA: &str = "axlebow/section/1";

/// Sections along an axle.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
struct SectionDocument {
    /// `axlebow/section/1`.
    schema: &'static str,
    /// The model that was run.
    model: ModelEntry,
    /// Stretches of the bare axle with one section, from the center outward.
    sections: Vec<SectionEntry>,
    /// Stretches with stiffeners.
    stiffened_sections: Vec<StiffenedEntry>,
    /// Doubts about the load case that was asked for.
    warnings: Vec<WarningEntry>,
    /// What must be said before anybody welds; empty without stiffeners.
    cautions: Vec<&'static str>,
    /// Defaults that were used.
    assumed: Vec<AssumedEntry>,
}

/// A stretch of one section.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
struct SectionEntry {
    /// Its name.
    name: String,
    /// What kind of section it is.
    kind: &'static str,
    /// Left end.
    from_y_m: f64,
    /// Right end.
    to_y_m: f64,
    /// Width.
    width_m: f64,
    /// Height.
    height_m: f64,
    /// Area.
    area_m2: f64,
    /// Second moment of area about the horizontal axis.
    second_moment_x_m4: f64,
    /// Second moment of area about the vertical axis.
    second_moment_z_m4: f64,
    /// Torsion constant.
    torsion_constant_m4: f64,
    /// Elastic section modulus about the horizontal axis.
    section_modulus_x_m3: f64,
    /// Elastic section modulus about the vertical axis.
    section_modulus_z_m3: f64,
    /// Plastic section modulus about the horizontal axis.
    plastic_modulus_x_m3: f64,
    /// Torque over the largest shear stress.
    torsion_modulus_m3: f64,
    /// Shear coefficient for a fore-aft force.
    shear_coefficient_x: f64,
    /// Shear coefficient for a vertical force.
    shear_coefficient_z: f64,
    /// Mass per length.
    mass_per_length_kg_m: f64,
    /// Points at which stress is looked at.
    stress_points: Vec<PointEntry>,
}

/// A stretch with stiffeners; areas and second moments in terms of the axle's modulus.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
struct StiffenedEntry {
    /// Names of what is welded together.
    parts: Vec<String>,
    /// Left end.
    from_y_m: f64,
    /// Right end.
    to_y_m: f64,
    /// Area.
    area_m2: f64,
    /// Second moment of area about the horizontal axis through the centroid.
    second_moment_x_m4: f64,
    /// Second moment of area about the vertical axis through the centroid.
    second_moment_z_m4: f64,
    /// Product of inertia.
    product_of_inertia_m4: f64,
    /// Angle of the principal axes.
    principal_angle_rad: f64,
    /// Torsion constant.
    torsion_constant_m4: f64,
    /// Centroid, forward of the axle line.
    centroid_x_m: f64,
    /// Centroid, above the axle line.
    centroid_z_m: f64,
    /// Shear center, forward of the axle line; null where it is not known.
    shear_center_x_m: Option<f64>,
    /// Shear center, above the axle line; null where it is not known.
    shear_center_z_m: Option<f64>,
    /// Mass per length.
    mass_per_length_kg_m: f64,
    /// Stress under the load case that was asked for; null without one.
    stress: Option<StressEntry>,
}

/// Stress where a stretch is bent most.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
struct StressEntry {
    /// Name of the load case.
    case: String,
    /// Where along the axle.
    y_m: f64,
    /// Corners, and where stress is lowest and highest.
    points: Vec<StressPointEntry>,
}

/// Stress at a corner of a part, or where it is lowest or highest, tension positive.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
struct StressPointEntry {
    /// Name of the part.
    part: String,
    /// Forward of the axle line.
    x_m: f64,
    /// Above the axle line.
    z_m: f64,
    /// Normal stress.
    stress_pa: f64,
}

/// An outside point at which fiber stress is looked at, from the centroid.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
struct PointEntry {
    /// Its name.
    name: &'static str,
    /// Forward of the centroid.
    x_m: f64,
    /// Above the centroid.
    z_m: f64,
}

/// The sections as JSON text.
///
/// - `warnings`: doubts about the load case whose stress the stiffened stretches have
pub fn section_document(
    sections: &[SectionCard],
    stiffened: &[StiffenedCard],
    warnings: &[Warning],
    card: &ModelCard,
) -> String {
    pretty(&SectionDocument {
        schema: SECTION_SCHEMA,
        model: model(card),
        sections: sections.iter().map(entry).collect(),
        stiffened_sections: stiffened.iter().map(stiffened_entry).collect(),
        warnings: warnings.iter().map(WarningEntry::from).collect(),
        cautions: if stiffened.is_empty() { Vec::new() } else { WELDING_CAUTIONS.to_vec() },
        assumed: assumed(card),
    })
}

/// The JSON Schema (2020-12) of the document of sections.
pub fn section_schema() -> String {
    schema_of::<SectionDocument>(SECTION_SCHEMA)
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
        shear_center_x_m: section.shear_center.map(|[x, _]| x),
        shear_center_z_m: section.shear_center.map(|[_, z]| z),
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
    Some(StressEntry { case: stress.case.clone(), y_m: stress.own.y, points: points.collect() })
}
