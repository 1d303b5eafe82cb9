//! Round tubes: the tube of the beam cases, and standard sizes by their table.

use axlebow_sections::{Profile, RoundTube, SectionProperties};

use crate::beam_line::{NU, tube};
use crate::case::{Case, Ours, Tolerance};
use crate::text;

const FORMULA: &str = "R. G. Budynas & A. M. Sadegh, Roark's Formulas for Stress and Strain, 9th ed., McGraw-Hill \
     2020, Table A.1 (tube); formula from memory, its number recomputed";
const AISC: &str = "AISC Steel Construction Manual, 15th ed. 2017, Table 1-13 (round HSS, design wall 0.93 of the \
     nominal one); printed values from memory, recomputed";

/// The cases.
pub(crate) const CASES: &[Case] = &[
    plain("area_matches_roark_table_a_1_tube_5_by_0_5", "area", 7.068_583_5, || Ok(five()?.area))
        .measured_in("in²"),
    plain("second_moment_matches_roark_table_a_1_tube_5_by_0_5", "second moment", 18.113_245_1, || {
        Ok(five()?.second_moment_x)
    })
    .measured_in("in⁴"),
    plain(
        "section_modulus_matches_roark_table_a_1_tube_5_by_0_5",
        "elastic section modulus",
        7.245_298_1,
        || Ok(five()?.section_modulus_x()),
    )
    .measured_in("in³"),
    plain(
        "plastic_modulus_matches_roark_table_a_1_tube_5_by_0_5",
        "plastic section modulus",
        10.166_666_7,
        || Ok(five()?.plastic_modulus_x),
    )
    .measured_in("in³"),
    plain("torsion_constant_matches_roark_table_a_1_tube_5_by_0_5", "torsion constant", 36.226_490_3, || {
        Ok(five()?.torsion_constant)
    })
    .measured_in("in⁴"),
    plain(
        "radius_of_gyration_matches_roark_table_a_1_tube_5_by_0_5",
        "radius of gyration",
        1.600_781_1,
        || Ok(five()?.radius_of_gyration_x()),
    )
    .measured_in("in"),
    aisc("area_matches_aisc_table_1_13_round_6_by_0_500", "area", 8.09, || Ok(six_half()?.area))
        .measured_in("in²"),
    aisc("second_moment_matches_aisc_table_1_13_round_6_by_0_500", "second moment", 31.2, || {
        Ok(six_half()?.second_moment_x)
    })
    .printed_to(0.1)
    .measured_in("in⁴"),
    aisc("section_modulus_matches_aisc_table_1_13_round_6_by_0_500", "elastic section modulus", 10.4, || {
        Ok(six_half()?.section_modulus_x())
    })
    .printed_to(0.1)
    .measured_in("in³"),
    aisc("radius_of_gyration_matches_aisc_table_1_13_round_6_by_0_500", "radius of gyration", 1.96, || {
        Ok(six_half()?.radius_of_gyration_x())
    })
    .measured_in("in"),
    aisc("plastic_modulus_matches_aisc_table_1_13_round_6_by_0_500", "plastic section modulus", 14.3, || {
        Ok(six_half()?.plastic_modulus_x)
    })
    .printed_to(0.1)
    .measured_in("in³"),
    aisc("torsion_constant_matches_aisc_table_1_13_round_6_by_0_500", "torsion constant", 62.4, || {
        Ok(six_half()?.torsion_constant)
    })
    .printed_to(0.1)
    .measured_in("in⁴"),
    aisc("area_matches_aisc_table_1_13_round_5_by_0_500", "area", 6.62, || Ok(five_half()?.area))
        .measured_in("in²"),
    aisc("second_moment_matches_aisc_table_1_13_round_5_by_0_500", "second moment", 17.2, || {
        Ok(five_half()?.second_moment_x)
    })
    .printed_to(0.1)
    .measured_in("in⁴"),
    aisc("section_modulus_matches_aisc_table_1_13_round_5_by_0_500", "elastic section modulus", 6.88, || {
        Ok(five_half()?.section_modulus_x())
    })
    .measured_in("in³"),
    aisc("radius_of_gyration_matches_aisc_table_1_13_round_5_by_0_500", "radius of gyration", 1.61, || {
        Ok(five_half()?.radius_of_gyration_x())
    })
    .measured_in("in"),
    aisc("plastic_modulus_matches_aisc_table_1_13_round_5_by_0_500", "plastic section modulus", 9.60, || {
        Ok(five_half()?.plastic_modulus_x)
    })
    .measured_in("in³"),
    aisc("torsion_constant_matches_aisc_table_1_13_round_5_by_0_500", "torsion constant", 34.4, || {
        Ok(five_half()?.torsion_constant)
    })
    .printed_to(0.1)
    .measured_in("in⁴"),
    aisc("area_matches_aisc_table_1_13_round_5_by_0_375", "area", 5.10, || Ok(five_thin()?.area))
        .measured_in("in²"),
    aisc("second_moment_matches_aisc_table_1_13_round_5_by_0_375", "second moment", 13.9, || {
        Ok(five_thin()?.second_moment_x)
    })
    .printed_to(0.1)
    .measured_in("in⁴"),
    aisc("section_modulus_matches_aisc_table_1_13_round_5_by_0_375", "elastic section modulus", 5.55, || {
        Ok(five_thin()?.section_modulus_x())
    })
    .measured_in("in³"),
    aisc("radius_of_gyration_matches_aisc_table_1_13_round_5_by_0_375", "radius of gyration", 1.65, || {
        Ok(five_thin()?.radius_of_gyration_x())
    })
    .measured_in("in"),
    aisc("plastic_modulus_matches_aisc_table_1_13_round_5_by_0_375", "plastic section modulus", 7.56, || {
        Ok(five_thin()?.plastic_modulus_x)
    })
    .measured_in("in³"),
    aisc("torsion_constant_matches_aisc_table_1_13_round_5_by_0_375", "torsion constant", 27.7, || {
        Ok(five_thin()?.torsion_constant)
    })
    .printed_to(0.1)
    .measured_in("in⁴"),
];

const fn plain(id: &'static str, quantity: &'static str, printed: f64, ours: Ours) -> Case {
    let tolerance = Tolerance::Absolute(0.5e-7);
    Case { source: FORMULA, tolerance, ..aisc(id, quantity, printed, ours) }
}

const fn aisc(id: &'static str, quantity: &'static str, printed: f64, ours: Ours) -> Case {
    Case {
        id,
        topic: "round tube",
        quantity,
        unit: "in",
        source: AISC,
        printed,
        tolerance: Tolerance::Absolute(0.5e-2),
        ours,
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
