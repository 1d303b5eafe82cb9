//! Cantilevers of 40 in under an end load, an end moment and a uniform load.

use crate::beams::beam_line::{BeamLine, BentLine, ROARK_BEAMS, Theory, on_tube};
use crate::case::{Case, Compute, Provenance, Tolerance};

/// Root, a point on the way and tip (in).
const PLACES: [f64; 3] = [0.0, 15.0, 40.0];

const INPUTS: &str = on_tube!("L = 40 in; P = 10000 lbf, w = 100 lbf/in or M = 100000 lbf·in");

/// The cases.
pub(crate) const CASES: &[Case] = &[
    cantilever(
        "deflection_matches_roark_table_8_1_cantilever_end_load",
        "deflection at the end load by bending",
        "y = P L³/(3 E I)",
        0.406_129_43,
        || Ok(end_load(Theory::BendingOnly)?.deflection(2)),
    ),
    cantilever(
        "slope_matches_roark_table_8_1_cantilever_end_load",
        "slope at the end load",
        "θ = P L²/(2 E I)",
        0.015_229_853,
        || Ok(end_load(Theory::WithShear)?.slope(2)),
    )
    .rounded_to(1e-9)
    .measured_in("rad"),
    cantilever(
        "shear_deflection_matches_roark_section_8_10_cantilever_end_load",
        "deflection at the end load added by shear",
        "y = P L/(k G A)",
        0.009_376_58,
        || Ok(end_load(Theory::WithShear)?.deflection(2) - end_load(Theory::BendingOnly)?.deflection(2)),
    ),
    cantilever(
        "deflection_matches_roark_table_8_1_cantilever_uniform_load",
        "deflection of the tip under a uniform load",
        "y = w L⁴/(8 E I)",
        0.060_919_41,
        || Ok(uniform_load()?.deflection(2)),
    ),
    cantilever(
        "slope_matches_roark_table_8_1_cantilever_uniform_load",
        "slope of the tip under a uniform load",
        "θ = w L³/(6 E I)",
        2.030_647_1e-3,
        || Ok(uniform_load()?.slope(2)),
    )
    .rounded_to(1e-10)
    .measured_in("rad"),
    cantilever(
        "deflection_matches_roark_table_8_1_cantilever_end_moment",
        "deflection of the tip under an end moment",
        "y = M L²/(2 E I)",
        0.152_298_53,
        || Ok(end_moment()?.deflection(2)),
    ),
    cantilever(
        "slope_matches_roark_table_8_1_cantilever_end_moment",
        "slope of the tip under an end moment",
        "θ = M L/(E I)",
        7.614_926_7e-3,
        || Ok(end_moment()?.slope(2)),
    )
    .rounded_to(1e-10)
    .measured_in("rad"),
];

const fn cantilever(
    id: &'static str,
    quantity: &'static str,
    formula: &'static str,
    reference: f64,
    computed: Compute,
) -> Case {
    Case {
        id,
        topic: "cantilever",
        quantity,
        unit: "in",
        source: ROARK_BEAMS,
        formula,
        inputs: INPUTS,
        provenance: Provenance::ClosedForm,
        reference,
        tolerance: Tolerance::Absolute(0.5e-8),
        computed,
        difference: None,
    }
}

fn held(theory: Theory) -> Result<BeamLine, String> {
    Ok(BeamLine::of_tube(&PLACES, theory)?.clamped(0))
}

fn end_load(theory: Theory) -> Result<BentLine, String> {
    held(theory)?.forced(&[(2, 10_000.0)])
}

fn uniform_load() -> Result<BentLine, String> {
    held(Theory::BendingOnly)?.loaded(100.0)
}

fn end_moment() -> Result<BentLine, String> {
    held(Theory::WithShear)?.turned(2, 1.0e5)
}
