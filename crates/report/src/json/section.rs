//! The document of the sections along the axle.

use axlebow_axle::Warning;
use axlebow_results::{Field, Own, Part, Record, Text, json, number, part, schema};
use axlebow_sections::StressPoint;
use axlebow_strength::WELDING_CAUTIONS;
use axlebow_units::Kind;

use super::frame::{Contents, Frame};
use crate::answer::section_answer;
use crate::{ModelCard, SectionCard, StiffenedCard};

const SECTION: Frame = Frame { tag: "axlebow/section/2", meaning: "Sections along an axle." };

/// The document of the sections.
///
/// - `warnings`: doubts about the load case whose stress the stiffened stretches have
pub fn section_document(
    sections: &[SectionCard],
    stiffened: &[StiffenedCard],
    warnings: &[Warning],
    card: &ModelCard,
) -> String {
    let results = Sections { sections: sections.to_vec(), stiffened: stiffened.to_vec() };
    let cautions = if stiffened.is_empty() { Vec::new() } else { WELDING_CAUTIONS.to_vec() };
    SECTION.text(Contents {
        card: Some(card),
        answer: section_answer(sections, stiffened, card),
        results: vec![json(&results)],
        warnings,
        cautions,
    })
}

/// The JSON Schema of the document of the sections.
pub fn section_schema() -> String {
    SECTION.schema::<Warning>(&[schema::<Sections>()])
}

struct Sections {
    sections: Vec<SectionCard>,
    stiffened: Vec<StiffenedCard>,
}

impl Record for Sections {
    const FIELDS: &'static [Field<Self>] = &[
        part(
            "sections",
            "Stretches of the bare axle with one section, from the center outward.",
            &Part(|own: &Self| &own.sections),
        ),
        part("stiffened-sections", "Stretches with stiffeners.", &Part(|own: &Self| &own.stiffened)),
    ];
}

impl Record for SectionCard {
    const FIELDS: &'static [Field<Self>] = &[
        part("name", "Its name.", &Text(|own: &Self| &own.name)),
        part("kind", "What kind of section it is.", &Text(|own: &Self| own.profile.kind())),
        number("from-y", Kind::Length, "Left end.", &Own(|own: &Self| own.reach[0])),
        number("to-y", Kind::Length, "Right end.", &Own(|own: &Self| own.reach[1])),
        number("width", Kind::Length, "Width.", &Own(|own: &Self| own.properties.width)),
        number("height", Kind::Length, "Height.", &Own(|own: &Self| own.properties.height)),
        number("area", Kind::Area, "Area.", &Own(|own: &Self| own.properties.area)),
        number(
            "second-moment-x",
            Kind::SecondMoment,
            "Second moment of area about the horizontal axis.",
            &Own(|own: &Self| own.properties.second_moment_x),
        ),
        number(
            "second-moment-z",
            Kind::SecondMoment,
            "Second moment of area about the vertical axis.",
            &Own(|own: &Self| own.properties.second_moment_z),
        ),
        number(
            "torsion-constant",
            Kind::SecondMoment,
            "Torsion constant.",
            &Own(|own: &Self| own.properties.torsion_constant),
        ),
        number(
            "section-modulus-x",
            Kind::SectionModulus,
            "Elastic section modulus about the horizontal axis.",
            &Own(|own: &Self| own.properties.section_modulus_x()),
        ),
        number(
            "section-modulus-z",
            Kind::SectionModulus,
            "Elastic section modulus about the vertical axis.",
            &Own(|own: &Self| own.properties.section_modulus_z()),
        ),
        number(
            "plastic-modulus-x",
            Kind::SectionModulus,
            "Plastic section modulus about the horizontal axis.",
            &Own(|own: &Self| own.properties.plastic_modulus_x),
        ),
        number(
            "torsion-modulus",
            Kind::SectionModulus,
            "Torque over the largest shear stress.",
            &Own(|own: &Self| own.properties.torsion_modulus),
        ),
        part(
            "shear-coefficient-x",
            "Shear coefficient for a fore-aft force.",
            &Own(|own: &Self| own.properties.shear_coefficient_x),
        ),
        part(
            "shear-coefficient-z",
            "Shear coefficient for a vertical force.",
            &Own(|own: &Self| own.properties.shear_coefficient_z),
        ),
        number(
            "mass-per-length",
            Kind::MassPerLength,
            "Mass per length.",
            &Own(|own: &Self| own.mass_per_length),
        ),
        part(
            "stress-points",
            "Points at which stress is evaluated.",
            &Own(|own: &Self| own.profile.stress_points().into_iter().map(Point).collect::<Vec<_>>()),
        ),
    ];
}

/// An outside point at which fiber stress is evaluated, from the centroid.
struct Point(StressPoint);

