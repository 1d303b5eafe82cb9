//! Plates, rings and cylinders of shells against closed forms of bending and buckling.

use std::f64::consts::{FRAC_PI_2, PI};

use axlebow_fe::Freedom::{self, Rx, Ry, Rz, Ux, Uy, Uz};
use axlebow_fe::{Attachment, Displacements, Face, Loads, Spring, Wall, buckling};

use crate::case::{Basis, Case, Compute, Provenance, Tolerance};
use crate::shells::sheet::{Sheet, Side, Surface};
use crate::text;

const PLATES: &str = "S. Timoshenko & S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. 1959, Table 8; series \
     from memory, its value recomputed";
const CLAMPED: &str = "S. Timoshenko & S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. 1959, Table 35; value from memory";
const STABILITY: &str = "S. P. Timoshenko & J. M. Gere, Theory of Elastic Stability, 2nd ed. 1961, ch. 9 and 11; formulas from memory, their values recomputed";
const RINGS: &str = "S. Timoshenko, Strength of Materials, Part I, 3rd ed. 1955; Roark's Formulas, 9th ed. 2020, Table 9.2 case 1; \
     coefficients recomputed";
const PLATE_MESH: &str = "16 × 16 elements in a quarter; shear adds (t/a)² · 5 = 0.05 % at t = a/100";
const BUCKLED: &str = "24 × 24 elements; shear takes off 0.04 % at t = b/100";
const SHEARED: &str =
    "24 × 24 elements, 1.1 % above; the oblique waves are shorter, and 36 × 36 come within 0.3 %";
const WAVES: &str =
    "24 elements a half-wave; curvature of the wall over its thickness and shear count for t/R = 0.5 %";
const RING_MESH: &str = "48 elements in a quarter; hoop and shear flexibility add (t/R)² · 5 = 0.05 %";

/// Elastic modulus and Poisson's ratio of all but the ring.
const E: f64 = 200e9;
const NU: f64 = 0.3;
/// Thickness of a plate of side 1.
const T: f64 = 0.01;

const TABLE: &str = "none: value of the table";
const PLATE: &str = "a = 1 m, t = 0.01 m, E = 200 GPa, nu = 0.3, q = 1000 Pa";
const BUCKLED_PLATE: &str =
    "a = b = 1 m, t = 0.01 m, E = 200 GPa, nu = 0.3; σ = k π² D/(b² t), D = E t³/(12 (1 − nu²))";
const RING: &str = "R = 100, t = 1, E = 200e9, nu = 0";

