//! Slenderness at which the class of a tube's wall changes.

use axlebow_strength::{WallPart, aisc_limits, aisc_round_reach, en_limits};

use crate::case::{Basis, Case, Compute, Provenance, Tolerance};

const AISC: &str = "ANSI/AISC 360-22, Table B4.1b (round tubes in bending) and F8, E = 29 000 ksi; formula from memory, \
     its number recomputed";
const EN: &str = "EN 1993-1-1:2005, Table 5.2, sheet 3 (tubes): 50, 70, 90 times 235 MPa/f_y; formula from memory, its \
     number recomputed";

const E: f64 = 29_000.0;

/// The cases.
pub(crate) const CASES: &[Case] = &[
    wall(
        "slenderness_limit_matches_aisc_table_b4_1b_compact_at_50_ksi",
        "D/t, compact at 50 ksi",
        ["D/t = 0.07 E/F_y", "E = 29000 ksi, F_y = 50 ksi"],
        40.6,
        || Ok(aisc_limits(WallPart::Round, E, 50.0)[0]),
    )
    .sourced(AISC)
    .rounded_to(0.1),
    wall(
        "slenderness_limit_matches_aisc_table_b4_1b_compact_at_46_ksi",
        "D/t, compact at 46 ksi",
        ["D/t = 0.07 E/F_y", "E = 29000 ksi, F_y = 46 ksi"],
        44.13,
        || Ok(aisc_limits(WallPart::Round, E, 46.0)[0]),
    )
    .sourced(AISC)
    .rounded_to(0.01),
    wall(
        "slenderness_limit_matches_aisc_table_b4_1b_noncompact_at_50_ksi",
        "D/t, noncompact at 50 ksi",
        ["D/t = 0.31 E/F_y", "E = 29000 ksi, F_y = 50 ksi"],
        179.8,
        || Ok(aisc_limits(WallPart::Round, E, 50.0)[1]),
    )
    .sourced(AISC)
    .rounded_to(0.1),
    wall(
        "slenderness_limit_matches_aisc_table_b4_1b_noncompact_at_46_ksi",
        "D/t, noncompact at 46 ksi",
        ["D/t = 0.31 E/F_y", "E = 29000 ksi, F_y = 46 ksi"],
        195.43,
        || Ok(aisc_limits(WallPart::Round, E, 46.0)[1]),
    )
    .sourced(AISC)
    .rounded_to(0.01),
    wall(
        "slenderness_limit_matches_aisc_f8_at_50_ksi",
        "D/t up to which the rules hold at 50 ksi",
        ["D/t = 0.45 E/F_y", "E = 29000 ksi, F_y = 50 ksi"],
        261.0,
        || Ok(aisc_round_reach(E, 50.0)),
    )
    .sourced(AISC)
    .rounded_to(0.1),
    wall(
        "slenderness_limit_matches_en_1993_1_1_table_5_2_class_1_s355",
        "D/t, class 1 of S355",
        ["D/t = 50 · 235 MPa/f_y", "f_y = 355 MPa"],
        33.10,
        || Ok(en_limits(WallPart::Round, 355e6)[0]),
    ),
    wall(
        "slenderness_limit_matches_en_1993_1_1_table_5_2_class_2_s355",
        "D/t, class 2 of S355",
        ["D/t = 70 · 235 MPa/f_y", "f_y = 355 MPa"],
        46.34,
        || Ok(en_limits(WallPart::Round, 355e6)[1]),
    ),
    wall(
        "slenderness_limit_matches_en_1993_1_1_table_5_2_class_3_s355",
        "D/t, class 3 of S355",
        ["D/t = 90 · 235 MPa/f_y", "f_y = 355 MPa"],
        59.58,
        || Ok(en_limits(WallPart::Round, 355e6)[2]),
    ),
    wall(
        "slenderness_limit_matches_en_1993_1_1_table_5_2_class_1_s235",
        "D/t, class 1 of S235",
        ["D/t = 50 · 235 MPa/f_y", "f_y = 235 MPa"],
        50.00,
        || Ok(en_limits(WallPart::Round, 235e6)[0]),
    ),
    wall(
        "slenderness_limit_matches_en_1993_1_1_table_5_2_class_2_s235",
        "D/t, class 2 of S235",
        ["D/t = 70 · 235 MPa/f_y", "f_y = 235 MPa"],
        70.00,
        || Ok(en_limits(WallPart::Round, 235e6)[1]),
    ),
    wall(
        "slenderness_limit_matches_en_1993_1_1_table_5_2_class_3_s235",
        "D/t, class 3 of S235",
        ["D/t = 90 · 235 MPa/f_y", "f_y = 235 MPa"],
        90.00,
        || Ok(en_limits(WallPart::Round, 235e6)[2]),
    ),
    wall(
        "slenderness_limit_matches_en_1993_1_1_table_5_2_class_1_s460",
        "D/t, class 1 of S460",
        ["D/t = 50 · 235 MPa/f_y", "f_y = 460 MPa"],
        25.54,
        || Ok(en_limits(WallPart::Round, 460e6)[0]),
    ),
    wall(
        "slenderness_limit_matches_en_1993_1_1_table_5_2_class_2_s460",
        "D/t, class 2 of S460",
        ["D/t = 70 · 235 MPa/f_y", "f_y = 460 MPa"],
        35.76,
        || Ok(en_limits(WallPart::Round, 460e6)[1]),
    ),
    wall(
        "slenderness_limit_matches_en_1993_1_1_table_5_2_class_3_s460",
        "D/t, class 3 of S460",
        ["D/t = 90 · 235 MPa/f_y", "f_y = 460 MPa"],
        45.98,
        || Ok(en_limits(WallPart::Round, 460e6)[2]),
    ),
];

const fn wall(
    id: &'static str,
    quantity: &'static str,
    basis: Basis,
    reference: f64,
    computed: Compute,
) -> Case {
    let [formula, inputs] = basis;
    Case {
        id,
        topic: "class of a tube's wall",
        quantity,
        unit: "",
        source: EN,
        formula,
        inputs,
        provenance: Provenance::ClosedForm,
        reference,
        tolerance: Tolerance::Absolute(0.5e-2),
        computed,
        difference: None,
    }
}
