//! Natural frequencies of a round tube with shear and rotary inertia.

use axlebow_fe::Rigidity;
use axlebow_sections::{Profile, RoundTube};

use crate::beams::beam_line::Theory;
use crate::case::{Case, Compute, Provenance, Tolerance};
use crate::text;
use crate::vibration::vibrating_line::{Bar, CANTILEVER, End, FREE, SUPPORTED, VibratingLine};

const TIMOSHENKO: &str = "S. Timoshenko, D. H. Young & W. Weaver, Vibration Problems in Engineering, 4th ed. 1974, \
     art. 5.12; formula from memory, its number recomputed";
const BLEVINS: &str = "R. D. Blevins, Formulas for Dynamics, Acoustics and Vibration, Wiley 2016, Table 4.2; formula \
     from memory, its number recomputed";
const MESH: &str = "20 elements with consistent mass: the frequency comes out (beta h)⁴/1440 too large, which is 4e-7 of the \
     first and 3e-5 of the third";
const SHEAR_MESH: &str = "64 elements with consistent mass: the shear is constant in an element, so that the frequency \
     comes out about (k h)²/24 times the part of the energy in shear too large, which is 5e-6 of the first and \
     3e-4 of the third; on 20 elements it would be 5e-5 and 3e-3";

/// Length (m), elastic modulus (Pa), Poisson's ratio, density (kg/m³).
const L: f64 = 1.2;
const E: f64 = 200e9;
const NU: f64 = 0.3;
const DENSITY: f64 = 7850.0;

const BENDING: &str = "f = (β L)²/(2 π L²) √(E I/(ρ A))";
const SHEARING: &str = "E I κ⁴ − (ρ A + ρ I (1 + E/(k G)) κ²) ω² + ρ² I/(k G) ω⁴ = 0, f = ω/(2 π)";

/// Inputs of a case: its own ones, and those of the tube.
macro_rules! bar {
    ($own:literal) => {
        concat!(
            $own,
            "; L = 1.2 m, tube 127 mm by 12.7 mm, E = 200 GPa, nu = 0.3, ρ = 7850 kg/m³, κ = n π/L, k by Cowper"
        )
    };
}

/// The cases.
pub(crate) const CASES: &[Case] = &[
    hertz("frequency_1_matches_blevins_table_4_2_supported_tube", bar!("β L = π"), 223.873_768, || {
        bending(SUPPORTED, 0)
    }),
    third("frequency_2_matches_blevins_table_4_2_supported_tube", bar!("β L = 2 π"), 895.495_070, || {
        bending(SUPPORTED, 1)
    }),
    third("frequency_3_matches_blevins_table_4_2_supported_tube", bar!("β L = 3 π"), 2_014.863_908, || {
        bending(SUPPORTED, 2)
    }),
    sheared("frequency_1_matches_timoshenko_article_5_12_supported_tube", bar!("n = 1"), 216.914_025, || {
        shearing(0)
    }),
    sheared("frequency_2_matches_timoshenko_article_5_12_supported_tube", bar!("n = 2"), 799.277_549, || {
        shearing(1)
    })
    .within(1e-3, SHEAR_MESH),
    sheared(
        "frequency_3_matches_timoshenko_article_5_12_supported_tube",
        bar!("n = 3"),
        1_613.193_580,
        || shearing(2),
    )
    .within(1e-3, SHEAR_MESH),
    ratio(
        "frequency_ratio_1_matches_timoshenko_article_5_12_supported_tube",
        bar!("n = 1"),
        0.968_912,
        || shear_ratio(0),
    ),
    ratio(
        "frequency_ratio_2_matches_timoshenko_article_5_12_supported_tube",
        bar!("n = 2"),
        0.892_554,
        || shear_ratio(1),
    )
    .within(1e-3, SHEAR_MESH),
    ratio(
        "frequency_ratio_3_matches_timoshenko_article_5_12_supported_tube",
        bar!("n = 3"),
        0.800_646,
        || shear_ratio(2),
    )
    .within(1e-3, SHEAR_MESH),
    hertz(
        "frequency_1_matches_blevins_table_4_2_cantilever_tube",
        bar!("β L = 1.87510407"),
        79.754_320,
        || bending(CANTILEVER, 0),
    ),
    hertz("frequency_1_matches_blevins_table_4_2_free_tube", bar!("β L = 4.73004074"), 507.496_704, || {
        bending(FREE, 0)
    }),
];

const fn hertz(id: &'static str, inputs: &'static str, reference: f64, computed: Compute) -> Case {
    Case {
        id,
        topic: "natural frequency of a tube",
        quantity: "natural frequency",
        unit: "Hz",
        source: BLEVINS,
        formula: BENDING,
        inputs,
        provenance: Provenance::ClosedForm,
        reference,
        tolerance: Tolerance::Relative { share: 1e-5, reason: Some(MESH) },
        computed,
        difference: None,
    }
}

const fn third(id: &'static str, inputs: &'static str, reference: f64, computed: Compute) -> Case {
    hertz(id, inputs, reference, computed).within(1e-3, MESH)
}

const fn sheared(id: &'static str, inputs: &'static str, reference: f64, computed: Compute) -> Case {
    let case = hertz(id, inputs, reference, computed);
    Case { formula: SHEARING, source: TIMOSHENKO, ..case }.within(1e-5, SHEAR_MESH)
}

const fn ratio(id: &'static str, inputs: &'static str, reference: f64, computed: Compute) -> Case {
    let quantity = "natural frequency over that of bending alone";
    let formula =
        "f/f₀: f of E I κ⁴ − (ρ A + ρ I (1 + E/(k G)) κ²) ω² + ρ² I/(k G) ω⁴ = 0, f₀ = κ² √(E I/(ρ A))/(2 π)";
    Case { quantity, formula, ..sheared(id, inputs, reference, computed) }.measured_in("")
}

fn bending(ends: [End; 2], mode: usize) -> Result<f64, String> {
    VibratingLine::new(&tube(Theory::BendingOnly)?, L, 20, ends)?.frequency(mode)
}

fn shearing(mode: usize) -> Result<f64, String> {
    VibratingLine::new(&tube(Theory::WithShear)?, L, 64, SUPPORTED)?.frequency(mode)
}

fn shear_ratio(mode: usize) -> Result<f64, String> {
    Ok(shearing(mode)? / bending(SUPPORTED, mode)?)
}

fn tube(theory: Theory) -> Result<Bar, String> {
    let profile = Profile::from(RoundTube::new(0.127, 0.0127).map_err(text)?);
    let p = profile.properties(NU);
    let ei = E * p.second_moment_x;
    let (shear, rotary_inertia) = match theory {
        Theory::BendingOnly => (f64::INFINITY, 0.0),
        Theory::WithShear => {
            (p.shear_coefficient_z * E / (2.0 * (1.0 + NU)) * p.area, DENSITY * p.second_moment_x)
        }
    };
    let (axial, torsion) = (E * p.area, E * p.torsion_constant);
    let rigidity = Rigidity { axial, torsion, bending_2: ei, bending_3: ei, shear_2: shear, shear_3: shear };
    Ok(Bar { rigidity, mass_per_length: DENSITY * p.area, rotary_inertia })
}
