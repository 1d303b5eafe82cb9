//! Round tubes: the tube of the beam cases, and standard sizes by their table.

use axlebow_sections::{Profile, RoundTube, SectionProperties};

use crate::beams::beam_line::{NU, tube};
use crate::case::{Case, Compute, Provenance, Tolerance};
use crate::text;

const FORMULA: &str = "R. G. Budynas & A. M. Sadegh, Roark's Formulas for Stress and Strain, 9th ed., McGraw-Hill \
     2020, Table A.1 (tube); formula from memory, its number recomputed";
const AISC: &str = "AISC Steel Construction Manual, 15th ed. 2017, Table 1-13 (round HSS, design wall 0.93 of the \
     nominal one); from memory, values recomputed";

/// Quantity, formula and unit of a property.
type Property = [&'static str; 3];

const AREA: Property = ["area", "A = π (D² − d²)/4", "in²"];
const SECOND_MOMENT: Property = ["second moment", "I = π (D⁴ − d⁴)/64", "in⁴"];
const SECTION_MODULUS: Property = ["elastic section modulus", "S = 2 I/D", "in³"];
const PLASTIC_MODULUS: Property = ["plastic section modulus", "Z = (D³ − d³)/6", "in³"];
const TORSION_CONSTANT: Property = ["torsion constant", "J = π (D⁴ − d⁴)/32", "in⁴"];
const RADIUS: Property = ["radius of gyration", "r = √(D² + d²)/4", "in"];

const TUBE_5: &str = "D = 5 in, t = 0.5 in, d = D − 2 t";
const ROUND_6: &str = "D = 6 in, t = 0.465 in (0.93 of 0.500 in), d = D − 2 t";
const ROUND_5: &str = "D = 5 in, t = 0.465 in (0.93 of 0.500 in), d = D − 2 t";
const ROUND_5_THIN: &str = "D = 5 in, t = 0.349 in (0.93 of 0.375 in), d = D − 2 t";

/// The cases.
pub(crate) const CASES: &[Case] = &[
    plain("area_matches_roark_table_a_1_tube_5_by_0_5", AREA, TUBE_5, 7.068_583_5, || Ok(five()?.area)),
    plain("second_moment_matches_roark_table_a_1_tube_5_by_0_5", SECOND_MOMENT, TUBE_5, 18.113_245_1, || {
        Ok(five()?.second_moment_x)
    }),
    plain(
        "section_modulus_matches_roark_table_a_1_tube_5_by_0_5",
        SECTION_MODULUS,
        TUBE_5,
        7.245_298_1,
        || Ok(five()?.section_modulus_x()),
    ),
    plain(
        "plastic_modulus_matches_roark_table_a_1_tube_5_by_0_5",
        PLASTIC_MODULUS,
        TUBE_5,
        10.166_666_7,
        || Ok(five()?.plastic_modulus_x),
    ),
    plain(
        "torsion_constant_matches_roark_table_a_1_tube_5_by_0_5",
        TORSION_CONSTANT,
        TUBE_5,
        36.226_490_3,
        || Ok(five()?.torsion_constant),
    ),
    plain("radius_of_gyration_matches_roark_table_a_1_tube_5_by_0_5", RADIUS, TUBE_5, 1.600_781_1, || {
        Ok(five()?.radius_of_gyration_x())
    }),
    aisc("area_matches_aisc_table_1_13_round_6_by_0_500", AREA, ROUND_6, 8.09, || Ok(six_half()?.area)),
    aisc("second_moment_matches_aisc_table_1_13_round_6_by_0_500", SECOND_MOMENT, ROUND_6, 31.2, || {
        Ok(six_half()?.second_moment_x)
    })
    .rounded_to(0.1),
    aisc("section_modulus_matches_aisc_table_1_13_round_6_by_0_500", SECTION_MODULUS, ROUND_6, 10.4, || {
        Ok(six_half()?.section_modulus_x())
    })
    .rounded_to(0.1),
    aisc("radius_of_gyration_matches_aisc_table_1_13_round_6_by_0_500", RADIUS, ROUND_6, 1.96, || {
        Ok(six_half()?.radius_of_gyration_x())
    }),
    aisc("plastic_modulus_matches_aisc_table_1_13_round_6_by_0_500", PLASTIC_MODULUS, ROUND_6, 14.3, || {
        Ok(six_half()?.plastic_modulus_x)
    })
    .rounded_to(0.1),
    aisc(
        "torsion_constant_matches_aisc_table_1_13_round_6_by_0_500",
        TORSION_CONSTANT,
        ROUND_6,
        62.4,
        || Ok(six_half()?.torsion_constant),
    )
    .rounded_to(0.1),
    aisc("area_matches_aisc_table_1_13_round_5_by_0_500", AREA, ROUND_5, 6.62, || Ok(five_half()?.area)),
    aisc("second_moment_matches_aisc_table_1_13_round_5_by_0_500", SECOND_MOMENT, ROUND_5, 17.2, || {
        Ok(five_half()?.second_moment_x)
    })
    .rounded_to(0.1),
    aisc("section_modulus_matches_aisc_table_1_13_round_5_by_0_500", SECTION_MODULUS, ROUND_5, 6.88, || {
        Ok(five_half()?.section_modulus_x())
    }),
    aisc("radius_of_gyration_matches_aisc_table_1_13_round_5_by_0_500", RADIUS, ROUND_5, 1.61, || {
        Ok(five_half()?.radius_of_gyration_x())
    }),
    aisc("plastic_modulus_matches_aisc_table_1_13_round_5_by_0_500", PLASTIC_MODULUS, ROUND_5, 9.60, || {
        Ok(five_half()?.plastic_modulus_x)
    }),
    aisc(
        "torsion_constant_matches_aisc_table_1_13_round_5_by_0_500",
        TORSION_CONSTANT,
        ROUND_5,
        34.4,
        || Ok(five_half()?.torsion_constant),
    )
    .rounded_to(0.1),
    aisc("area_matches_aisc_table_1_13_round_5_by_0_375", AREA, ROUND_5_THIN, 5.10, || Ok(five_thin()?.area)),
    aisc("second_moment_matches_aisc_table_1_13_round_5_by_0_375", SECOND_MOMENT, ROUND_5_THIN, 13.9, || {
        Ok(five_thin()?.second_moment_x)
    })
    .rounded_to(0.1),
    aisc(
        "section_modulus_matches_aisc_table_1_13_round_5_by_0_375",
        SECTION_MODULUS,
        ROUND_5_THIN,
        5.55,
        || Ok(five_thin()?.section_modulus_x()),
    ),
    aisc("radius_of_gyration_matches_aisc_table_1_13_round_5_by_0_375", RADIUS, ROUND_5_THIN, 1.65, || {
        Ok(five_thin()?.radius_of_gyration_x())
    }),
    aisc(
        "plastic_modulus_matches_aisc_table_1_13_round_5_by_0_375",
        PLASTIC_MODULUS,
        ROUND_5_THIN,
        7.56,
        || Ok(five_thin()?.plastic_modulus_x),
    ),
    aisc(
        "torsion_constant_matches_aisc_table_1_13_round_5_by_0_375",
        TORSION_CONSTANT,
        ROUND_5_THIN,
        27.7,
        || Ok(five_thin()?.torsion_constant),
    )
    .rounded_to(0.1),
];

const fn plain(
    id: &'static str,
    property: Property,
    inputs: &'static str,
    reference: f64,
    computed: Compute,
) -> Case {
    let tolerance = Tolerance::Absolute(0.5e-7);
    Case { source: FORMULA, tolerance, ..aisc(id, property, inputs, reference, computed) }
}

const fn aisc(
    id: &'static str,
    [quantity, formula, unit]: Property,
    inputs: &'static str,
    reference: f64,
    computed: Compute,
) -> Case {
    Case {
        id,
        topic: "round tube",
        quantity,
        formula,
        inputs,
        unit,
        source: AISC,
        provenance: Provenance::ClosedForm,
        reference,
        tolerance: Tolerance::Absolute(0.5e-2),
        computed,
        difference: None,
    }
}

fn five() -> Result<SectionProperties, String> {
    Ok(tube()?.properties(NU))
}

fn six_half() -> Result<SectionProperties, String> {
    round(6.0, 0.465)
}

fn five_half() -> Result<SectionProperties, String> {
    round(5.0, 0.465)
}

fn five_thin() -> Result<SectionProperties, String> {
    round(5.0, 0.349)
}

fn round(diameter: f64, wall: f64) -> Result<SectionProperties, String> {
    let tube = RoundTube::new(diameter, wall).map_err(text)?;
    Ok(Profile::from(tube).properties(NU))
}
