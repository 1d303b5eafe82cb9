//! Fillet welds, their least sizes, and the carbon equivalent of a steel.

use axlebow_strength::{
    AiscBasis, AiscWeld, Composition, EnWeld, Fillet, WeldRun, correlation_factor, least_aisc_leg,
};

use crate::case::{Basis, Case, Compute, Provenance, Tolerance};
use crate::text;

const AISC: &str = "ANSI/AISC 360-22, J2.4: 0.60 F_EXX on the throat, phi 0.75, omega 2.00; formula from memory, its \
     number recomputed";
const EN: &str = "EN 1993-1-8:2005, 4.5.3.3: f_u/(√3 β_w γ_M2), γ_M2 1.25, β_w of Table 4.1; formula from memory, its \
     number recomputed";
const EN_SIZE: &str = "EN 1993-1-8:2005, 4.5.1 and 4.5.2; rule from memory";
const LEAST_LEG: &str = "ANSI/AISC 360-22, Table J2.4, and AWS D1.1, least fillet; value from memory";
const CARBON: &str = "International Institute of Welding, carbon equivalent C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15; \
     formula from memory, its number recomputed";

const THROAT: &str = "f_u/(√3 β_w γ_M2)";
const LEG: &str =
    "1/8 in up to 1/4 in of the thinner part, 3/16 in up to 1/2 in, 1/4 in up to 3/4 in, 5/16 in over it";

const INCH: f64 = 0.0254;

/// The cases.
pub(crate) const CASES: &[Case] = &[
    fillet(
        "fillet_strength_matches_aisc_360_22_j2_4_e70_factored_loads",
        "strength of a 1/16 in leg, E70, factored loads",
        ["φ 0.60 F_EXX a/√2", "leg a = 1/16 in, F_EXX = 70 ksi, φ = 0.75"],
        1.392_116,
        || sixteenth(AiscBasis::FactoredLoads),
    )
    .sourced(AISC)
    .measured_in("kip/in")
    .rounded_to(1e-6),
    fillet(
        "fillet_strength_matches_aisc_360_22_j2_4_e70_working_loads",
        "strength of a 1/16 in leg, E70, working loads",
        ["0.60 F_EXX a/(√2 Ω)", "leg a = 1/16 in, F_EXX = 70 ksi, Ω = 2.00"],
        0.928_078,
        || sixteenth(AiscBasis::WorkingLoads),
    )
    .sourced(AISC)
    .measured_in("kip/in")
    .rounded_to(1e-6),
    fillet(
        "throat_strength_matches_en_1993_1_8_4_5_3_3_s235_of_360",
        "throat strength on S235, f_u 360 MPa",
        [THROAT, "f_u = 360 MPa, β_w = 0.8 (S235), γ_M2 = 1.25"],
        207.846,
        || throat_strength(235.0, 360.0),
    ),
    fillet(
        "throat_strength_matches_en_1993_1_8_4_5_3_3_s275_of_430",
        "throat strength on S275, f_u 430 MPa",
        [THROAT, "f_u = 430 MPa, β_w = 0.85 (S275), γ_M2 = 1.25"],
        233.657,
        || throat_strength(275.0, 430.0),
    ),
    fillet(
        "throat_strength_matches_en_1993_1_8_4_5_3_3_s275_of_410",
        "throat strength on S275, f_u 410 MPa",
        [THROAT, "f_u = 410 MPa, β_w = 0.85 (S275), γ_M2 = 1.25"],
        222.789,
        || throat_strength(275.0, 410.0),
    ),
    fillet(
        "throat_strength_matches_en_1993_1_8_4_5_3_3_s355_of_510",
        "throat strength on S355, f_u 510 MPa",
        [THROAT, "f_u = 510 MPa, β_w = 0.9 (S355), γ_M2 = 1.25"],
        261.732,
        || throat_strength(355.0, 510.0),
    ),
    fillet(
        "throat_strength_matches_en_1993_1_8_4_5_3_3_s355_of_490",
        "throat strength on S355, f_u 490 MPa",
        [THROAT, "f_u = 490 MPa, β_w = 0.9 (S355), γ_M2 = 1.25"],
        251.468,
        || throat_strength(355.0, 490.0),
    ),
    fillet(
        "throat_strength_matches_en_1993_1_8_4_5_3_3_s355_of_470",
        "throat strength on S355, f_u 470 MPa",
        [THROAT, "f_u = 470 MPa, β_w = 0.9 (S355), γ_M2 = 1.25"],
        241.204,
        || throat_strength(355.0, 470.0),
    ),
    fillet(
        "throat_strength_matches_en_1993_1_8_4_5_3_3_s460_of_540",
        "throat strength on S460, f_u 540 MPa",
        [THROAT, "f_u = 540 MPa, β_w = 1.0 (S460), γ_M2 = 1.25"],
        249.415,
        || throat_strength(460.0, 540.0),
    ),
    fillet(
        "least_leg_matches_aisc_table_j2_4_at_1_4_in",
        "least leg at 1/4 in",
        [LEG, "thickness 0.25 in"],
        0.125,
        || Ok(least_aisc_leg(0.25 * INCH) / INCH),
    )
    .sourced(LEAST_LEG)
    .with_provenance(Provenance::Recalled)
    .measured_in("in")
    .exact(),
    fillet(
        "least_leg_matches_aisc_table_j2_4_at_1_2_in",
        "least leg at 1/2 in",
        [LEG, "thickness 0.5 in"],
        0.1875,
        || Ok(least_aisc_leg(0.5 * INCH) / INCH),
    )
    .sourced(LEAST_LEG)
    .with_provenance(Provenance::Recalled)
    .measured_in("in")
    .exact(),
    fillet(
        "least_leg_matches_aisc_table_j2_4_at_3_4_in",
        "least leg at 3/4 in",
        [LEG, "thickness 0.75 in"],
        0.25,
        || Ok(least_aisc_leg(0.75 * INCH) / INCH),
    )
    .sourced(LEAST_LEG)
    .with_provenance(Provenance::Recalled)
    .measured_in("in")
    .exact(),
    fillet(
        "least_leg_matches_aisc_table_j2_4_at_1_in",
        "least leg at 1 in",
        [LEG, "thickness 1 in"],
        0.3125,
        || Ok(least_aisc_leg(1.0 * INCH) / INCH),
    )
    .sourced(LEAST_LEG)
    .with_provenance(Provenance::Recalled)
    .measured_in("in")
    .exact(),
    fillet(
        "least_throat_matches_en_1993_1_8_4_5_2",
        "least throat of a fillet",
        ["3 mm", "throat 4 mm"],
        3.0,
        || least_en(4.0, 0),
    )
    .sourced(EN_SIZE)
    .with_provenance(Provenance::Recalled)
    .measured_in("mm")
    .exact(),
    fillet(
        "least_length_matches_en_1993_1_8_4_5_1_throat_4",
        "least length at a throat of 4 mm",
        ["max(30 mm, 6 a)", "throat a = 4 mm"],
        30.0,
        || least_en(4.0, 1),
    )
    .sourced(EN_SIZE)
    .measured_in("mm")
    .exact(),
    fillet(
        "least_length_matches_en_1993_1_8_4_5_1_throat_8",
        "least length at a throat of 8 mm",
        ["max(30 mm, 6 a)", "throat a = 8 mm"],
        48.0,
        || least_en(8.0, 1),
    )
    .sourced(EN_SIZE)
    .measured_in("mm")
    .exact(),
    carbon(
        "carbon_equivalent_matches_iiw_chromium_molybdenum_steel",
        "carbon equivalent, chromium-molybdenum steel",
        "C = 0.40 %, Mn = 0.85 %, Cr = 0.95 %, Mo = 0.20 %",
        0.771667,
        || {
            Ok(Composition {
                carbon: 0.40,
                manganese: 0.85,
                chromium: 0.95,
                molybdenum: 0.20,
                ..Composition::default()
            }
            .carbon_equivalent())
        },
    ),
    carbon(
        "carbon_equivalent_matches_iiw_mild_steel",
        "carbon equivalent, mild steel",
        "C = 0.20 %, Mn = 0.45 %",
        0.275,
        || Ok(Composition { carbon: 0.20, manganese: 0.45, ..Composition::default() }.carbon_equivalent()),
    ),
    carbon(
        "carbon_equivalent_matches_iiw_manganese_steel",
        "carbon equivalent, manganese steel",
        "C = 0.23 %, Mn = 1.35 %",
        0.455,
        || Ok(Composition { carbon: 0.23, manganese: 1.35, ..Composition::default() }.carbon_equivalent()),
    ),
];

