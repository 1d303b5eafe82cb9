//! Torsion of closed tubes, a sharp-cornered box, and peaks of transverse shear.

use axlebow_sections::{Profile, RectangularTube, RoundBar, RoundTube, SectionProperties};

use crate::beams::beam_line::{NU, tube};
use crate::case::{Basis, Case, Compute, Provenance, Tolerance};
use crate::text;

const BREDT: &str = "R. Bredt 1896, as in A. P. Boresi & R. J. Schmidt, Advanced Mechanics of Materials, 6th ed. \
     2003, ch. 6; formula from memory, its number recomputed";
const SHEAR: &str = "J. M. Gere & B. J. Goodno, Mechanics of Materials, 8th ed. 2013, ch. 5; confirmed in a second \
     source";

const TUBE: &str = "D = 5 in, t = 0.5 in, T = 100000 lbf·in; A_m = π (D − t)²/4, s = π (D − t), d = D − 2 t";
const BOX: &str = "b = 120 mm, h = 150 mm, t = 8 mm, sharp corners, T = 10 kN·m; A_m = (b − t) (h − t), s = 2 (b + h − 2 t)";

/// The cases.
pub(crate) const CASES: &[Case] = &[
    section(
        "torsion_constant_matches_bredt_1896_tube_5_by_0_5",
        "torsion constant, thin wall",
        ["J = 4 A_m² t/s", TUBE],
        35.784_704,
        || Ok(bredt_tube()?.torsion_constant),
    )
    .rounded_to(1e-6)
    .measured_in("in⁴")
    .differing("run as a rectangular tube of full corners; a round tube takes the exact J, 1.2 % more"),
    section(
        "shear_stress_matches_bredt_1896_tube_5_by_0_5",
        "shear stress, thin wall",
        ["τ = T/(2 A_m t)", TUBE],
        6287.60,
        || Ok(bredt_tube()?.torsion_shear_peak(1e5)),
    )
    .rounded_to(1e-2)
    .measured_in("psi")
    .differing("mean through the wall; a round tube takes the exact peak, 9.8 % more"),
    section(
        "torsion_constant_matches_boresi_schmidt_chapter_6_tube_5_by_0_5",
        "torsion constant, exact",
        ["J = π (D⁴ − d⁴)/32", TUBE],
        36.226_490,
        || Ok(tube()?.properties(NU).torsion_constant),
    )
    .rounded_to(1e-6)
    .measured_in("in⁴"),
    section(
        "shear_stress_matches_boresi_schmidt_chapter_6_tube_5_by_0_5",
        "peak shear stress, exact",
        ["τ = T D/(2 J)", TUBE],
        6901.03,
        || Ok(tube()?.properties(NU).torsion_shear_peak(1e5)),
    )
    .rounded_to(1e-2)
    .measured_in("psi"),
    section(
        "area_matches_boresi_schmidt_box_120_by_150_by_8",
        "area",
        ["A = b h − (b − 2 t) (h − 2 t)", BOX],
        4064.0,
        || Ok(sharp_box()?.area),
    )
    .exact()
    .measured_in("mm²"),
    section(
        "second_moment_x_matches_boresi_schmidt_box_120_by_150_by_8",
        "second moment about X",
        ["I_x = (b h³ − (b − 2 t) (h − 2 t)³)/12", BOX],
        12_897_098.67,
        || Ok(sharp_box()?.second_moment_x),
    )
    .rounded_to(1e-2)
    .measured_in("mm⁴"),
    section(
        "second_moment_z_matches_boresi_schmidt_box_120_by_150_by_8",
        "second moment about Z",
        ["I_z = (h b³ − (h − 2 t) (b − 2 t)³)/12", BOX],
        9_039_018.67,
        || Ok(sharp_box()?.second_moment_z),
    )
    .rounded_to(1e-2)
    .measured_in("mm⁴"),
    section(
        "section_modulus_matches_boresi_schmidt_box_120_by_150_by_8",
        "section modulus about X",
        ["S = 2 I_x/h", BOX],
        171_961.32,
        || Ok(sharp_box()?.section_modulus_x()),
    )
    .rounded_to(1e-2)
    .measured_in("mm³"),
    section(
        "torsion_constant_matches_bredt_1896_box_120_by_150_by_8",
        "torsion constant",
        ["J = 4 A_m² t/s", BOX],
        15_933_052.98,
        || Ok(sharp_box()?.torsion_constant),
    )
    .rounded_to(1e-2)
    .measured_in("mm⁴"),
    section(
        "shear_stress_matches_bredt_1896_box_120_by_150_by_8",
        "shear stress under torque",
        ["τ = T/(2 A_m t)", BOX],
        39.2983,
        || Ok(sharp_box()?.torsion_shear_peak(10e6)),
    )
    .rounded_to(1e-4)
    .measured_in("MPa"),
    section(
        "transverse_shear_peak_matches_gere_goodno_chapter_5_solid_circle",
        "peak over mean shear stress of a solid circle",
        ["Q A/(I b), Q = 2 r³/3, b = 2 r: 4/3", "V = 1, D = 1"],
        4.0 / 3.0,
        || peak_over_mean(&RoundBar::new(1.0).map_err(text)?.into()),
    )
    .exact()
    .sourced(SHEAR),
    section(
        "transverse_shear_peak_matches_gere_goodno_chapter_5_thin_tube",
        "peak over mean shear stress of a thin tube",
        ["Q A/(I b), Q = 2 r² t, b = 2 t: 2", "V = 1, D = 1, t = 1e-6"],
        2.0,
        || peak_over_mean(&RoundTube::new(1.0, 1e-6).map_err(text)?.into()),
    )
    .exact()
    .sourced(SHEAR),
];

const fn section(
    id: &'static str,
    quantity: &'static str,
    basis: Basis,
    reference: f64,
    computed: Compute,
) -> Case {
    let [formula, inputs] = basis;
    Case {
        id,
        topic: "closed section",
        quantity,
        unit: "",
        source: BREDT,
        formula,
        inputs,
        provenance: Provenance::ClosedForm,
        reference,
        tolerance: Tolerance::Absolute(0.0),
        computed,
        difference: None,
    }
}

/// The tube of 5 in by 0.5 in as a thin closed wall.
fn bredt_tube() -> Result<SectionProperties, String> {
    let tube = RectangularTube::new(5.0, 5.0, 0.5, 2.5).map_err(text)?;
    Ok(Profile::from(tube).properties(NU))
}

/// A box 120 wide, 150 high with walls of 8 and sharp corners (mm).
fn sharp_box() -> Result<SectionProperties, String> {
    let tube = RectangularTube::new(120.0, 150.0, 8.0, 0.0).map_err(text)?;
    Ok(Profile::from(tube).properties(NU))
}

fn peak_over_mean(profile: &Profile) -> Result<f64, String> {
    Ok(profile.transverse_shear_peak(0.0, 1.0) * profile.properties(NU).area)
}
