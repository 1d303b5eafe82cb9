//! Torsion of solid sections, by triangles.

use std::f64::consts::PI;

use axlebow_sections::shape::Flat;
use axlebow_sections::{Contour, Corner, Outline, SaintVenant};

use crate::beams::beam_line::NU;
use crate::case::{Basis, Case, Compute, Provenance, Tolerance};
use crate::text;

const TIMOSHENKO: &str = "S. P. Timoshenko & J. N. Goodier, Theory of Elasticity, 3rd ed. 1970, ch. 10, table for \
     rectangular bars; series from memory, its value recomputed";
const ROARK: &str = "R. G. Budynas & A. M. Sadegh, Roark's Formulas for Stress and Strain, 9th ed., McGraw-Hill 2020, \
     Table 10.1; formula from memory, its number recomputed";
const TRIANGLES: &str = "the finite size of the triangles moves J by up to a few parts in a hundred thousand";

/// Triangles three times as fine as usual, for a third digit of the peak stress.
const FINENESS: f64 = 3.0;

const CONSTANT: &str = "J/(b a³) = (1 − 192 a/(π⁵ b) Σ tanh(n π b/(2 a))/n⁵)/3, n odd";
const STRESS: &str = "T/(τ b a²) = J/(b a³)/(1 − 8/π² Σ sech(n π b/(2 a))/n²), n odd";

/// The cases.
pub(crate) const CASES: &[Case] = &[
    rectangle(
        "torsion_constant_matches_timoshenko_goodier_rectangle_1",
        "J/(b a³) of a rectangle",
        [CONSTANT, "b/a = 1, a = 1"],
        0.1406,
        || Ok(rectangle_of(1.0)?.torsion_constant / 1.0),
    )
    .rounded_to(0.0001),
    rectangle(
        "torsion_stress_matches_timoshenko_goodier_rectangle_1",
        "T/(τ b a²) of a rectangle",
        [STRESS, "b/a = 1, a = 1"],
        0.208,
        || Ok(rectangle_of(1.0)?.torsion_modulus / 1.0),
    )
    .rounded_to(1e-3),
    rectangle(
        "torsion_constant_matches_timoshenko_goodier_rectangle_1_5",
        "J/(b a³) of a rectangle",
        [CONSTANT, "b/a = 1.5, a = 1"],
        0.196,
        || Ok(rectangle_of(1.5)?.torsion_constant / 1.5),
    )
    .rounded_to(0.001),
    rectangle(
        "torsion_stress_matches_timoshenko_goodier_rectangle_1_5",
        "T/(τ b a²) of a rectangle",
        [STRESS, "b/a = 1.5, a = 1"],
        0.231,
        || Ok(rectangle_of(1.5)?.torsion_modulus / 1.5),
    )
    .rounded_to(1e-3),
    rectangle(
        "torsion_constant_matches_timoshenko_goodier_rectangle_2",
        "J/(b a³) of a rectangle",
        [CONSTANT, "b/a = 2, a = 1"],
        0.229,
        || Ok(rectangle_of(2.0)?.torsion_constant / 2.0),
    )
    .rounded_to(0.001),
    rectangle(
        "torsion_stress_matches_timoshenko_goodier_rectangle_2",
        "T/(τ b a²) of a rectangle",
        [STRESS, "b/a = 2, a = 1"],
        0.246,
        || Ok(rectangle_of(2.0)?.torsion_modulus / 2.0),
    )
    .rounded_to(1e-3),
    rectangle(
        "torsion_constant_matches_timoshenko_goodier_rectangle_3",
        "J/(b a³) of a rectangle",
        [CONSTANT, "b/a = 3, a = 1"],
        0.263,
        || Ok(rectangle_of(3.0)?.torsion_constant / 3.0),
    )
    .rounded_to(0.001),
    rectangle(
        "torsion_stress_matches_timoshenko_goodier_rectangle_3",
        "T/(τ b a²) of a rectangle",
        [STRESS, "b/a = 3, a = 1"],
        0.267,
        || Ok(rectangle_of(3.0)?.torsion_modulus / 3.0),
    )
    .rounded_to(1e-3),
    rectangle(
        "torsion_constant_matches_timoshenko_goodier_rectangle_4",
        "J/(b a³) of a rectangle",
        [CONSTANT, "b/a = 4, a = 1"],
        0.281,
        || Ok(rectangle_of(4.0)?.torsion_constant / 4.0),
    )
    .rounded_to(0.001),
    rectangle(
        "torsion_stress_matches_timoshenko_goodier_rectangle_4",
        "T/(τ b a²) of a rectangle",
        [STRESS, "b/a = 4, a = 1"],
        0.282,
        || Ok(rectangle_of(4.0)?.torsion_modulus / 4.0),
    )
    .rounded_to(1e-3),
    rectangle(
        "torsion_constant_matches_timoshenko_goodier_rectangle_10",
        "J/(b a³) of a rectangle",
        [CONSTANT, "b/a = 10, a = 1"],
        0.312,
        || Ok(rectangle_of(10.0)?.torsion_constant / 10.0),
    )
    .rounded_to(0.001),
    rectangle(
        "torsion_stress_matches_timoshenko_goodier_rectangle_10",
        "T/(τ b a²) of a rectangle",
        [STRESS, "b/a = 10, a = 1"],
        0.312,
        || Ok(rectangle_of(10.0)?.torsion_modulus / 10.0),
    )
    .rounded_to(1e-3),
    rectangle(
        "torsion_constant_matches_roark_table_10_1_equilateral_triangle",
        "J/a⁴ of an equilateral triangle",
        ["J/a⁴ = √3/80", "side a = 1"],
        0.021_650_635_1,
        || Ok(solved(&triangle()?)?.torsion_constant),
    )
    .sourced(ROARK)
    .within(1e-4, TRIANGLES),
    rectangle(
        "torsion_constant_matches_roark_table_10_1_ellipse_2_by_1",
        "J of an ellipse",
        ["J = π a³ b³/(a² + b²)", "half axes a = 2, b = 1"],
        8.0 * PI / 5.0,
        || Ok(solved(&ellipse(2.0, 1.0)?)?.torsion_constant),
    )
    .sourced(ROARK)
    .within(1e-4, TRIANGLES),
];