/// The cases.
pub(crate) const CASES: &[Case] = &[
    plate(
        "deflection_matches_timoshenko_table_8_supported_plate",
        "w D/(q a⁴) at the center",
        ["w D/(q a⁴) = 16/π⁶ ΣΣ sin(m π/2) sin(n π/2)/(m n (m² + n²)²), m and n odd", PLATE],
        0.004_06,
        || bent(Edges::Supported).map(|[w, _, _]| w),
    )
    .rounded_to(1e-5),
    plate(
        "moment_matches_timoshenko_table_8_supported_plate",
        "M/(q a²) at the center",
        ["M/(q a²) = 16/π⁴ ΣΣ (m² + nu n²) sin(m π/2) sin(n π/2)/(m n (m² + n²)²), m and n odd", PLATE],
        0.0479,
        || bent(Edges::Supported).map(|[_, center, _]| center),
    )
    .rounded_to(1e-4),
    clamped(
        "deflection_matches_timoshenko_table_35_clamped_plate",
        "w D/(q a⁴) at the center",
        [TABLE, PLATE],
        0.001_26,
        || bent(Edges::Clamped).map(|[w, _, _]| w),
    )
    .within(6e-3, "later solutions give 0.001265; shear adds 0.2 % at t = a/100"),
    clamped(
        "moment_matches_timoshenko_table_35_clamped_plate",
        "M/(q a²) at the center",
        [TABLE, PLATE],
        0.0231,
        || bent(Edges::Clamped).map(|[_, center, _]| center),
    )
    .within(0.01, "later solutions give 0.0229 by a finer series"),
    clamped(
        "edge_moment_matches_timoshenko_table_35_clamped_plate",
        "M/(q a²) at mid-edge",
        [TABLE, PLATE],
        -0.0513,
        || bent(Edges::Clamped).map(|[_, _, edge]| edge),
    )
    .within(0.02, "extrapolated to the edge from points inside, where the moment falls steeply"),
    buckled(
        "factor_matches_timoshenko_chapter_9_pressed_plate",
        "k of a square plate pressed one way",
        ["k = (m b/a + a/(m b))², m = 1", BUCKLED_PLATE],
        4.0,
        || plate_factor([[-1.0, 0.0], [0.0, 0.0]]),
    )
    .within(5e-3, BUCKLED),
    buckled(
        "factor_matches_timoshenko_chapter_9_plate_pressed_both_ways",
        "k of a square plate pressed both ways",
        ["k = 2", BUCKLED_PLATE],
        2.0,
        || plate_factor([[-1.0, 0.0], [0.0, -1.0]]),
    )
    .within(5e-3, BUCKLED),
    buckled(
        "factor_matches_timoshenko_chapter_9_sheared_plate",
        "k of a square plate in shear",
        ["k = 5.34 + 4 (b/a)²", BUCKLED_PLATE],
        9.34,
        || plate_factor([[0.0, 1.0], [1.0, 0.0]]),
    )
    .within(0.015, SHEARED),
    buckled(
        "stress_matches_timoshenko_chapter_11_pressed_cylinder",
        "critical stress R √(3(1 − nu²))/(E t)",
        ["σ = E t/(R √(3 (1 − nu²)))", "t = 0.01 m, R = 200 t, E = 200 GPa, nu = 0.3"],
        1.0,
        cylinder_factor,
    )
    .within(0.01, WAVES),
    ring(
        "shortening_matches_timoshenko_part_1_ring",
        "shortening along the loads, E I/(P R³)",
        ["π/4 − 2/π", RING],
        0.148_778,
        || pinched_ring().map(|[along, _]| along),
    ),
    ring(
        "lengthening_matches_timoshenko_part_1_ring",
        "lengthening across the loads, E I/(P R³)",
        ["2/π − 1/2", RING],
        0.136_620,
        || pinched_ring().map(|[_, across]| across),
    ),
];

const fn plate(
    id: &'static str,
    quantity: &'static str,
    basis: Basis,
    reference: f64,
    computed: Compute,
) -> Case {
    let [formula, inputs] = basis;
    let tolerance = Tolerance::Relative { share: 5e-3, reason: Some(PLATE_MESH) };
    Case {
        id,
        topic: "bent and buckled walls",
        quantity,
        unit: "",
        source: PLATES,
        formula,
        inputs,
        provenance: Provenance::ClosedForm,
        reference,
        tolerance,
        computed,
        difference: None,
    }
}

const fn clamped(
    id: &'static str,
    quantity: &'static str,
    basis: Basis,
    reference: f64,
    computed: Compute,
) -> Case {
    plate(id, quantity, basis, reference, computed).sourced(CLAMPED).with_provenance(Provenance::Recalled)
}

const fn buckled(
    id: &'static str,
    quantity: &'static str,
    basis: Basis,
    reference: f64,
    computed: Compute,
) -> Case {
    plate(id, quantity, basis, reference, computed).sourced(STABILITY)
}

const fn ring(
    id: &'static str,
    quantity: &'static str,
    basis: Basis,
    reference: f64,
    computed: Compute,
) -> Case {
    plate(id, quantity, basis, reference, computed).sourced(RINGS).within(2e-3, RING_MESH)
}

#[derive(Clone, Copy, PartialEq)]
enum Edges {
    Supported,
    Clamped,
}

fn rigidity() -> f64 {
    E * T * T * T / (12.0 * (1.0 - NU * NU))
}

