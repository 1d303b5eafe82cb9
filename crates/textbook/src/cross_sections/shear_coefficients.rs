//! Shear coefficients of round and box tubes.

use axlebow_sections::{Profile, RectangularTube, RoundBar, RoundTube, shear_coefficient};

use crate::case::{Basis, Case, Compute, Provenance, Tolerance};
use crate::text;

const CONFIRMED: &str = "G. R. Cowper, \"The shear coefficient in Timoshenko's beam theory\", J. Appl. Mech. 33 \
     (1966) 335-340; form confirmed in a second source, its number recomputed";
const RECOMPUTED: &str = "G. R. Cowper, \"The shear coefficient in Timoshenko's beam theory\", J. Appl. Mech. 33 \
     (1966) 335-340; form from memory, its number recomputed";

const CIRCLE: &str = "k = 6 (1 + nu) (1 + m²)²/((7 + 6 nu) (1 + m²)² + (20 + 12 nu) m²)";
const RECTANGLE: &str = "k = 10 (1 + nu)/(12 + 11 nu)";
const BOX: &str = "k = 10 (1 + nu) (1 + 3 n)²/(12 + 72 n + 150 n² + 90 n³ + nu (11 + 66 n + 135 n² + 90 n³) + 10 n² ((3 + nu) n + 3 n²))";

/// The cases.
pub(crate) const CASES: &[Case] = &[
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_solid_poisson_0",
        "m = d/D = 0, nu = 0",
        0.857_143,
        || solid(0.0),
    )
    .sourced(CONFIRMED),
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_solid_poisson_0_25",
        "m = d/D = 0, nu = 0.25",
        0.882_353,
        || solid(0.25),
    )
    .sourced(CONFIRMED),
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_solid_poisson_0_3",
        "m = d/D = 0, nu = 0.3",
        0.886_364,
        || solid(0.3),
    )
    .sourced(CONFIRMED),
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_bore_0_5_poisson_0",
        "m = d/D = 0.5, nu = 0",
        0.588_235,
        || tube(0.5, 0.0),
    ),
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_bore_0_5_poisson_0_25",
        "m = d/D = 0.5, nu = 0.25",
        0.615_764,
        || tube(0.5, 0.25),
    ),
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_bore_0_5_poisson_0_3",
        "m = d/D = 0.5, nu = 0.3",
        0.620_229,
        || tube(0.5, 0.3),
    ),
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_bore_0_6_poisson_0",
        "m = d/D = 0.6, nu = 0",
        0.550_826,
        || tube(0.6, 0.0),
    ),
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_bore_0_6_poisson_0_25",
        "m = d/D = 0.6, nu = 0.25",
        0.577_961,
        || tube(0.6, 0.25),
    ),
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_bore_0_6_poisson_0_3",
        "m = d/D = 0.6, nu = 0.3",
        0.582_375,
        || tube(0.6, 0.3),
    ),
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_bore_0_7_poisson_0",
        "m = d/D = 0.7, nu = 0",
        0.525_660,
        || tube(0.7, 0.0),
    ),
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_bore_0_7_poisson_0_25",
        "m = d/D = 0.7, nu = 0.25",
        0.552_431,
        || tube(0.7, 0.25),
    ),
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_bore_0_7_poisson_0_3",
        "m = d/D = 0.7, nu = 0.3",
        0.556_794,
        || tube(0.7, 0.3),
    ),
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_bore_0_8_poisson_0",
        "m = d/D = 0.8, nu = 0",
        0.510_244,
        || tube(0.8, 0.0),
    ),
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_bore_0_8_poisson_0_25",
        "m = d/D = 0.8, nu = 0.25",
        0.536_752,
        || tube(0.8, 0.25),
    ),
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_bore_0_8_poisson_0_3",
        "m = d/D = 0.8, nu = 0.3",
        0.541_077,
        || tube(0.8, 0.3),
    ),
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_bore_0_9_poisson_0",
        "m = d/D = 0.9, nu = 0",
        0.502_306,
        || tube(0.9, 0.0),
    ),
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_bore_0_9_poisson_0_25",
        "m = d/D = 0.9, nu = 0.25",
        0.528_666,
        || tube(0.9, 0.25),
    ),
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_bore_0_9_poisson_0_3",
        "m = d/D = 0.9, nu = 0.3",
        0.532_969,
        || tube(0.9, 0.3),
    ),
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_thin_poisson_0",
        "m = d/D = 0.999996, nu = 0",
        0.500_000,
        || tube(1.0 - 4e-6, 0.0),
    ),
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_thin_poisson_0_25",
        "m = d/D = 0.999996, nu = 0.25",
        0.526_316,
        || tube(1.0 - 4e-6, 0.25),
    ),
    circle(
        "shear_coefficient_matches_cowper_1966_hollow_circle_thin_poisson_0_3",
        "m = d/D = 0.999996, nu = 0.3",
        0.530_612,
        || tube(1.0 - 4e-6, 0.3),
    ),
    coefficient(
        "shear_coefficient_matches_cowper_1966_rectangle_poisson_0_3",
        "rectangle",
        [RECTANGLE, "nu = 0.3"],
        0.849_673,
        || Ok(shear_coefficient::thin_box(0.0, 0.3)),
    )
    .sourced(CONFIRMED)
    .differing("the limit of two webs without flanges, which is the rectangle's formula"),
    coefficient(
        "shear_coefficient_matches_cowper_1966_square_box_poisson_0_3",
        "thin box, b/h = 1",
        [BOX, "n = b/h = 1 between the middles of the walls, wall 0.01 h, nu = 0.3"],
        0.435_511,
        || boxed(1.0),
    ),
    coefficient(
        "shear_coefficient_matches_cowper_1966_box_0_8_poisson_0_3",
        "thin box, b/h = 0.8",
        [BOX, "n = b/h = 0.8 between the middles of the walls, wall 0.01 h, nu = 0.3"],
        0.501_354,
        || boxed(0.8),
    ),
    coefficient(
        "shear_coefficient_matches_cowper_1966_box_0_5_poisson_0_3",
        "thin box, b/h = 0.5",
        [BOX, "n = b/h = 0.5 between the middles of the walls, wall 0.01 h, nu = 0.3"],
        0.627_655,
        || boxed(0.5),
    ),
];