const fn rectangle(
    id: &'static str,
    quantity: &'static str,
    basis: Basis,
    reference: f64,
    computed: Compute,
) -> Case {
    let [formula, inputs] = basis;
    let tolerance = Tolerance::Absolute(0.0);
    Case {
        id,
        topic: "torsion of a solid section",
        quantity,
        unit: "",
        source: TIMOSHENKO,
        formula,
        inputs,
        provenance: Provenance::ClosedForm,
        reference,
        tolerance,
        computed,
        difference: None,
    }
}

fn solved(outline: &Outline) -> Result<SaintVenant, String> {
    SaintVenant::of_outline(outline, NU, FINENESS).map_err(text)
}

/// A rectangle of short side 1.
fn rectangle_of(ratio: f64) -> Result<SaintVenant, String> {
    solved(&Flat { width: ratio, thickness: 1.0 }.outline().map_err(text)?)
}

fn triangle() -> Result<Outline, String> {
    let corner = |x, z| Corner { x, z, turn: 0.0 };
    let corners = vec![corner(0.0, 0.0), corner(1.0, 0.0), corner(0.5, 0.75_f64.sqrt())];
    Ok(Outline::solid(Contour::new(corners).map_err(text)?))
}

/// An ellipse of half axes a and b as 64 arcs, each turning as the ellipse does.
fn ellipse(a: f64, b: f64) -> Result<Outline, String> {
    let arcs = 64;
    let direction = |i: usize| {
        let (sine, cosine) = (2.0 * PI * i as f64 / arcs as f64).sin_cos();
        (b * cosine).atan2(-a * sine)
    };
    let corner = |i: usize| {
        let (sine, cosine) = (2.0 * PI * i as f64 / arcs as f64).sin_cos();
        let turn = (direction(i + 1) - direction(i)).rem_euclid(2.0 * PI);
        Corner { x: a * cosine, z: b * sine, turn }
    };
    Ok(Outline::solid(Contour::new((0..arcs).map(corner).collect()).map_err(text)?))
}
