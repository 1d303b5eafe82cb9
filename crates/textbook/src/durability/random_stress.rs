//! Fatigue under a random stress of known spectrum.

use axlebow_strength::{LifeCurve, RangeDistribution, SpectralMoments, StressSpectrum};

use crate::case::{Basis, Case, Compute, Provenance, Tolerance};
use crate::text;

const MILES: &str = "J. W. Miles, J. Aeronaut. Sci. 21 (1954) 753-762: E[S^m] = (2√2 σ)^m Γ(1 + m/2); formula from \
     memory, its number recomputed";
const DIRLIK: &str = "T. Dirlik, PhD thesis, Univ. of Warwick 1985, on a flat spectrum of 250 MPa²/Hz from 5 to 15 Hz; \
     formula from memory, its number recomputed";
const RICE: &str = "S. O. Rice, Bell Syst. Tech. J. 24 (1945) 46-156, on a flat spectrum of 250 MPa²/Hz from 5 to 15 \
     Hz; formula from memory, its number recomputed";
const SIMULATED: &str = "rainflow by ASTM E1049 of a simulated Gaussian history of 2²⁰ points at 200 Hz, flat from 5 to \
     15 Hz; a simulation by the authors of this program";
const SCATTER_3: &str =
    "Dirlik's formula is a fit, and one history of 5000 s scatters by about 1 % in this moment";
const SCATTER_5: &str = "Dirlik's formula is a fit, poorer in the tail that the fifth power weighs, and one history of \
     5000 s scatters by some per cent there";

const MOMENT: &str = "m_n = ∫ f^n G df";
const POWER: &str = "E[S^m] = (2√m0)^m (D1 Q^m Γ(1 + m) + √2^m Γ(1 + m/2) (D2 |R|^m + D3))";
const DIRLIK_RATE: &str = "√(m4/m2) E[S^m] of Dirlik";
const MILES_RATE: &str = "√(m2/m0) (2√2 √m0)^m Γ(1 + m/2)";
const RATIO: &str = "√(m4/m2) E[S^m] of Dirlik over √(m2/m0) (2√2 √m0)^m Γ(1 + m/2)";

/// Inputs of a case on the flat spectrum: its own ones, and the spectrum.
macro_rules! flat {
    ($own:literal) => {
        concat!($own, "; G = 250 MPa²/Hz from 5 Hz to 15 Hz")
    };
}
const FLAT: &str = "G = 250 MPa²/Hz from 5 Hz to 15 Hz";

