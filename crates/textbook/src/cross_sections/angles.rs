//! Angles with sharp corners, and sections of any shape by their edges.

use axlebow_sections::shape::{Angle, Flat};
use axlebow_sections::{AreaProperties, Composite, Material, Part, Placement};

use crate::case::{Case, Compute, Provenance, Tolerance};
use crate::text;

const SHARP: &str = "AISC Steel Construction Manual, 15th ed. 2017, Table 1-7 (angles), its sizes with sharp corners; \
     recomputed apart from our code";
const AISC: &str = "AISC Steel Construction Manual, 15th ed. 2017, Table 1-7 (angles); value from memory";
const AISC_AREA: &str =
    "AISC Steel Construction Manual, 15th ed. 2017, Table 1-7 (angles), area; confirmed in a second source";
const FILLET: &str = "the table's fillet and rounded toes, left out here, move area and stiffness by up to 1 %, the \
     weak axis by up to 2 %";
const TRANSFORMED: &str = "J. M. Gere & B. J. Goodno, Mechanics of Materials, 8th ed. 2013, ch. 6 example 6-1 \
     (wood 4 × 6 in on a steel plate 4 × 0.5 in, modular ratio 20, 60 kip·in); from memory, recomputed";

/// Quantity, formula and unit of a property.
type Property = [&'static str; 3];

const AREA: Property = ["area", "A = t (2 a − t)", "in²"];
const CENTROID: Property = ["centroid from the heel", "c = (a² + (a − t) t)/(2 (2 a − t))", "in"];
const SECOND_MOMENT: Property = ["second moment", "I = (t a³ + (a − t) t³)/3 − A c²", "in⁴"];
const SECTION_MODULUS: Property = ["section modulus", "S = I/(a − c)", "in³"];
const LEAST_RADIUS: Property =
    ["least radius of gyration", "r = √(I_min/A), I_min = I − |∫ (x − c)(z − c) dA|", "in"];
const LEAST_SECOND_MOMENT: Property = ["least second moment", "I_min = I − |∫ (x − c)(z − c) dA|", "in⁴"];

const TABLE: &str = "none: value of the table; the computed section has sharp corners";
const THREE: &str = "a = 3 in, t = 0.375 in";
const FOUR: &str = "a = 4 in, t = 0.5 in";
const WOOD_ON_STEEL: &str = "wood 4 in by 6 in, E = 1.5e6 psi, on steel 4 in by 0.5 in, E = 30e6 psi; n = E/1.5e6 psi, y from the top, \
     M = 60000 lbf·in";

/// The cases.
pub(crate) const CASES: &[Case] = &[
    sharp("area_matches_aisc_table_1_7_l3x3x3_8_sharp", AREA, THREE, 2.109_38, || Ok(three()?.area)),
    sharp("centroid_matches_aisc_table_1_7_l3x3x3_8_sharp", CENTROID, THREE, 0.887_50, || {
        Ok(three()?.centroid[1])
    }),
    sharp("second_moment_matches_aisc_table_1_7_l3x3x3_8_sharp", SECOND_MOMENT, THREE, 1.759_68, || {
        Ok(three()?.second_moment_x)
    }),
    sharp("section_modulus_matches_aisc_table_1_7_l3x3x3_8_sharp", SECTION_MODULUS, THREE, 0.832_98, || {
        three().map(|area| area.second_moment_x / (3.0 - area.centroid[1]))
    }),
    sharp("least_radius_matches_aisc_table_1_7_l3x3x3_8_sharp", LEAST_RADIUS, THREE, 0.586_70, || {
        Ok(three()?.least_radius_of_gyration())
    }),
    sharp(
        "least_second_moment_matches_aisc_table_1_7_l3x3x3_8_sharp",
        LEAST_SECOND_MOMENT,
        THREE,
        0.726_09,
        || Ok(three()?.principal_axes().minor),
    ),
    sharp("area_matches_aisc_table_1_7_l4x4x1_2_sharp", AREA, FOUR, 3.75, || Ok(four()?.area)),
    sharp("centroid_matches_aisc_table_1_7_l4x4x1_2_sharp", CENTROID, FOUR, 1.183_33, || {
        Ok(four()?.centroid[1])
    }),
    sharp("second_moment_matches_aisc_table_1_7_l4x4x1_2_sharp", SECOND_MOMENT, FOUR, 5.561_46, || {
        Ok(four()?.second_moment_x)
    }),
    sharp("section_modulus_matches_aisc_table_1_7_l4x4x1_2_sharp", SECTION_MODULUS, FOUR, 1.974_48, || {
        four().map(|area| area.second_moment_x / (4.0 - area.centroid[1]))
    }),
    sharp("least_radius_matches_aisc_table_1_7_l4x4x1_2_sharp", LEAST_RADIUS, FOUR, 0.782_27, || {
        Ok(four()?.least_radius_of_gyration())
    }),
    sharp(
        "least_second_moment_matches_aisc_table_1_7_l4x4x1_2_sharp",
        LEAST_SECOND_MOMENT,
        FOUR,
        2.294_79,
        || Ok(four()?.principal_axes().minor),
    ),
    rolled("area_matches_aisc_table_1_7_l3x3x3_8", AREA, THREE, (2.11, 0.01), || Ok(three()?.area))
        .sourced(AISC_AREA)
        .with_provenance(Provenance::Printed),
    rolled("second_moment_matches_aisc_table_1_7_l3x3x3_8", SECOND_MOMENT, THREE, (1.75, 0.015), || {
        Ok(three()?.second_moment_x)
    }),
    rolled("least_radius_matches_aisc_table_1_7_l3x3x3_8", LEAST_RADIUS, THREE, (0.581, 0.015), || {
        Ok(three()?.least_radius_of_gyration())
    }),
    rolled("area_matches_aisc_table_1_7_l4x4x1_2", AREA, FOUR, (3.75, 0.01), || Ok(four()?.area))
        .sourced(AISC_AREA)
        .with_provenance(Provenance::Printed),
    rolled("second_moment_matches_aisc_table_1_7_l4x4x1_2", SECOND_MOMENT, FOUR, (5.52, 0.015), || {
        Ok(four()?.second_moment_x)
    }),
    rolled("least_radius_matches_aisc_table_1_7_l4x4x1_2", LEAST_RADIUS, FOUR, (0.776, 0.015), || {
        Ok(four()?.least_radius_of_gyration())
    }),
    transformed(
        "neutral_axis_matches_gere_goodno_chapter_6_wood_on_steel",
        ["neutral axis from the top", "ȳ = Σ E y A/Σ E A", "in"],
        5.031,
        || Ok(6.5 - wood_on_steel()?.area_properties().centroid[1]),
    )
    .rounded_to(1e-3),
    transformed(
        "second_moment_matches_gere_goodno_chapter_6_wood_on_steel",
        ["transformed second moment", "I = Σ n (b h³/12 + A (y − ȳ)²)", "in⁴"],
        231.3,
        || Ok(wood_on_steel()?.area_properties().second_moment_x),
    )
    .rounded_to(0.1),
    transformed(
        "wood_stress_matches_gere_goodno_chapter_6_wood_on_steel",
        ["stress at the top of the wood", "σ = −M ȳ/I", "psi"],
        -1310.0,
        || stress(0, [0.0, 6.5]),
    )
    .rounded_to(10.0),
    transformed(
        "steel_stress_matches_gere_goodno_chapter_6_wood_on_steel",
        ["stress at the bottom of the steel", "σ = n M (6.5 in − ȳ)/I", "psi"],
        7620.0,
        || stress(1, [0.0, 0.0]),
    )
    .rounded_to(10.0),
];

const fn sharp(
    id: &'static str,
    property: Property,
    inputs: &'static str,
    reference: f64,
    computed: Compute,
) -> Case {
    let [quantity, formula, unit] = property;
    let tolerance = Tolerance::Absolute(0.5e-5);
    Case {
        id,
        topic: "angle",
        quantity,
        formula,
        inputs,
        unit,
        source: SHARP,
        provenance: Provenance::ClosedForm,
        reference,
        tolerance,
        computed,
        difference: None,
    }
}

const fn rolled(
    id: &'static str,
    property: Property,
    inputs: &'static str,
    (reference, share): (f64, f64),
    computed: Compute,
) -> Case {
    let case =
        Case { topic: "angle as rolled", formula: TABLE, ..sharp(id, property, inputs, reference, computed) };
    case.sourced(AISC).with_provenance(Provenance::Recalled).within(share, FILLET)
}

const fn transformed(id: &'static str, property: Property, reference: f64, computed: Compute) -> Case {
    let case = sharp(id, property, WOOD_ON_STEEL, reference, computed);
    Case { topic: "section of two materials", ..case.sourced(TRANSFORMED) }
}

fn three() -> Result<AreaProperties, String> {
    angle(3.0, 0.375)
}

fn four() -> Result<AreaProperties, String> {
    angle(4.0, 0.5)
}

fn angle(leg: f64, thickness: f64) -> Result<AreaProperties, String> {
    let angle = Angle { height: leg, width: leg, thickness, root_radius: 0.0, toe_radius: 0.0 };
    Ok(angle.outline().map_err(text)?.area_properties())
}

/// A wood beam 4 in wide and 6 in high on a steel plate 4 in wide and 0.5 in thick (in, psi).
fn wood_on_steel() -> Result<Composite, String> {
    let part = |name: &str, modulus: f64, thickness: f64, level: f64| {
        let outline = Flat { width: 4.0, thickness }.outline().map_err(text)?;
        let outline = outline.placed(&Placement { turn: 0.0, x: 0.0, z: level });
        let material = Material::new(name, modulus, 0.3, 1.0).map_err(text)?;
        Ok::<_, String>(Part { name: name.to_owned(), outline, material })
    };
    let parts = vec![part("wood", 1.5e6, 6.0, 3.5)?, part("steel", 30e6, 0.5, 0.25)?];
    Composite::new(parts).map_err(text)
}

/// Stress under a moment of 60 kip·in that compresses the top.
fn stress(part: usize, place: [f64; 2]) -> Result<f64, String> {
    let composite = wood_on_steel()?;
    let field = composite.area_properties().stress_field(0.0, 60e3, 0.0);
    Ok(composite.stress_in(part, &field).at(place))
}
