//! The shell obstacle course on meshes that take a moment; `tests/all/obstacle_course.rs` has their convergence.

use crate::case::{Case, Compute, Provenance, Tolerance};
use crate::shells::obstacle_course::{
    TwistedStrip, pinched_cylinder, pinched_hemisphere, scordelis_lo_crown, scordelis_lo_roof,
};

const MACNEAL: &str =
    "R. H. MacNeal & R. L. Harder, Finite Elements in Analysis and Design 1 (1985) 3-20; value from memory";
const LINDBERG: &str = "G. M. Lindberg, M. D. Olson & G. R. Cowper, NRC Canada Quarterly Bulletin DME/NAE 1969(4), by \
     T. Belytschko et al., Comput. Methods Appl. Mech. Eng. 51 (1985) 221-258; value from memory";
const SCORDELIS: &str =
    "A. C. Scordelis & K. S. Lo, ACI Journal 61 (1964) 539-561, by MacNeal & Harder 1985; value from memory";
const SANDERS: &str =
    "thin-shell energy of Koiter and Sanders solved by a Ritz series, recomputed apart from our code";
const STOLARSKI: &str = "T. Belytschko, B. K. Wong & H. Stolarski, Int. J. Numer. Methods Eng. 28 (1989) 385-414; value from memory";
const DEEP: &str = "the thin deep-shell answer is 0.3006, the shallow-shell one 0.3086; the computed one adds transverse shear";
const MESH: &str = "a mesh that takes a moment; tests/all/obstacle_course.rs shows how it converges";
const STRIP: &str = "8 × 48 elements, 0.1 % from their limit; the reference values are of beam theory";

const THICK: TwistedStrip = TwistedStrip { thickness: 0.32, force: 1.0 };
const THIN: TwistedStrip = TwistedStrip { thickness: 0.0032, force: 1e-6 };

const RITZ: &str = "Ritz series of the thin-shell energy of Koiter and Sanders";
const BENCHMARK: &str = "none: benchmark value of the source";
const CYLINDER: &str = "R = 300, L = 600, t = 3, E = 3e6, nu = 0.3, rigid end diaphragms, opposite radial loads of 1 at mid-length";
const ROOF: &str =
    "R = 25, L = 50, 40° each side, t = 0.25, E = 4.32e8, nu = 0, end diaphragms, 90 per area downward";
const HEMISPHERE: &str =
    "R = 10, hole of 18°, t = 0.04, E = 6.825e7, nu = 0.3, loads of 2 out and in, 90° apart on the equator";
const THICK_STRIP: &str =
    "length 12, width 1.1, t = 0.32, twisted by 90°, E = 29e6, nu = 0.22, force 1 on the free end";
const THIN_STRIP: &str =
    "length 12, width 1.1, t = 0.0032, twisted by 90°, E = 29e6, nu = 0.22, force 1e-6 on the free end";

/// The cases.
pub(crate) const CASES: &[Case] = &[
    obstacle("deflection_matches_lindberg_1969_pinched_cylinder", CYLINDER, LINDBERG, 1.8248e-5, || {
        pinched_cylinder(32)
    })
    .within(0.02, "32 × 32 elements in an octant: the dent under the point load is a few elements wide"),
    obstacle("deflection_matches_scordelis_1964_roof", ROOF, SCORDELIS, 0.3024, || scordelis_lo_roof(16))
        .within(0.01, MESH)
        .differing(DEEP),
    ritz("deflection_matches_koiter_sanders_roof", ROOF, 0.300_60, || scordelis_lo_roof(16))
        .within(0.01, MESH),
    ritz("crown_deflection_matches_koiter_sanders_roof", ROOF, 0.045_07, || scordelis_lo_crown(16))
        .within(0.01, MESH),
    obstacle("deflection_matches_macneal_1985_hemisphere_with_hole", HEMISPHERE, MACNEAL, 0.0940, || {
        pinched_hemisphere(16)
    })
    .within(0.01, MESH)
    .differing("the thin-shell answer is 0.0935"),
    ritz("deflection_matches_koiter_sanders_hemisphere_with_hole", HEMISPHERE, 0.093_516, || {
        pinched_hemisphere(16)
    })
    .within(0.005, MESH),
    obstacle(
        "deflection_along_width_matches_macneal_1985_twisted_strip",
        THICK_STRIP,
        MACNEAL,
        5.424e-3,
        || strip(&THICK, 0),
    )
    .within(0.005, STRIP),
    obstacle(
        "deflection_along_thickness_matches_macneal_1985_twisted_strip",
        THICK_STRIP,
        MACNEAL,
        1.754e-3,
        || strip(&THICK, 1),
    )
    .within(0.005, STRIP),
    obstacle(
        "deflection_along_width_matches_belytschko_1989_thin_twisted_strip",
        THIN_STRIP,
        STOLARSKI,
        5.256e-3,
        || strip(&THIN, 0),
    )
    .within(0.005, STRIP),
    obstacle(
        "deflection_along_thickness_matches_belytschko_1989_thin_twisted_strip",
        THIN_STRIP,
        STOLARSKI,
        1.294e-3,
        || strip(&THIN, 1),
    )
    .within(0.005, STRIP),
];

const fn obstacle(
    id: &'static str,
    inputs: &'static str,
    source: &'static str,
    reference: f64,
    computed: Compute,
) -> Case {
    Case {
        id,
        topic: "shell obstacle course",
        quantity: "deflection along the load",
        unit: "",
        source,
        formula: BENCHMARK,
        inputs,
        provenance: Provenance::Recalled,
        reference,
        tolerance: Tolerance::Relative { share: 0.02, reason: Some(MESH) },
        computed,
        difference: None,
    }
}

const fn ritz(id: &'static str, inputs: &'static str, reference: f64, computed: Compute) -> Case {
    let case = obstacle(id, inputs, SANDERS, reference, computed);
    Case { formula: RITZ, provenance: Provenance::Independent, ..case }
}

fn strip(strip: &TwistedStrip, along: usize) -> Result<f64, String> {
    Ok(strip.deflections(8)?[along])
}
