//! Angles with sharp corners, and sections of any shape by their edges.

use axlebow_sections::shape::{Angle, Flat};
use axlebow_sections::{AreaProperties, Composite, Material, Part, Placement};

use crate::case::{Case, Ours, Tolerance};
use crate::text;

const SHARP: &str = "AISC Steel Construction Manual, 15th ed. 2017, Table 1-7 (angles), its sizes with sharp corners; \
     recomputed apart from our code";
const AISC: &str = "AISC Steel Construction Manual, 15th ed. 2017, Table 1-7 (angles); area confirmed in a second \
     source, the rest from memory";
const FILLET: &str = "the table's fillet and rounded toes, left out here, move area and stiffness by up to 1 %, the \
     weak axis by up to 2 %";
const TRANSFORMED: &str = "J. M. Gere & B. J. Goodno, Mechanics of Materials, 8th ed. 2013, ch. 6 example 6-1 \
     (wood 4 × 6 in on a steel plate 4 × 0.5 in, modular ratio 20, 60 kip·in); from memory, recomputed";

/// The cases.
pub(crate) const CASES: &[Case] = &[
    sharp("area_matches_aisc_table_1_7_l3x3x3_8_sharp", "area", 2.109_38, || Ok(three()?.area))
        .measured_in("in²"),
    sharp("centroid_matches_aisc_table_1_7_l3x3x3_8_sharp", "centroid from the heel", 0.887_50, || {
        Ok(three()?.centroid[1])
    }),
    sharp("second_moment_matches_aisc_table_1_7_l3x3x3_8_sharp", "second moment", 1.759_68, || {
        Ok(three()?.second_moment_x)
    })
    .measured_in("in⁴"),
    sharp("section_modulus_matches_aisc_table_1_7_l3x3x3_8_sharp", "section modulus", 0.832_98, || {
        three().map(|area| area.second_moment_x / (3.0 - area.centroid[1]))
    })
    .measured_in("in³"),
    sharp("least_radius_matches_aisc_table_1_7_l3x3x3_8_sharp", "least radius of gyration", 0.586_70, || {
        Ok(three()?.least_radius_of_gyration())
    }),
    sharp(
        "least_second_moment_matches_aisc_table_1_7_l3x3x3_8_sharp",
        "least second moment",
        0.726_09,
        || Ok(three()?.principal_axes().minor),
    )
    .measured_in("in⁴"),
    sharp("area_matches_aisc_table_1_7_l4x4x1_2_sharp", "area", 3.75, || Ok(four()?.area)).measured_in("in²"),
    sharp("centroid_matches_aisc_table_1_7_l4x4x1_2_sharp", "centroid from the heel", 1.183_33, || {
        Ok(four()?.centroid[1])
    }),
    sharp("second_moment_matches_aisc_table_1_7_l4x4x1_2_sharp", "second moment", 5.561_46, || {
        Ok(four()?.second_moment_x)
    })
    .measured_in("in⁴"),
    sharp("section_modulus_matches_aisc_table_1_7_l4x4x1_2_sharp", "section modulus", 1.974_48, || {
        four().map(|area| area.second_moment_x / (4.0 - area.centroid[1]))
    })
    .measured_in("in³"),
    sharp("least_radius_matches_aisc_table_1_7_l4x4x1_2_sharp", "least radius of gyration", 0.782_27, || {
        Ok(four()?.least_radius_of_gyration())
    }),
    sharp(
        "least_second_moment_matches_aisc_table_1_7_l4x4x1_2_sharp",
        "least second moment",
        2.294_79,
        || Ok(four()?.principal_axes().minor),
    )
    .measured_in("in⁴"),
    rolled("area_matches_aisc_table_1_7_l3x3x3_8", "area as rolled", 2.11, 0.01, || Ok(three()?.area))
        .measured_in("in²"),
    rolled("second_moment_matches_aisc_table_1_7_l3x3x3_8", "second moment as rolled", 1.75, 0.015, || {
        Ok(three()?.second_moment_x)
    })
    .measured_in("in⁴"),
    rolled("least_radius_matches_aisc_table_1_7_l3x3x3_8", "least radius as rolled", 0.581, 0.015, || {
        Ok(three()?.least_radius_of_gyration())
    }),
    rolled("area_matches_aisc_table_1_7_l4x4x1_2", "area as rolled", 3.75, 0.01, || Ok(four()?.area))
        .measured_in("in²"),
    rolled("second_moment_matches_aisc_table_1_7_l4x4x1_2", "second moment as rolled", 5.52, 0.015, || {
        Ok(four()?.second_moment_x)
    })
    .measured_in("in⁴"),
    rolled("least_radius_matches_aisc_table_1_7_l4x4x1_2", "least radius as rolled", 0.776, 0.015, || {
        Ok(four()?.least_radius_of_gyration())
    }),
    transformed(
        "neutral_axis_matches_gere_goodno_chapter_6_wood_on_steel",
        "neutral axis from the top",
        5.031,
        || Ok(6.5 - wood_on_steel()?.area_properties().centroid[1]),
    )
    .printed_to(1e-3)
    .measured_in("in"),
    transformed(
        "second_moment_matches_gere_goodno_chapter_6_wood_on_steel",
        "transformed second moment",
        231.3,
        || Ok(wood_on_steel()?.area_properties().second_moment_x),
    )
    .printed_to(0.1)
    .measured_in("in⁴"),
    transformed(
        "wood_stress_matches_gere_goodno_chapter_6_wood_on_steel",
        "stress at the top of the wood",
        -1310.0,
        || stress(0, [0.0, 6.5]),
    )
    .printed_to(10.0)
    .measured_in("psi"),
    transformed(
        "steel_stress_matches_gere_goodno_chapter_6_wood_on_steel",
        "stress at the bottom of the steel",
        7620.0,
        || stress(1, [0.0, 0.0]),
    )
    .printed_to(10.0)
    .measured_in("psi"),
];

const fn sharp(id: &'static str, quantity: &'static str, printed: f64, ours: Ours) -> Case {
    let tolerance = Tolerance::Absolute(0.5e-5);
    Case {
        id,
        topic: "angle",
        quantity,
        unit: "in",
        source: SHARP,
        printed,
        tolerance,
        ours,
        difference: None,
    }
}

const fn rolled(id: &'static str, quantity: &'static str, printed: f64, share: f64, ours: Ours) -> Case {
    sharp(id, quantity, printed, ours).sourced(AISC).within(share, FILLET)
}

const fn transformed(id: &'static str, quantity: &'static str, printed: f64, ours: Ours) -> Case {
    Case { topic: "section of two materials", ..sharp(id, quantity, printed, ours).sourced(TRANSFORMED) }
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