/// A flat wall of the given sides in the XY plane.
fn flat(parts: (usize, usize), [length, width]: [f64; 2], wall: &Wall) -> Result<Sheet, String> {
    let (place, normal) = (|u: f64, v: f64| [length * u, width * v, 0.0], |_: f64, _: f64| [0.0, 0.0, 1.0]);
    Sheet::new(parts, wall, &Surface { place: &place, normal: &normal })
}

/// A quarter of a square plate of side 1 under pressure: deflection and moment at the center, moment at mid-edge,
/// made dimensionless.
fn bent(edges: Edges) -> Result<[f64; 3], String> {
    let parts = 16;
    let mut sheet = flat((parts, parts), [0.5, 0.5], &Wall::new(T, E, NU))?;
    sheet.hold(Side::FirstU, &[Ux, Ry, Rz]);
    sheet.hold(Side::FirstV, &[Uy, Rx, Rz]);
    let (far_u, far_v): (&[Freedom], &[Freedom]) = match edges {
        Edges::Supported => (&[Uz, Rx], &[Uz, Ry]),
        Edges::Clamped => (&Freedom::ALL, &Freedom::ALL),
    };
    sheet.hold(Side::LastU, far_u);
    sheet.hold(Side::LastV, far_v);
    let mut loads = Loads::new(&sheet.structure, 1);
    for shell in &sheet.shells {
        loads.add_pressure(&sheet.structure, 0, *shell, 1000.0);
    }
    let displacements = sheet.solved(loads)?;
    let state = displacements.state(&sheet.structure, 0);
    let deflection = displacements.of(sheet.node(0, 0), 0)[2] * rigidity() / 1000.0;
    let center = state.wall_forces_at_corners(sheet.shells[0])[0].bending[0] / 1000.0;
    let stress = state.face_stress(&sheet.shells, Face::Upper)[&sheet.node(parts, 0)][0][0];
    Ok([deflection, center, stress * T * T / 6.0 / 1000.0])
}

/// k of σ = k·π²·D/(b²·t) for a square plate of side 1 under edge loads per length: rows are the loads on the edges of
/// normal X and Y.
fn plate_factor([on_x, on_y]: [[f64; 2]; 2]) -> Result<f64, String> {
    let parts = 24;
    let mut sheet = flat((parts, parts), [1.0, 1.0], &Wall::new(T, E, NU))?;
    sheet.hold(Side::FirstU, &[Uz, Rx]);
    sheet.hold(Side::LastU, &[Uz, Rx]);
    sheet.hold(Side::FirstV, &[Uz, Ry]);
    sheet.hold(Side::LastV, &[Uz, Ry]);
    let (corner, next) = (sheet.node(0, 0), sheet.node(parts, 0));
    sheet.structure.hold(corner, &[Ux, Uy]);
    sheet.structure.hold(next, &[Uy]);
    let displacements = sheet.solved(edge_loads(&sheet, parts, [on_x, on_y]))?;
    Ok(lowest_factor(&sheet, &displacements)? / (PI * PI * rigidity()))
}

/// Loads per length on all four edges of a plate of `parts` × `parts`, in balance.
fn edge_loads(sheet: &Sheet, parts: usize, [on_x, on_y]: [[f64; 2]; 2]) -> Loads {
    let mut loads = Loads::new(&sheet.structure, 1);
    for i in 0..parts {
        let edges = [
            (i, 0, on_y.map(|q| -q)),
            (i * parts + parts - 1, 1, on_x),
            ((parts - 1) * parts + i, 2, on_y),
            (i * parts, 3, on_x.map(|q| -q)),
        ];
        for (shell, edge, [x, y]) in edges {
            loads.add_edge_load(&sheet.structure, 0, (sheet.shells[shell], edge), [x, y, 0.0]);
        }
    }
    loads
}