/// The cases.
pub(crate) const CASES: &[Case] = &[
    random(
        "mean_power_matches_miles_1954_rms_50",
        "E[S³], narrow band of 50 MPa",
        ["E[S^m] = (2√2 σ)^m Γ(1 + m/2)", "σ = 50 MPa, m = 3"],
        3_759_942.41,
        || Ok(RangeDistribution::narrow_band(&narrow()).mean_power(3.0)),
    )
    .sourced(MILES)
    .measured_in("MPa³")
    .rounded_to(1e-2),
    random(
        "damage_matches_miles_1954_rms_50_category_71",
        "damage per hour, narrow band of 50 MPa, 10 Hz, category 71",
        ["3600 f E[S³]/K, E[S^m] = (2√2 σ)^m Γ(1 + m/2)", "σ = 50 MPa, f = 10 Hz, K = 2e6 (71 MPa)³"],
        0.189_094_39,
        || {
            let curve = LifeCurve::through(71.0, 2e6, 3.0).map_err(text)?;
            Ok(3600.0 * RangeDistribution::narrow_band(&narrow()).damage_rate(&curve))
        },
    )
    .sourced(MILES)
    .measured_in("1/h")
    .rounded_to(1e-8),
    random(
        "spectral_moment_matches_rice_1945_flat_m0",
        "spectral moment m0",
        [MOMENT, FLAT],
        2_500.0,
        || Ok(flat()?.m0),
    )
    .sourced(RICE)
    .measured_in("MPa²")
    .exact(),
    random(
        "spectral_moment_matches_rice_1945_flat_m1",
        "spectral moment m1",
        [MOMENT, FLAT],
        25_000.0,
        || Ok(flat()?.m1),
    )
    .sourced(RICE)
    .measured_in("MPa² Hz")
    .exact(),
    random(
        "spectral_moment_matches_rice_1945_flat_m2",
        "spectral moment m2",
        [MOMENT, FLAT],
        270_833.333,
        || Ok(flat()?.m2),
    )
    .sourced(RICE)
    .measured_in("MPa² Hz²")
    .rounded_to(0.001),
    random(
        "spectral_moment_matches_rice_1945_flat_m4",
        "spectral moment m4",
        [MOMENT, FLAT],
        37_812_500.0,
        || Ok(flat()?.m4),
    )
    .sourced(RICE)
    .measured_in("MPa² Hz⁴")
    .exact(),
    random(
        "upcrossing_rate_matches_rice_1945_flat",
        "upcrossings of the mean",
        ["√(m2/m0)", FLAT],
        10.408_330,
        || Ok(flat()?.upcrossing_rate()),
    )
    .sourced(RICE)
    .measured_in("Hz")
    .rounded_to(1e-06),
    random("peak_rate_matches_rice_1945_flat", "peaks", ["√(m4/m2)", FLAT], 11.815_895, || {
        Ok(flat()?.peak_rate())
    })
    .sourced(RICE)
    .measured_in("Hz")
    .rounded_to(1e-06),
    random(
        "regularity_matches_rice_1945_flat",
        "upcrossings over peaks",
        ["γ = m2/√(m0 m4)", FLAT],
        0.880_875_26,
        || Ok(flat()?.regularity()),
    )
    .sourced(RICE)
    .measured_in("")
    .rounded_to(1e-08),
    random(
        "mean_over_peak_rate_matches_dirlik_1985_flat",
        "x_m",
        ["x_m = (m1/m0) √(m2/m4)", FLAT],
        0.846_317_58,
        || Ok(flat()?.mean_over_peak_rate()),
    )
    .measured_in("")
    .rounded_to(1e-08),
    random(
        "weight_1_matches_dirlik_1985_flat",
        "D1",
        ["D1 = 2 (x_m − γ²)/(1 + γ²)", FLAT],
        0.079_255_27,
        || Ok(dirlik()?.coefficients().0[0]),
    )
    .measured_in("")
    .rounded_to(1e-08),
    random(
        "weight_2_matches_dirlik_1985_flat",
        "D2",
        ["D2 = (1 − γ − D1 + D1²)/(1 − R)", FLAT],
        0.119_158_19,
        || Ok(dirlik()?.coefficients().0[1]),
    )
    .measured_in("")
    .rounded_to(1e-08),
    random("weight_3_matches_dirlik_1985_flat", "D3", ["D3 = 1 − D1 − D2", FLAT], 0.801_586_54, || {
        Ok(dirlik()?.coefficients().0[2])
    })
    .measured_in("")
    .rounded_to(1e-08),
    random(
        "exponential_width_matches_dirlik_1985_flat",
        "Q",
        ["Q = 1.25 (γ − D3 − D2 R)/D1", FLAT],
        0.099_069_08,
        || Ok(dirlik()?.coefficients().1),
    )
    .measured_in("")
    .rounded_to(1e-08),
    random(
        "rayleigh_width_matches_dirlik_1985_flat",
        "R",
        ["R = (γ − x_m − D1²)/(1 − γ − D1 + D1²)", FLAT],
        0.612_692_46,
        || Ok(dirlik()?.coefficients().2),
    )
    .measured_in("")
    .rounded_to(1e-08),
    random(
        "mean_power_matches_dirlik_1985_flat_slope_3",
        "E[S^3]",
        [POWER, flat!("m = 3")],
        3_117_427.98,
        || Ok(dirlik()?.mean_power(3.0)),
    )
    .measured_in("MPa^3")
    .rounded_to(0.01),
    random(
        "damage_rate_matches_dirlik_1985_flat_slope_3",
        "peaks times E[S^3]",
        [DIRLIK_RATE, flat!("m = 3")],
        36_835_202.9,
        || rate(dirlik()?, 3.0),
    )
    .measured_in("MPa^3/s")
    .rounded_to(0.1),
    random(
        "damage_rate_matches_miles_1954_flat_slope_3",
        "upcrossings times E[S^3] of a narrow band",
        [MILES_RATE, flat!("m = 3")],
        39_134_721.4,
        || rate(RangeDistribution::narrow_band(&flat()?), 3.0),
    )
    .sourced(MILES)
    .measured_in("MPa^3/s")
    .rounded_to(0.1),
    random(
        "damage_ratio_matches_dirlik_1985_flat_slope_3",
        "damage over that of a narrow band, slope 3",
        [RATIO, flat!("m = 3")],
        0.941_241,
        || Ok(rate(dirlik()?, 3.0)? / rate(RangeDistribution::narrow_band(&flat()?), 3.0)?),
    )
    .measured_in("")
    .rounded_to(1e-06),
    random(
        "damage_rate_matches_simulated_rainflow_flat_slope_3",
        "peaks times E[S^3] against a simulation",
        ["Σ S^m over the rainflow ranges S of the history, for each second", flat!("m = 3")],
        36.987e6,
        || rate(dirlik()?, 3.0),
    )
    .sourced(SIMULATED)
    .with_provenance(Provenance::Independent)
    .measured_in("MPa^3/s")
    .within(0.05, SCATTER_3),
    random(
        "mean_power_matches_dirlik_1985_flat_slope_5",
        "E[S^5]",
        [POWER, flat!("m = 5")],
        1.526_310_08e11,
        || Ok(dirlik()?.mean_power(5.0)),
    )
    .measured_in("MPa^5")
    .rounded_to(1e3),
    random(
        "damage_rate_matches_dirlik_1985_flat_slope_5",
        "peaks times E[S^5]",
        [DIRLIK_RATE, flat!("m = 5")],
        1.803_472_03e12,
        || rate(dirlik()?, 5.0),
    )
    .measured_in("MPa^5/s")
    .rounded_to(1e4),
    random(
        "damage_rate_matches_miles_1954_flat_slope_5",
        "upcrossings times E[S^5] of a narrow band",
        [MILES_RATE, flat!("m = 5")],
        1.956_736_07e12,
        || rate(RangeDistribution::narrow_band(&flat()?), 5.0),
    )
    .sourced(MILES)
    .measured_in("MPa^5/s")
    .rounded_to(1e4),
    random(
        "damage_ratio_matches_dirlik_1985_flat_slope_5",
        "damage over that of a narrow band, slope 5",
        [RATIO, flat!("m = 5")],
        0.921_674,
        || Ok(rate(dirlik()?, 5.0)? / rate(RangeDistribution::narrow_band(&flat()?), 5.0)?),
    )
    .measured_in("")
    .rounded_to(1e-06),
    random(
        "damage_rate_matches_simulated_rainflow_flat_slope_5",
        "peaks times E[S^5] against a simulation",
        ["Σ S^m over the rainflow ranges S of the history, for each second", flat!("m = 5")],
        1.754_2e12,
        || rate(dirlik()?, 5.0),
    )
    .sourced(SIMULATED)
    .with_provenance(Provenance::Independent)
    .measured_in("MPa^5/s")
    .within(0.10, SCATTER_5),
];

