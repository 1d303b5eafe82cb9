//! Life curves of details: knees, cut-offs and lives.

use axlebow_strength::{AiscCategory, Detail, DetailRules, DetailStress, LifeCurve};

use crate::case::{Case, Ours, Tolerance};
use crate::text;

const EN: &str = "EN 1993-1-9:2005, sec. 7.1: slope 3 to 5e6 cycles, 5 to 1e8, cut-off; formula from memory, its number \
     recomputed";
const AISC: &str = "ANSI/AISC 360-22, Appendix 3: (C_f/n)^(1/3); constants from memory, number recomputed";

/// 1000 lbf/in² (Pa); NIST SP 811.
const KSI: f64 = 6_894_757.293_168;

/// The cases.
pub(crate) const CASES: &[Case] = &[
    life("knee_ratio_matches_en_1993_1_9_7_1", "knee over category", 0.736_806, || {
        Ok(normal(100.0)?.range(5e6) / 100e6)
    })
    .measured_in("")
    .printed_to(1e-6),
    life("cut_off_ratio_matches_en_1993_1_9_7_1", "cut-off over category", 0.404_713, || {
        Ok(normal(100.0)?.range(1e8) / 100e6)
    })
    .measured_in("")
    .printed_to(1e-6),
    life("cut_off_over_knee_matches_en_1993_1_9_7_1", "cut-off over knee", 0.549_280, || {
        Ok(normal(100.0)?.range(1e8) / normal(100.0)?.range(5e6))
    })
    .measured_in("")
    .printed_to(1e-6),
    life("cut_off_ratio_matches_en_1993_1_9_7_1_shear", "cut-off over category, shear", 0.457_305, || {
        Ok(curve(80.0, DetailStress::Shear)?.range(1e8) / 80e6)
    })
    .measured_in("")
    .printed_to(1e-6),
    life("knee_matches_en_1993_1_9_7_1_category_50", "knee of category 50", 36.840, || {
        Ok(normal(50.0)?.range(5e6) / 1e6)
    }),
    life("cut_off_matches_en_1993_1_9_7_1_category_50", "cut-off of category 50", 20.236, || {
        Ok(normal(50.0)?.range(1e8) / 1e6)
    }),
    life("knee_matches_en_1993_1_9_7_1_category_56", "knee of category 56", 41.261, || {
        Ok(normal(56.0)?.range(5e6) / 1e6)
    }),
    life("cut_off_matches_en_1993_1_9_7_1_category_56", "cut-off of category 56", 22.664, || {
        Ok(normal(56.0)?.range(1e8) / 1e6)
    }),
    life("knee_matches_en_1993_1_9_7_1_category_63", "knee of category 63", 46.419, || {
        Ok(normal(63.0)?.range(5e6) / 1e6)
    }),
    life("cut_off_matches_en_1993_1_9_7_1_category_63", "cut-off of category 63", 25.497, || {
        Ok(normal(63.0)?.range(1e8) / 1e6)
    }),
    life("knee_matches_en_1993_1_9_7_1_category_71", "knee of category 71", 52.313, || {
        Ok(normal(71.0)?.range(5e6) / 1e6)
    }),
    life("cut_off_matches_en_1993_1_9_7_1_category_71", "cut-off of category 71", 28.735, || {
        Ok(normal(71.0)?.range(1e8) / 1e6)
    }),
    life("knee_matches_en_1993_1_9_7_1_category_80", "knee of category 80", 58.945, || {
        Ok(normal(80.0)?.range(5e6) / 1e6)
    }),
    life("cut_off_matches_en_1993_1_9_7_1_category_80", "cut-off of category 80", 32.377, || {
        Ok(normal(80.0)?.range(1e8) / 1e6)
    }),
    life("knee_matches_en_1993_1_9_7_1_category_90", "knee of category 90", 66.313, || {
        Ok(normal(90.0)?.range(5e6) / 1e6)
    }),
    life("cut_off_matches_en_1993_1_9_7_1_category_90", "cut-off of category 90", 36.424, || {
        Ok(normal(90.0)?.range(1e8) / 1e6)
    }),
    life("knee_matches_en_1993_1_9_7_1_category_100", "knee of category 100", 73.681, || {
        Ok(normal(100.0)?.range(5e6) / 1e6)
    }),
    life("cut_off_matches_en_1993_1_9_7_1_category_100", "cut-off of category 100", 40.471, || {
        Ok(normal(100.0)?.range(1e8) / 1e6)
    }),
    life("knee_matches_en_1993_1_9_7_1_category_125", "knee of category 125", 92.101, || {
        Ok(normal(125.0)?.range(5e6) / 1e6)
    }),
    life("cut_off_matches_en_1993_1_9_7_1_category_125", "cut-off of category 125", 50.589, || {
        Ok(normal(125.0)?.range(1e8) / 1e6)
    }),
    life("knee_matches_en_1993_1_9_7_1_category_160", "knee of category 160", 117.889, || {
        Ok(normal(160.0)?.range(5e6) / 1e6)
    }),
    life("cut_off_matches_en_1993_1_9_7_1_category_160", "cut-off of category 160", 64.754, || {
        Ok(normal(160.0)?.range(1e8) / 1e6)
    }),
    life(
        "life_matches_en_1993_1_9_7_1_category_71_at_100_mpa",
        "life of category 71 at 100 MPa",
        715_822.0,
        || Ok(normal(71.0)?.cycles(100e6)),
    )
    .measured_in("cycles")
    .printed_to(1.0),
    life(
        "life_matches_en_1993_1_9_7_1_category_71_at_40_mpa",
        "life of category 71 at 40 MPa",
        19_130_593.0,
        || Ok(normal(71.0)?.cycles(40e6)),
    )
    .measured_in("cycles")
    .printed_to(1.0),
    life(
        "life_matches_en_1993_1_9_7_1_category_56_at_90_mpa",
        "life of category 56 at 90 MPa",
        481_800.0,
        || Ok(normal(56.0)?.cycles(90e6)),
    )
    .measured_in("cycles")
    .printed_to(1.0),
    life(
        "damage_matches_en_1993_1_9_7_1_category_71_at_20_mpa",
        "damage of a cycle of category 71 at 20 MPa, below its cut-off",
        0.0,
        || Ok(normal(71.0)?.cycles(20e6).recip()),
    )
    .measured_in(""),
    life(
        "range_matches_aisc_appendix_3_category_e_at_1e6",
        "range of category E at 1e6 cycles",
        10.3228,
        || Ok(AiscCategory::E.curve().map_err(text)?.range(1e6) / KSI),
    )
    .sourced(AISC)
    .measured_in("ksi")
    .printed_to(1e-4),
    life(
        "range_matches_aisc_appendix_3_category_b_at_2e6",
        "range of category B at 2e6 cycles",
        18.1712,
        || Ok(AiscCategory::B.curve().map_err(text)?.range(2e6) / KSI),
    )
    .sourced(AISC)
    .measured_in("ksi")
    .printed_to(1e-4),
    life(
        "range_matches_aisc_appendix_3_category_c_at_2e6",
        "range of category C at 2e6 cycles",
        13.0059,
        || Ok(AiscCategory::C.curve().map_err(text)?.range(2e6) / KSI),
    )
    .sourced(AISC)
    .measured_in("ksi")
    .printed_to(1e-4),
];

const fn life(id: &'static str, quantity: &'static str, printed: f64, ours: Ours) -> Case {
    Case {
        id,
        topic: "fatigue life",
        quantity,
        unit: "MPa",
        source: EN,
        printed,
        tolerance: Tolerance::Absolute(0.5e-3),
        ours,
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
    let detail = Detail { name: "", words: "", category, stress, rules: DetailRules::En, table: "" };
    detail.curve().map_err(text)
}
