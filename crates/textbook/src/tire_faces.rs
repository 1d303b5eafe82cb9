//! Tire faces: pressure under a leaning strip, shear of a brush, rolling radius.

use axlebow_tread::{Brush, Carcass, Face, Pose, Tread};

use crate::case::{Basis, Case, Compute, Provenance, Tolerance};
use crate::text;

const BRUSH: &str = "H. B. Pacejka, Tire and Vehicle Dynamics, 3rd ed. 2012, sec. 3.2.1 (brush with parabolic pressure: \
     F/μF_z = 3θσ − 3(θσ)² + (θσ)³); formula from memory, its number recomputed";
const FOOTING: &str = "J. E. Bowles, Foundation Analysis and Design, 5th ed. 1996, ch. 8 (rigid strip on one-sided \
     springs: P/B (1 + 6e/B), past the kern 2P/(3 (B/2 − e))); formula from memory, its number recomputed";
const RADIUS: &str = "R. N. Jazar, Vehicle Dynamics: Theory and Application, 2008, sec. 3.2: R_w = R_g − (R_g − R_h)/3; \
     formula from memory, its number recomputed";

const BRUSH_FORCE: &str = "3 θσ − 3 (θσ)² + (θσ)³";

/// Ribs that stand for a strip.
const MANY: usize = 1000;

/// The cases: P = 100, B = 2, e = 0.25 and 0.5 for the strip.
pub(crate) const CASES: &[Case] = &[
    face(
        "shear_matches_pacejka_3_2_1_quarter",
        "shear over friction limit, θσ = 1/4",
        [BRUSH_FORCE, "θσ = 1/4, stiffness 600, limit 20"],
        0.578_125,
        || shear(0.25),
    ),
    face(
        "shear_matches_pacejka_3_2_1_half",
        "shear over friction limit, θσ = 1/2",
        [BRUSH_FORCE, "θσ = 1/2, stiffness 600, limit 20"],
        0.875,
        || shear(0.5),
    ),
    face(
        "shear_matches_pacejka_3_2_1_three_quarters",
        "shear over friction limit, θσ = 3/4",
        [BRUSH_FORCE, "θσ = 3/4, stiffness 600, limit 20"],
        0.984_375,
        || shear(0.75),
    ),
    face(
        "shear_matches_pacejka_3_2_1_all_sliding",
        "shear over friction limit, θσ = 1",
        [BRUSH_FORCE, "θσ = 1, stiffness 600, limit 20"],
        1.0,
        || shear(1.0),
    ),
    face(
        "edge_pressure_matches_bowles_8_within_the_kern",
        "edge pressure, e = B/8",
        ["P/B (1 + 6 e/B)", "P = 100, B = 2, e = 0.25"],
        87.5,
        || edge_pressure(12.0 * LOAD * 0.25 / (STIFFNESS * WIDTH * WIDTH)),
    )
    .sourced(FOOTING),
    lifted(
        "edge_pressure_matches_bowles_8_past_the_kern",
        "edge pressure, e = B/4, one edge lifted",
        ["2 P/(3 (B/2 − e))", "P = 100, B = 2, e = 0.5"],
        || edge_pressure(2.0 * LOAD * WIDTH / (STIFFNESS * 1.5 * 1.5)),
    ),
    face(
        "rolling_radius_matches_jazar_3_2",
        "rolling radius, R_g = 0.50 m, R_h = 0.47 m",
        ["R_w = R_g − (R_g − R_h)/3", "R_g = 0.50 m, R_h = 0.47 m"],
        0.49,
        || {
            let carcass = Carcass { radius: 0.5, stiffness: 1e6, rated_load: 3e4 };
            let face = Face::new(plain(0.3, 5)?, carcass, &[0.0]).map_err(text)?;
            let pose = Pose { load: 0.03 * 1e6, camber: 0.0, toe: 0.0 };
            Ok(face.rolling(pose).map_err(text)?.radius)
        },
    )
    .measured_in("m")
    .sourced(RADIUS),
];

const LOAD: f64 = 100.0;
const WIDTH: f64 = 2.0;
const STIFFNESS: f64 = 1e6;

const fn face(
    id: &'static str,
    quantity: &'static str,
    basis: Basis,
    reference: f64,
    computed: Compute,
) -> Case {
    let [formula, inputs] = basis;
    Case {
        id,
        topic: "tire face",
        quantity,
        unit: "",
        source: BRUSH,
        formula,
        inputs,
        provenance: Provenance::ClosedForm,
        reference,
        tolerance: Tolerance::Relative { share: 1e-9, reason: None },
        computed,
        difference: None,
    }
}

const fn lifted(id: &'static str, quantity: &'static str, basis: Basis, computed: Compute) -> Case {
    let reason = Some("a thousand ribs in place of a strip: the edge of contact falls within one of them");
    Case {
        tolerance: Tolerance::Relative { share: 1e-5, reason },
        source: FOOTING,
        ..face(id, quantity, basis, 2.0 * LOAD / 1.5, computed)
    }
}

fn plain(width: f64, ribs: usize) -> Result<Tread, String> {
    Ok(Tread { ribs, crown: 0.0, ..Tread::usual(width).map_err(text)? })
}

/// Shear over the friction limit at a share of the slip at which all slides.
fn shear(share: f64) -> Result<f64, String> {
    let brush = Brush { stiffness: 600.0, limit: 20.0 };
    Ok(brush.force(share * 3.0 * brush.limit / brush.stiffness) / brush.limit)
}

/// Pressure at the edge of a strip that leans by a slope.
fn edge_pressure(slope: f64) -> Result<f64, String> {
    let carcass = Carcass { radius: 1.0, stiffness: STIFFNESS, rated_load: LOAD };
    let strip = Face::new(plain(WIDTH, MANY)?, carcass, &[0.0]).map_err(text)?;
    let pressed = strip.pressed(Pose { load: LOAD, camber: slope, toe: 0.0 }).map_err(text)?;
    let deflection = pressed.middle[0] + 0.5 * WIDTH * slope;
    Ok(STIFFNESS / WIDTH * deflection)
}