const fn fillet(
    id: &'static str,
    quantity: &'static str,
    basis: Basis,
    reference: f64,
    computed: Compute,
) -> Case {
    let [formula, inputs] = basis;
    Case {
        id,
        topic: "fillet weld",
        quantity,
        unit: "MPa",
        source: EN,
        formula,
        inputs,
        provenance: Provenance::ClosedForm,
        reference,
        tolerance: Tolerance::Absolute(0.5e-3),
        computed,
        difference: None,
    }
}

const fn carbon(
    id: &'static str,
    quantity: &'static str,
    inputs: &'static str,
    reference: f64,
    computed: Compute,
) -> Case {
    let tolerance = Tolerance::Absolute(0.5e-6);
    Case {
        topic: "carbon equivalent",
        unit: "%",
        source: CARBON,
        tolerance,
        ..fillet(id, quantity, ["C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15", inputs], reference, computed)
    }
}

/// Strength of a leg of 1/16 in of E70 (kip/in), in kip and inches.
fn sixteenth(basis: AiscBasis) -> Result<f64, String> {
    let fillet = Fillet::with_leg(1.0 / 16.0).map_err(text)?;
    Ok(AiscWeld::new(70.0, basis).map_err(text)?.strength(&fillet, 0.0))
}

/// Strength of a throat on steel of a grade and an ultimate strength, all in MPa.
fn throat_strength(grade: f64, ultimate: f64) -> Result<f64, String> {
    Ok(EnWeld::new(ultimate, correlation_factor(grade * 1e6)).map_err(text)?.shear_strength())
}

/// A least size (mm) of a fillet with a throat (mm): of its throat or of its length.
fn least_en(throat: f64, which: usize) -> Result<f64, String> {
    let fillet = Fillet::with_throat(throat * 1e-3).map_err(text)?;
    let run = WeldRun::new(fillet, 0.1, 0.01).map_err(text)?;
    Ok(run.en_checks()[which].limit * 1e3)
}