/// Critical axial stress of a cylinder of R = 200 t over the classical one: a strip of the cylinder between planes of
/// symmetry, two half-waves π·√(R·t)/(12(1 − ν²))^¼ long, whose ends may move outward but not tilt.
fn cylinder_factor() -> Result<f64, String> {
    let (radius, angle, parts) = (200.0 * T, 0.02, (1, 48));
    let length = 2.0 * PI * (radius * T).sqrt() / (12.0 * (1.0 - NU * NU)).powf(0.25);
    let normal = |u: f64, _: f64| [(angle * u).sin(), 0.0, (angle * u).cos()];
    let place = |u: f64, v: f64| [radius * (angle * u).sin(), length * v, radius * (angle * u).cos()];
    let mut sheet = Sheet::new(parts, &Wall::new(T, E, NU), &Surface { place: &place, normal: &normal })?;
    sheet.hold(Side::FirstU, &[Ux, Ry, Rz]);
    sheet.hold(Side::FirstV, &[Uy, Rx, Rz]);
    sheet.hold(Side::LastV, &[Rx, Rz]);
    let (sin, cos) = angle.sin_cos();
    hold_to_plane(&mut sheet, Side::LastU, [cos, 0.0, -sin])?;
    let mut loads = Loads::new(&sheet.structure, 1);
    let last = sheet.shells[parts.0 * parts.1 - 1];
    loads.add_edge_load(&sheet.structure, 0, (last, 2), [0.0, -T, 0.0]);
    let displacements = sheet.solved(loads)?;
    let classical = E * T / (radius * (3.0 * (1.0 - NU * NU)).sqrt());
    Ok(lowest_factor(&sheet, &displacements)? / classical)
}

/// Holds a side to a plane of symmetry that stands askew: springs a thousand times as stiff as the wall.
fn hold_to_plane(sheet: &mut Sheet, side: Side, normal: [f64; 3]) -> Result<(), String> {
    let (moved, turned) = (1e3 * E * T, 1e3 * E * T * T * T);
    let along = |i: usize, j: usize| normal[i] * normal[j];
    let across = |i: usize, j: usize| f64::from(u8::from(i == j)) - along(i, j);
    let stiffness = std::array::from_fn(|i| {
        std::array::from_fn(|j| match (i < 3, j < 3) {
            (true, true) => moved * along(i, j),
            (false, false) => turned * across(i - 3, j - 3),
            _ => 0.0,
        })
    });
    for node in sheet.side(side) {
        let spring = Spring { near: Attachment::at(node), far: None, stiffness };
        sheet.structure.add_spring(spring).map_err(text)?;
    }
    Ok(())
}

fn lowest_factor(sheet: &Sheet, displacements: &Displacements) -> Result<f64, String> {
    let found = buckling(&displacements.state(&sheet.structure, 0), 1).map_err(text)?;
    found.modes.first().map(|mode| mode.factor).ok_or_else(|| "nothing buckles".to_owned())
}

/// A quarter of a ring, R = 100, t = 1, two wide, without Poisson's ratio, pressed together by loads P: E·I/(P·R³) times
/// its shortening along them and its lengthening across them.
fn pinched_ring() -> Result<[f64; 2], String> {
    let (radius, thickness, parts) = (100.0, 1.0, (48, 1));
    let normal = |u: f64, _: f64| [(FRAC_PI_2 * u).sin(), 0.0, (FRAC_PI_2 * u).cos()];
    let place = |u: f64, v: f64| [radius * normal(u, v)[0], 2.0 * v, radius * normal(u, v)[2]];
    let mut sheet =
        Sheet::new(parts, &Wall::new(thickness, E, 0.0), &Surface { place: &place, normal: &normal })?;
    sheet.hold(Side::FirstU, &[Ux, Ry, Rz]);
    sheet.hold(Side::LastU, &[Uz, Rx, Ry]);
    sheet.hold(Side::FirstV, &[Uy, Rx, Rz]);
    let mut loads = Loads::new(&sheet.structure, 1);
    for j in [0, 1] {
        loads.add_force(0, &Attachment::at(sheet.node(0, j)), [0.0, 0.0, -0.25]);
    }
    let displacements = sheet.solved(loads)?;
    let second_moment = 2.0 * thickness.powi(3) / 12.0;
    let scale = 2.0 * E * second_moment / f64::powi(radius, 3);
    let along = -displacements.of(sheet.node(0, 0), 0)[2] * scale;
    Ok([along, displacements.of(sheet.node(parts.0, 0), 0)[0] * scale])
}
