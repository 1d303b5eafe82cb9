//! Cantilevers whose section changes: by a step, and by a taper.

use axlebow_fe::Flexibility;
use axlebow_sections::{Profile, RoundBar, taper};

use crate::beams::beam_line::{BeamLine, BentLine, Theory, bending_rigidity, rigidity};
use crate::case::{Case, Compute, Provenance, Tolerance};
use crate::text;

const SOURCE: &str = "J. M. Gere & B. J. Goodno, Mechanics of Materials, 8th ed. 2013, ch. 9 (beams of varying \
     section, after S. P. Timoshenko); formula from memory, its number recomputed";

const STEPPED: &str = "P = 10000 lbf, E = 29e6 psi, I = 20 in⁴ over 15 in from the root, 10 in⁴ over 25 in to the tip; x from the tip";
const TAPERED: &str =
    "P = 1000 lbf, L = 40 in, E = 29e6 psi, diameter 4 in at the root, 2 in at the tip (I_A = π/4 in⁴)";

/// The cases.
pub(crate) const CASES: &[Case] = &[
    beam(
        "deflection_matches_gere_goodno_chapter_9_stepped_cantilever",
        ["deflection at the end load, root twice as stiff", "y = ∫ P x²/(E I) dx", STEPPED],
        0.457_614_94,
        || Ok(stepped()?.deflection(2)),
    ),
    beam(
        "slope_matches_gere_goodno_chapter_9_stepped_cantilever",
        ["slope at the end load, root twice as stiff", "θ = ∫ P x/(E I) dx", STEPPED],
        0.019_181_034,
        || Ok(stepped()?.slope(2)),
    )
    .rounded_to(1e-9)
    .measured_in("rad")
    .differing("a recomputation kept as 0.019181035 was rounded twice: 55.625/2900 is 0.01918103448"),
    beam(
        "deflection_matches_gere_goodno_chapter_9_tapered_cantilever",
        ["deflection of a solid round taper at the end load", "y = P L³/(24 E I_A)", TAPERED],
        0.117_079_50,
        || Ok(tapered()?.deflection(1)),
    ),
    beam(
        "slope_matches_gere_goodno_chapter_9_tapered_cantilever",
        ["slope of a solid round taper at the end load", "θ = P L²/(12 E I_A)", TAPERED],
        5.853_974_9e-3,
        || Ok(tapered()?.slope(1)),
    )
    .rounded_to(1e-10)
    .measured_in("rad")
    .differing("a recomputation kept as 5.8539750e-3 was rounded twice: it is 5.85397492e-3"),
];

const fn beam(
    id: &'static str,
    [quantity, formula, inputs]: [&'static str; 3],
    reference: f64,
    computed: Compute,
) -> Case {
    Case {
        id,
        topic: "beam of varying section",
        quantity,
        unit: "in",
        source: SOURCE,
        formula,
        inputs,
        provenance: Provenance::ClosedForm,
        reference,
        tolerance: Tolerance::Absolute(0.5e-8),
        computed,
        difference: None,
    }
}

/// I = 20 in⁴ over 15 in from the root, then 10 in⁴ over 25 in; 10 000 lbf at the tip.
fn stepped() -> Result<BentLine, String> {
    let second_moments = [20.0, 10.0];
    let flexibility =
        |piece: usize, length| Flexibility::uniform(length, &bending_rigidity(second_moments[piece]));
    BeamLine::new(&[0.0, 15.0, 40.0], flexibility)?.clamped(0).forced(&[(2, 10_000.0)])
}

/// One element of 40 in, 4 in at the root, 2 in at the tip; 1000 lbf at the tip.
fn tapered() -> Result<BentLine, String> {
    let root = Profile::from(RoundBar::new(4.0).map_err(text)?);
    let tip = Profile::from(RoundBar::new(2.0).map_err(text)?);
    let flexibility = |_, length| {
        Flexibility::varying(length, 8, |share| {
            let profile = taper(&root, &tip, share).unwrap_or(root);
            rigidity(&profile, Theory::BendingOnly)
        })
    };
    BeamLine::new(&[0.0, 40.0], flexibility)?.clamped(0).forced(&[(1, 1000.0)])
}