const fn circle(id: &'static str, inputs: &'static str, reference: f64, computed: Compute) -> Case {
    coefficient(id, "hollow circle", [CIRCLE, inputs], reference, computed)
}

const fn coefficient(
    id: &'static str,
    quantity: &'static str,
    basis: Basis,
    reference: f64,
    computed: Compute,
) -> Case {
    let [formula, inputs] = basis;
    Case {
        id,
        topic: "shear coefficient",
        quantity,
        unit: "",
        source: RECOMPUTED,
        formula,
        inputs,
        provenance: Provenance::ClosedForm,
        reference,
        tolerance: Tolerance::Absolute(0.5e-6),
        computed,
        difference: None,
    }
}

fn solid(poisson_ratio: f64) -> Result<f64, String> {
    let bar = RoundBar::new(1.0).map_err(text)?;
    Ok(Profile::from(bar).properties(poisson_ratio).shear_coefficient_z)
}

fn tube(bore_ratio: f64, poisson_ratio: f64) -> Result<f64, String> {
    let tube = RoundTube::new(1.0, 0.5 * (1.0 - bore_ratio)).map_err(text)?;
    Ok(Profile::from(tube).properties(poisson_ratio).shear_coefficient_z)
}

/// A box of midline height 1 and midline width `side_ratio`.
fn boxed(side_ratio: f64) -> Result<f64, String> {
    let wall = 0.01;
    let tube = RectangularTube::new(side_ratio + wall, 1.0 + wall, wall, 0.0).map_err(text)?;
    Ok(Profile::from(tube).properties(0.3).shear_coefficient_z)
}
