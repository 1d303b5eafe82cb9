//! Long beams on an elastic foundation, which stands as a row of springs.

use axlebow_fe::{Attachment, Flexibility, Spring};

use crate::beams::beam_line::{BeamLine, BentLine, bending_rigidity};
use crate::case::{Case, Compute, Provenance, Tolerance};
use crate::text;

const SOURCE: &str = "M. Hetényi, Beams on Elastic Foundation, Univ. of Michigan Press 1946, ch. II-III; \
     formula from memory, its number recomputed";
const ROW: &str = "springs h = 0.25 in apart stand for the continuous bed; the Euler-Maclaurin end term of their sum \
     makes a free end too stiff by (lambda h)²/3 = 2.7e-5 in deflection and (lambda h)²/2 = 4.1e-5 in slope, \
     and the moment under a load too small by (lambda h)²/6 = 1.4e-5";

/// Foundation modulus (lbf/in per in).
const K: f64 = 2000.0;
/// Distance between springs (in).
const STEP: f64 = 0.25;
/// Springs from the load to where the beam ends: 225 in; what comes back from there is e^(-2 · 8.15) = 8e-8.
const REACH: usize = 900;
/// Load (lbf), upward.
const P: f64 = 10_000.0;

const INPUTS: &str = "P = 10000 lbf, k = 2000 lbf/in², E = 29e6 psi, I = 10 in⁴, λ = (k/(4 E I))^(1/4)";

/// The cases.
pub(crate) const CASES: &[Case] = &[
    bed(
        "deflection_matches_hetenyi_chapter_2_infinite_beam",
        "deflection at the load",
        "y = P λ/(2 k)",
        0.090_590_57,
        || Ok(infinite()?.deflection(REACH)),
    ),
    bed(
        "moment_matches_hetenyi_chapter_2_infinite_beam",
        "moment at the load",
        "M = P/(4 λ)",
        68_991.726,
        || Ok(-infinite()?.moment(REACH)),
    )
    .measured_in("lbf·in"),
    bed(
        "deflection_matches_hetenyi_chapter_3_half_infinite_beam",
        "deflection at the end load",
        "y = 2 P λ/k",
        0.362_362_30,
        || Ok(half_infinite()?.deflection(0)),
    ),
    bed(
        "slope_matches_hetenyi_chapter_3_half_infinite_beam",
        "slope at the end load",
        "θ = 2 P λ²/k",
        0.013_130_643,
        || Ok(-half_infinite()?.slope(0)),
    )
    .measured_in("rad"),
];

const fn bed(
    id: &'static str,
    quantity: &'static str,
    formula: &'static str,
    reference: f64,
    computed: Compute,
) -> Case {
    Case {
        id,
        topic: "elastic foundation",
        quantity,
        unit: "in",
        source: SOURCE,
        formula,
        inputs: INPUTS,
        provenance: Provenance::ClosedForm,
        reference,
        tolerance: Tolerance::Absolute(0.0),
        computed,
        difference: None,
    }
    .within(1e-4, ROW)
}

fn infinite() -> Result<BentLine, String> {
    bedded(2 * REACH)?.forced(&[(REACH, P)])
}

fn half_infinite() -> Result<BentLine, String> {
    bedded(REACH)?.forced(&[(0, P)])
}

/// I = 10 in⁴ on springs, each carrying the bed to half-way on either side.
fn bedded(pieces: usize) -> Result<BeamLine, String> {
    let places: Vec<_> = (0..=pieces).map(|place| STEP * place as f64).collect();
    let rigidity = bending_rigidity(10.0);
    let mut line = BeamLine::new(&places, |_, length| Flexibility::uniform(length, &rigidity))?;
    let (structure, nodes) = line.parts();
    for (place, node) in nodes.iter().enumerate() {
        let share = if place == 0 || place == pieces { 0.5 } else { 1.0 };
        let rates = [0.0, 0.0, share * K * STEP, 0.0, 0.0, 0.0];
        structure.add_spring(Spring::to_ground(Attachment::at(*node), rates)).map_err(text)?;
    }
    Ok(line)
}
