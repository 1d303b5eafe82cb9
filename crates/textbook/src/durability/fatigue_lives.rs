//! Life curves of details: knees, cut-offs and lives.

use axlebow_strength::{AiscCategory, Detail, DetailRules, DetailStress, LifeCurve};

use crate::case::{Basis, Case, Compute, Provenance, Tolerance};
use crate::text;

const EN: &str = "EN 1993-1-9:2005, sec. 7.1: slope 3 to 5e6 cycles, 5 to 1e8, cut-off; formula from memory, its number \
     recomputed";
const AISC: &str = "ANSI/AISC 360-22, Appendix 3: (C_f/n)^(1/3); constants from memory, number recomputed";

const KNEE: &str = "Δσ_D = (2/5)^(1/3) Δσ_C";
const CUT_OFF: &str = "Δσ_L = (5/100)^(1/5) Δσ_D, Δσ_D = (2/5)^(1/3) Δσ_C";

/// 1000 lbf/in² (Pa); NIST SP 811.
const KSI: f64 = 6_894_757.293_168;

/// The cases.
pub(crate) const CASES: &[Case] = &[
    life(
        "knee_ratio_matches_en_1993_1_9_7_1",
        "knee over category",
        [KNEE, "Δσ_C = 100 MPa"],
        0.736_806,
        || Ok(normal(100.0)?.range(5e6) / 100e6),
    )
    .measured_in("")
    .rounded_to(1e-6),
    life(
        "cut_off_ratio_matches_en_1993_1_9_7_1",
        "cut-off over category",
        [CUT_OFF, "Δσ_C = 100 MPa"],
        0.404_713,
        || Ok(normal(100.0)?.range(1e8) / 100e6),
    )
    .measured_in("")
    .rounded_to(1e-6),
    life(
        "cut_off_over_knee_matches_en_1993_1_9_7_1",
        "cut-off over knee",
        ["Δσ_L/Δσ_D = (5/100)^(1/5)", "Δσ_C = 100 MPa"],
        0.549_280,
        || Ok(normal(100.0)?.range(1e8) / normal(100.0)?.range(5e6)),
    )
    .measured_in("")
    .rounded_to(1e-6),
    life(
        "cut_off_ratio_matches_en_1993_1_9_7_1_shear",
        "cut-off over category, shear",
        ["Δτ_L = (2/100)^(1/5) Δτ_C", "Δτ_C = 80 MPa"],
        0.457_305,
        || Ok(curve(80.0, DetailStress::Shear)?.range(1e8) / 80e6),
    )
    .measured_in("")
    .rounded_to(1e-6),
    life(
        "knee_matches_en_1993_1_9_7_1_category_50",
        "knee of category 50",
        [KNEE, "Δσ_C = 50 MPa"],
        36.840,
        || Ok(normal(50.0)?.range(5e6) / 1e6),
    ),
    life(
        "cut_off_matches_en_1993_1_9_7_1_category_50",
        "cut-off of category 50",
        [CUT_OFF, "Δσ_C = 50 MPa"],
        20.236,
        || Ok(normal(50.0)?.range(1e8) / 1e6),
    ),
    life(
        "knee_matches_en_1993_1_9_7_1_category_56",
        "knee of category 56",
        [KNEE, "Δσ_C = 56 MPa"],
        41.261,
        || Ok(normal(56.0)?.range(5e6) / 1e6),
    ),
    life(
        "cut_off_matches_en_1993_1_9_7_1_category_56",
        "cut-off of category 56",
        [CUT_OFF, "Δσ_C = 56 MPa"],
        22.664,
        || Ok(normal(56.0)?.range(1e8) / 1e6),
    ),
    life(
        "knee_matches_en_1993_1_9_7_1_category_63",
        "knee of category 63",
        [KNEE, "Δσ_C = 63 MPa"],
        46.419,
        || Ok(normal(63.0)?.range(5e6) / 1e6),
    ),
    life(
        "cut_off_matches_en_1993_1_9_7_1_category_63",
        "cut-off of category 63",
        [CUT_OFF, "Δσ_C = 63 MPa"],
        25.497,
        || Ok(normal(63.0)?.range(1e8) / 1e6),
    ),
    life(
        "knee_matches_en_1993_1_9_7_1_category_71",
        "knee of category 71",
        [KNEE, "Δσ_C = 71 MPa"],
        52.313,
        || Ok(normal(71.0)?.range(5e6) / 1e6),
    ),
    life(
        "cut_off_matches_en_1993_1_9_7_1_category_71",
        "cut-off of category 71",
        [CUT_OFF, "Δσ_C = 71 MPa"],
        28.735,
        || Ok(normal(71.0)?.range(1e8) / 1e6),
    ),
    life(
        "knee_matches_en_1993_1_9_7_1_category_80",
        "knee of category 80",
        [KNEE, "Δσ_C = 80 MPa"],
        58.945,
        || Ok(normal(80.0)?.range(5e6) / 1e6),
    ),
    life(
        "cut_off_matches_en_1993_1_9_7_1_category_80",
        "cut-off of category 80",
        [CUT_OFF, "Δσ_C = 80 MPa"],
        32.377,
        || Ok(normal(80.0)?.range(1e8) / 1e6),
    ),
    life(
        "knee_matches_en_1993_1_9_7_1_category_90",
        "knee of category 90",
        [KNEE, "Δσ_C = 90 MPa"],
        66.313,
        || Ok(normal(90.0)?.range(5e6) / 1e6),
    ),
    life(
        "cut_off_matches_en_1993_1_9_7_1_category_90",
        "cut-off of category 90",
        [CUT_OFF, "Δσ_C = 90 MPa"],
        36.424,
        || Ok(normal(90.0)?.range(1e8) / 1e6),
    ),
    life(
        "knee_matches_en_1993_1_9_7_1_category_100",
        "knee of category 100",
        [KNEE, "Δσ_C = 100 MPa"],
        73.681,
        || Ok(normal(100.0)?.range(5e6) / 1e6),
    ),
    life(
        "cut_off_matches_en_1993_1_9_7_1_category_100",
        "cut-off of category 100",
        [CUT_OFF, "Δσ_C = 100 MPa"],
        40.471,
        || Ok(normal(100.0)?.range(1e8) / 1e6),
    ),
    life(
        "knee_matches_en_1993_1_9_7_1_category_125",
        "knee of category 125",
        [KNEE, "Δσ_C = 125 MPa"],
        92.101,
        || Ok(normal(125.0)?.range(5e6) / 1e6),
    ),
    life(
        "cut_off_matches_en_1993_1_9_7_1_category_125",
        "cut-off of category 125",
        [CUT_OFF, "Δσ_C = 125 MPa"],
        50.589,
        || Ok(normal(125.0)?.range(1e8) / 1e6),
    ),
    life(
        "knee_matches_en_1993_1_9_7_1_category_160",
        "knee of category 160",
        [KNEE, "Δσ_C = 160 MPa"],
        117.889,
        || Ok(normal(160.0)?.range(5e6) / 1e6),
    ),
    life(
        "cut_off_matches_en_1993_1_9_7_1_category_160",
        "cut-off of category 160",
        [CUT_OFF, "Δσ_C = 160 MPa"],
        64.754,
        || Ok(normal(160.0)?.range(1e8) / 1e6),
    ),
    life(
        "life_matches_en_1993_1_9_7_1_category_71_at_100_mpa",
        "life of category 71 at 100 MPa",
        ["N = 2e6 (Δσ_C/Δσ)³", "Δσ_C = 71 MPa, Δσ = 100 MPa"],
        715_822.0,
        || Ok(normal(71.0)?.cycles(100e6)),
    )
    .measured_in("cycles")
    .rounded_to(1.0),
    life(
        "life_matches_en_1993_1_9_7_1_category_71_at_40_mpa",
        "life of category 71 at 40 MPa",
        ["N = 5e6 (Δσ_D/Δσ)⁵, Δσ_D = (2/5)^(1/3) Δσ_C", "Δσ_C = 71 MPa, Δσ = 40 MPa"],
        19_130_593.0,
        || Ok(normal(71.0)?.cycles(40e6)),
    )
    .measured_in("cycles")
    .rounded_to(1.0),
    life(
        "life_matches_en_1993_1_9_7_1_category_56_at_90_mpa",
        "life of category 56 at 90 MPa",
        ["N = 2e6 (Δσ_C/Δσ)³", "Δσ_C = 56 MPa, Δσ = 90 MPa"],
        481_800.0,
        || Ok(normal(56.0)?.cycles(90e6)),
    )
    .measured_in("cycles")
    .rounded_to(1.0),
    life(
        "damage_matches_en_1993_1_9_7_1_category_71_at_20_mpa",
        "damage of a cycle of category 71 at 20 MPa, below its cut-off",
        ["0 below Δσ_L", "Δσ_C = 71 MPa, Δσ = 20 MPa"],
        0.0,
        || Ok(normal(71.0)?.cycles(20e6).recip()),
    )
    .measured_in(""),
    life(
        "range_matches_aisc_appendix_3_category_e_at_1e6",
        "range of category E at 1e6 cycles",
        ["F_SR = (C_f/n)^(1/3)", "C_f = 11e8 ksi³, n = 1e6"],
        10.3228,
        || Ok(AiscCategory::E.curve().map_err(text)?.range(1e6) / KSI),
    )
    .sourced(AISC)
    .measured_in("ksi")
    .rounded_to(1e-4),
    life(
        "range_matches_aisc_appendix_3_category_b_at_2e6",
        "range of category B at 2e6 cycles",
        ["F_SR = (C_f/n)^(1/3)", "C_f = 120e8 ksi³, n = 2e6"],
        18.1712,
        || Ok(AiscCategory::B.curve().map_err(text)?.range(2e6) / KSI),
    )
    .sourced(AISC)
    .measured_in("ksi")
    .rounded_to(1e-4),
    life(
        "range_matches_aisc_appendix_3_category_c_at_2e6",
        "range of category C at 2e6 cycles",
        ["F_SR = (C_f/n)^(1/3)", "C_f = 44e8 ksi³, n = 2e6"],
        13.0059,
        || Ok(AiscCategory::C.curve().map_err(text)?.range(2e6) / KSI),
    )
    .sourced(AISC)
    .measured_in("ksi")
    .rounded_to(1e-4),
];

const fn life(
    id: &'static str,
    quantity: &'static str,
    basis: Basis,
    reference: f64,
    computed: Compute,
) -> Case {
    let [formula, inputs] = basis;
    Case {
        id,
        topic: "fatigue life",
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

/// Curve of a category (MPa) under normal stress.
fn normal(category: f64) -> Result<LifeCurve, String> {
    curve(category, DetailStress::Normal)
}

/// Curve of a category (MPa).
fn curve(category: f64, stress: DetailStress) -> Result<LifeCurve, String> {
    let category = category * 1e6;
    let detail =
        Detail { name: "", words: "", category, stress, rules: DetailRules::En, table: "", welded: true };
    detail.curve().map_err(text)
}
