//! The axle case: equal loads on both overhangs of a beam on two seats.

use crate::beams::beam_line::{BeamLine, BentLine, NU, ROARK_BEAMS, Theory, on_tube, tube};
use crate::case::{Case, Compute, Provenance, Tolerance};

/// Load on each end (lbf), downward, so that the middle bows up as in the source.
const P: f64 = 10_000.0;
/// Ends, seats and middle: overhang 18 in, seats 38 in apart.
const PLACES: [f64; 5] = [0.0, 18.0, 37.0, 56.0, 74.0];

const INPUTS: &str =
    on_tube!("P = 10000 lbf on each end, a = 18 in (end to seat), s = 38 in (between seats)");

/// The cases.
pub(crate) const CASES: &[Case] = &[
    axle(
        "moment_between_seats_matches_roark_table_8_1_overhung_axle",
        "moment between the seats",
        "M = P a",
        180_000.0,
        || Ok(-bent(Theory::WithShear)?.moment(1)),
    )
    .exact()
    .measured_in("lbf·in"),
    axle(
        "fiber_stress_matches_roark_table_8_1_overhung_axle",
        "extreme-fiber bending stress between the seats",
        "σ = P a c/I",
        24_843.70,
        || {
            let (profile, moment) = (tube()?, bent(Theory::WithShear)?.moment(1));
            Ok(profile.fiber_stress(&profile.properties(NU), 0.0, moment, 0.0).0)
        },
    )
    .rounded_to(1e-2)
    .measured_in("psi"),
    axle(
        "slope_at_load_matches_roark_table_8_1_overhung_axle",
        "slope at the load",
        "θ = P a (s + a)/(2 E I)",
        9.594_807_7e-3,
        || Ok(bent(Theory::BendingOnly)?.slope(0)),
    )
    .rounded_to(1e-10)
    .measured_in("rad"),
    axle(
        "camber_change_matches_roark_table_8_1_overhung_axle",
        "slope at the load as camber change of a side",
        "θ = P a (s + a)/(2 E I), in degrees",
        0.549_742_0,
        || Ok(bent(Theory::BendingOnly)?.slope(0).to_degrees()),
    )
    .rounded_to(1e-7)
    .measured_in("deg"),
    axle(
        "slope_at_seat_matches_roark_table_8_1_overhung_axle",
        "slope at the seat",
        "θ = P a s/(2 E I)",
        6.510_762_3e-3,
        || Ok(bent(Theory::BendingOnly)?.slope(1)),
    )
    .rounded_to(1e-10)
    .measured_in("rad"),
    axle(
        "deflection_at_load_matches_roark_table_8_1_overhung_axle",
        "deflection at the load by bending",
        "w = P a² (2 a + 3 s)/(6 E I)",
        0.154_202_27,
        || Ok(-bent(Theory::BendingOnly)?.deflection(0)),
    ),
    axle(
        "shear_deflection_at_load_matches_roark_section_8_10_overhung_axle",
        "deflection at the load added by shear",
        "w = P a/(k G A)",
        0.004_219_46,
        || Ok(bent(Theory::BendingOnly)?.deflection(0) - bent(Theory::WithShear)?.deflection(0)),
    ),
    axle(
        "upward_bow_matches_roark_table_8_1_overhung_axle",
        "upward bow at mid-span",
        "w = P a s²/(8 E I)",
        0.061_852_24,
        || Ok(bent(Theory::WithShear)?.deflection(2)),
    ),
];

const fn axle(
    id: &'static str,
    quantity: &'static str,
    formula: &'static str,
    reference: f64,
    computed: Compute,
) -> Case {
    Case {
        id,
        topic: "overhung axle",
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

fn bent(theory: Theory) -> Result<BentLine, String> {
    BeamLine::of_tube(&PLACES, theory)?.supported(1).supported(3).forced(&[(0, -P), (4, -P)])
}
