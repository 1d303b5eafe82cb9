//! Wheel bearings: equivalent load, life, split of the load.

use axlebow_strength::{TaperedRoller, bearing_split};

use crate::case::{Basis, Case, Compute, Provenance, Tolerance};
use crate::text;

const ISO: &str = "ISO 281:2007: (C/P)^(10/3), P = 0.4 F_r + Y F_a past e = 1.5 tan α, Y = 0.4 cot α; formula from \
     memory, its number recomputed";
const THRUST: &str =
    "makers' catalogues: induced thrust 0.5 F_r/Y (common practice, no source); number recomputed";
const LEVER: &str = "lever rule, as in any text on statics; number recomputed";

const BEARING: &str = "C = 120 kN, F_r = 30 kN, F_a = 15 kN, Y = 1.5";

/// The cases: C = 120, F_r = 30, F_a = 15 kN and Y = 1.5.
pub(crate) const CASES: &[Case] = &[
    bearing(
        "axial_limit_matches_iso_281_2007_y_1_5",
        "e",
        ["e = 1.5 tan α, tan α = 0.4/Y", BEARING],
        0.4,
        || Ok(roller()?.axial_limit()),
    )
    .exact()
    .differing("0.266667 had been worked out beforehand, which is tan α itself"),
    bearing(
        "contact_angle_matches_iso_281_2007_y_1_5",
        "Y of a contact angle of 14.9314°",
        ["Y = 0.4 cot α", "α = 14.9314°"],
        1.5,
        || {
            let roller = TaperedRoller::new(120.0, 14.931_4_f64.to_radians()).map_err(text)?;
            Ok(roller.axial_factor())
        },
    )
    .rounded_to(1e-5),
    bearing(
        "equivalent_load_matches_iso_281_2007_with_thrust",
        "equivalent load",
        ["P = 0.4 F_r + Y F_a", BEARING],
        34.5,
        || Ok(roller()?.equivalent_load(30.0, 15.0)),
    )
    .exact()
    .measured_in("kN"),
    bearing(
        "life_matches_iso_281_2007_with_thrust",
        "rating life",
        ["(C/P)^(10/3), P = 0.4 F_r + Y F_a", BEARING],
        63.758_854,
        || {
            let roller = roller()?;
            Ok(roller.rating_life(roller.equivalent_load(30.0, 15.0)))
        },
    )
    .measured_in("Mrev")
    .rounded_to(1e-6),
    bearing(
        "distance_matches_iso_281_2007_with_thrust",
        "distance in the rating life, rolling radius 0.5 m",
        [
            "2 π r (C/P)^(10/3), P = 0.4 F_r + Y F_a",
            "C = 120 kN, F_r = 30 kN, F_a = 15 kN, Y = 1.5, r = 0.5 m",
        ],
        200_304.0,
        || {
            let roller = roller()?;
            Ok(roller.rating_distance(roller.equivalent_load(30.0, 15.0), 0.5) / 1e3)
        },
    )
    .measured_in("km")
    .rounded_to(1.0),
    bearing(
        "life_matches_iso_281_2007_without_thrust",
        "rating life without axial load",
        ["(C/P)^(10/3), P = F_r", "C = 120 kN, F_r = 30 kN"],
        101.593_667,
        || {
            let roller = roller()?;
            Ok(roller.rating_life(roller.equivalent_load(30.0, 0.0)))
        },
    )
    .measured_in("Mrev")
    .rounded_to(1e-6),
    bearing(
        "life_matches_iso_281_2007_at_half_the_rating",
        "rating life at C/P = 2",
        ["(C/P)^(10/3)", "C = 120 kN, P = 60 kN"],
        10.079_368,
        || Ok(roller()?.rating_life(60.0)),
    )
    .measured_in("Mrev")
    .rounded_to(1e-6),
    bearing(
        "life_ratio_matches_iso_281_2007_load_up_a_tenth",
        "life after over life before, load up by a tenth",
        ["(P/P₁)^(10/3)", "P = 30 kN, P₁ = 33 kN"],
        0.727_821,
        || {
            let roller = roller()?;
            Ok(roller.rating_life(33.0) / roller.rating_life(30.0))
        },
    )
    .rounded_to(1e-6),
    bearing(
        "induced_thrust_matches_catalogue_rule_y_1_5",
        "induced thrust",
        ["0.5 F_r/Y", "F_r = 30 kN, Y = 1.5"],
        10.0,
        || Ok(roller()?.induced_thrust(30.0)),
    )
    .exact()
    .measured_in("kN")
    .sourced(THRUST),
    bearing(
        "inner_share_matches_lever_rule_offset_minus_1",
        "share of the inner bearing, load -1 of 5 outboard of the inner",
        ["1 − x/s", "x = −1, s = 5"],
        1.2,
        || share(-1.0, 0),
    )
    .sourced(LEVER),
    bearing(
        "outer_share_matches_lever_rule_offset_minus_1",
        "share of the outer bearing, load -1 of 5 outboard of the inner",
        ["x/s", "x = −1, s = 5"],
        -0.2,
        || share(-1.0, 1),
    )
    .sourced(LEVER),
    bearing(
        "inner_share_matches_lever_rule_offset_0",
        "share of the inner bearing, load 0 of 5 outboard of the inner",
        ["1 − x/s", "x = 0, s = 5"],
        1.0,
        || share(0.0, 0),
    )
    .sourced(LEVER),
    bearing(
        "outer_share_matches_lever_rule_offset_0",
        "share of the outer bearing, load 0 of 5 outboard of the inner",
        ["x/s", "x = 0, s = 5"],
        0.0,
        || share(0.0, 1),
    )
    .sourced(LEVER),
    bearing(
        "inner_share_matches_lever_rule_offset_1",
        "share of the inner bearing, load 1 of 5 outboard of the inner",
        ["1 − x/s", "x = 1, s = 5"],
        0.8,
        || share(1.0, 0),
    )
    .sourced(LEVER),
    bearing(
        "outer_share_matches_lever_rule_offset_1",
        "share of the outer bearing, load 1 of 5 outboard of the inner",
        ["x/s", "x = 1, s = 5"],
        0.2,
        || share(1.0, 1),
    )
    .sourced(LEVER),
    bearing(
        "inner_share_matches_lever_rule_offset_2_5",
        "share of the inner bearing, load 2.5 of 5 outboard of the inner",
        ["1 − x/s", "x = 2.5, s = 5"],
        0.5,
        || share(2.5, 0),
    )
    .sourced(LEVER),
    bearing(
        "outer_share_matches_lever_rule_offset_2_5",
        "share of the outer bearing, load 2.5 of 5 outboard of the inner",
        ["x/s", "x = 2.5, s = 5"],
        0.5,
        || share(2.5, 1),
    )
    .sourced(LEVER),
    bearing(
        "inner_share_matches_lever_rule_offset_4",
        "share of the inner bearing, load 4 of 5 outboard of the inner",
        ["1 − x/s", "x = 4, s = 5"],
        0.2,
        || share(4.0, 0),
    )
    .sourced(LEVER),
    bearing(
        "outer_share_matches_lever_rule_offset_4",
        "share of the outer bearing, load 4 of 5 outboard of the inner",
        ["x/s", "x = 4, s = 5"],
        0.8,
        || share(4.0, 1),
    )
    .sourced(LEVER),
];

const fn bearing(
    id: &'static str,
    quantity: &'static str,
    basis: Basis,
    reference: f64,
    computed: Compute,
) -> Case {
    let [formula, inputs] = basis;
    Case {
        id,
        topic: "wheel bearing",
        quantity,
        unit: "",
        source: ISO,
        formula,
        inputs,
        provenance: Provenance::ClosedForm,
        reference,
        tolerance: Tolerance::Absolute(1e-12),
        computed,
        difference: None,
    }
}

fn roller() -> Result<TaperedRoller, String> {
    TaperedRoller::with_axial_factor(120.0, 1.5).map_err(text)
}

/// Share of the inner (0) or the outer (1) of two bearings 5 apart.
fn share(offset: f64, which: usize) -> Result<f64, String> {
    Ok(bearing_split(5.0, offset).map_err(text)?[which])
}