const fn random(
    id: &'static str,
    quantity: &'static str,
    basis: Basis,
    reference: f64,
    computed: Compute,
) -> Case {
    let [formula, inputs] = basis;
    Case {
        id,
        topic: "random stress",
        quantity,
        unit: "",
        source: DIRLIK,
        formula,
        inputs,
        provenance: Provenance::ClosedForm,
        reference,
        tolerance: Tolerance::Absolute(0.0),
        computed,
        difference: None,
    }
}

/// A narrow band of 50 MPa at 10 Hz, in MPa; it has no m1 and m4 of interest.
fn narrow() -> SpectralMoments {
    SpectralMoments { m0: 2500.0, m1: 25e3, m2: 250e3, m4: 25e6 }
}

/// Moments of the flat spectrum, in MPa.
fn flat() -> Result<SpectralMoments, String> {
    Ok(StressSpectrum::new(vec![(5.0, 250.0), (15.0, 250.0)]).map_err(text)?.moments())
}

fn dirlik() -> Result<RangeDistribution, String> {
    Ok(RangeDistribution::dirlik(&flat()?))
}

/// Cycles per second times the mean of S^m.
fn rate(ranges: RangeDistribution, m: f64) -> Result<f64, String> {
    Ok(ranges.rate() * ranges.mean_power(m))
}
