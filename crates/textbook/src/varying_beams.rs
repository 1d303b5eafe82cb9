//! Cantilevers whose section changes: by a step, and by a taper.

use axlebow_fe::Flexibility;
use axlebow_sections::{Profile, RoundBar, taper};

use crate::beam_line::{BeamLine, BentLine, Theory, bending_rigidity, rigidity};
use crate::case::{Case, Ours, Tolerance};
use crate::text;

const SOURCE: &str = "J. M. Gere & B. J. Goodno, Mechanics of Materials, 8th ed. 2013, ch. 9 (beams of varying \
     section, after S. P. Timoshenko); formula from memory, its number recomputed";

/// The cases.
pub(crate) const CASES: &[Case] = &[
    beam(
        "deflection_matches_gere_goodno_chapter_9_stepped_cantilever",
        "deflection at the end load, root half stiff, ∫ x²/(E I) P",
        0.457_614_94,
        || Ok(stepped()?.deflection(2)),
    ),
    beam(
        "slope_matches_gere_goodno_chapter_9_stepped_cantilever",
        "slope at the end load, ∫ x/(E I) P",
        0.019_181_034,
        || Ok(stepped()?.slope(2)),
    )
    .printed_to(1e-9)
    .measured_in("rad")
    .differing("a recomputation kept as 0.019181035 was rounded twice: 55.625/2900 is 0.01918103448"),
    beam(
        "deflection_matches_gere_goodno_chapter_9_tapered_cantilever",
        "deflection of a solid round taper 4 to 2 in at the end load, P L³/(24 E I_A)",
        0.117_079_50,
        || Ok(tapered()?.deflection(1)),
    ),
    beam(
        "slope_matches_gere_goodno_chapter_9_tapered_cantilever",
        "slope of a solid round taper 4 to 2 in at the end load, P L²/(12 E I_A)",
        5.853_974_9e-3,
        || Ok(tapered()?.slope(1)),
    )
    .printed_to(1e-10)
    .measured_in("rad")
    .differing("a recomputation kept as 5.8539750e-3 was rounded twice: it is 5.85397492e-3"),
];

const fn beam(id: &'static str, quantity: &'static str, printed: f64, ours: Ours) -> Case {
    Case {
        id,
        topic: "beam of varying section",
        quantity,
        unit: "in",
        source: SOURCE,
        printed,
        tolerance: Tolerance::Absolute(0.5e-8),
        ours,
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