impl Record for Point {
    const FIELDS: &'static [Field<Self>] = &[
        part("name", "Its name.", &Text(|at: &Self| at.0.place())),
        number("x", Kind::Length, "Forward of the centroid.", &Own(|at: &Self| at.0.x)),
        number("z", Kind::Length, "Above the centroid.", &Own(|at: &Self| at.0.z)),
    ];
}

/// Areas and second moments in terms of the axle's modulus.
impl Record for StiffenedCard {
    const FIELDS: &'static [Field<Self>] = &[
        part("parts", "Names of what is welded together.", &Own(part_names)),
        number("from-y", Kind::Length, "Left end.", &Own(|own: &Self| own.stretch.to)),
        number("to-y", Kind::Length, "Right end.", &Own(|own: &Self| own.stretch.from)),
        number("area", Kind::Area, "Area.", &Own(|own: &Self| own.stretch.section.area.area)),
        number(
            "second-moment-x",
            Kind::SecondMoment,
            "Second moment of area about the horizontal axis through the centroid.",
            &Own(|own: &Self| own.stretch.section.area.second_moment_x),
        ),
        number(
            "second-moment-z",
            Kind::SecondMoment,
            "Second moment of area about the vertical axis through the centroid.",
            &Own(|own: &Self| own.stretch.section.area.second_moment_z),
        ),
        number(
            "product-of-inertia",
            Kind::SecondMoment,
            "Product of inertia.",
            &Own(|own: &Self| own.stretch.section.area.product_of_inertia),
        ),
        number(
            "principal-angle",
            Kind::Angle,
            "Angle of the principal axes.",
            &Own(|own: &Self| own.stretch.section.area.principal_axes().angle),
        ),
        number(
            "torsion-constant",
            Kind::SecondMoment,
            "Torsion constant.",
            &Own(|own: &Self| own.stretch.section.torsion_constant),
        ),
        number(
            "centroid-x",
            Kind::Length,
            "Centroid, forward of the axle line.",
            &Own(|own: &Self| own.stretch.section.area.centroid[0]),
        ),
        number(
            "centroid-z",
            Kind::Length,
            "Centroid, above the axle line.",
            &Own(|own: &Self| own.stretch.section.area.centroid[1]),
        ),
        number(
            "shear-center-x",
            Kind::Length,
            "Shear center, forward of the axle line; null where it is not known.",
            &Own(|own: &Self| own.stretch.section.shear_center.map(|[x, _]| x)),
        ),
        number(
            "shear-center-z",
            Kind::Length,
            "Shear center, above the axle line; null where it is not known.",
            &Own(|own: &Self| own.stretch.section.shear_center.map(|[_, z]| z)),
        ),
        number(
            "mass-per-length",
            Kind::MassPerLength,
            "Mass per length.",
            &Own(|own: &Self| own.stretch.section.mass_per_length),
        ),
        part(
            "stress",
            "Stress under the load case that was asked for; null without one.",
            &Own(StressInCase::of),
        ),
    ];
}

fn part_names(card: &StiffenedCard) -> Vec<String> {
    card.stretch.section.composite.parts().iter().map(|part| part.name.clone()).collect()
}

/// Stress where a stretch is bent most.
struct StressInCase {
    case: String,
    y: f64,
    points: Vec<StressAt>,
}

/// Normal stress at a corner of a part, or where it is lowest or highest, tension positive.
struct StressAt {
    part: String,
    place: [f64; 2],
    stress: f64,
}

impl StressInCase {
    fn of(card: &StiffenedCard) -> Option<StressInCase> {
        let stress = card.stress.as_ref()?;
        let parts = card.stretch.section.composite.parts().iter().enumerate();
        let points = parts.flat_map(|(number, part)| {
            let places = card.corner_stresses(number).into_iter().flatten();
            places.map(|(place, stress)| StressAt { part: part.name.clone(), place, stress })
        });
        Some(StressInCase { case: stress.case.clone(), y: stress.own.y, points: points.collect() })
    }
}

impl Record for StressInCase {
    const FIELDS: &'static [Field<Self>] = &[
        part("case", "Name of the load case.", &Text(|own: &Self| &own.case)),
        number("y", Kind::Length, "Position, left positive.", &Own(|own: &Self| own.y)),
        part("points", "Corners, and where stress is lowest and highest.", &Part(|own: &Self| &own.points)),
    ];
}

impl Record for StressAt {
    const FIELDS: &'static [Field<Self>] = &[
        part("part", "Name of the part.", &Text(|at: &Self| &at.part)),
        number("x", Kind::Length, "Forward of the axle line.", &Own(|at: &Self| at.place[0])),
        number("z", Kind::Length, "Above the axle line.", &Own(|at: &Self| at.place[1])),
        number("stress", Kind::Stress, "Normal stress.", &Own(|at: &Self| at.stress)),
    ];
}
