//! Cylinders on end diaphragms under one radial load at mid-length: the local flexibility of a tube's wall.

use std::f64::consts::PI;

use axlebow_fe::Freedom::{Rx, Ry, Rz, Ux, Uy, Uz};
use axlebow_fe::{Attachment, Loads, Wall};

use crate::case::{Case, Compute, Provenance, Tolerance};
use crate::shells::sheet::{Sheet, Side, Surface};

const SERIES: &str = "double Fourier series of the thin-shell energy of Koiter and Sanders, recomputed apart from our code beside Roark's \
     Formulas, 9th ed. 2020, Table 13.3 (0.48 (L/R)^½ (R/t)^1.22, which is up to 18 % above it)";
const DENT: &str = "32 × 32 elements that shrink toward the load in a quarter; a wall with shear gives way more under a point than a thin \
     one, without limit as elements shrink";

/// The cases.
pub(crate) const CASES: &[Case] = &[
    dent(
        "deflection_matches_thin_shell_series_cylinder_50_2",
        "w E t/P under the load for R/t = 50, L/R = 2",
        "R/t = 50, L/R = 2, R = 1, E = 1, P = 1, nu = 0.3, end diaphragms",
        69.67,
        || deflection(50.0, 2.0),
    ),
    dent(
        "deflection_matches_thin_shell_series_cylinder_50_5",
        "w E t/P under the load for R/t = 50, L/R = 5",
        "R/t = 50, L/R = 5, R = 1, E = 1, P = 1, nu = 0.3, end diaphragms",
        115.39,
        || deflection(50.0, 5.0),
    ),
    dent(
        "deflection_matches_thin_shell_series_cylinder_50_10",
        "w E t/P under the load for R/t = 50, L/R = 10",
        "R/t = 50, L/R = 10, R = 1, E = 1, P = 1, nu = 0.3, end diaphragms",
        179.08,
        || deflection(50.0, 10.0),
    ),
    dent(
        "deflection_matches_thin_shell_series_cylinder_100_5",
        "w E t/P under the load for R/t = 100, L/R = 5",
        "R/t = 100, L/R = 5, R = 1, E = 1, P = 1, nu = 0.3, end diaphragms",
        269.53,
        || deflection(100.0, 5.0),
    ),
];

const fn dent(
    id: &'static str,
    quantity: &'static str,
    inputs: &'static str,
    reference: f64,
    computed: Compute,
) -> Case {
    Case {
        id,
        topic: "radially loaded cylinder",
        quantity,
        unit: "",
        source: SERIES,
        formula: "double Fourier series of the thin-shell energy of Koiter and Sanders",
        inputs,
        provenance: Provenance::Independent,
        reference,
        tolerance: Tolerance::Relative { share: 0.02, reason: Some(DENT) },
        computed,
        difference: None,
    }
}

/// w·E·t/P of a cylinder of R = 1 with the given R/t and L/R.
fn deflection(slenderness: f64, length: f64) -> Result<f64, String> {
    let (parts, thickness) = (32, 1.0 / slenderness);
    let normal = |u: f64, _: f64| {
        let angle = PI * closer(u);
        [angle.sin(), 0.0, angle.cos()]
    };
    let place = |u: f64, v: f64| {
        let [x, _, z] = normal(u, v);
        [x, 0.5 * length * closer(v), z]
    };
    let surface = Surface { place: &place, normal: &normal };
    let mut sheet = Sheet::new((parts, parts), &Wall::new(thickness, 1.0, 0.3), &surface)?;
    sheet.hold(Side::FirstU, &[Ux, Ry, Rz]);
    sheet.hold(Side::LastU, &[Ux, Ry, Rz]);
    sheet.hold(Side::FirstV, &[Uy, Rx, Rz]);
    sheet.hold(Side::LastV, &[Ux, Uz]);
    let loaded = sheet.node(0, 0);
    let mut loads = Loads::new(&sheet.structure, 1);
    loads.add_force(0, &Attachment::at(loaded), [0.0, 0.0, -0.25]);
    Ok(-sheet.solved(loads)?.of(loaded, 0)[2] * thickness)
}

/// Shares from 0 to 1 that crowd toward 0.
fn closer(share: f64) -> f64 {
    0.2 * share + 0.8 * share * share
}
