//! What welds use of their strength over the band of their stiffness, and what would pass, in words.

use axlebow_axle::{WeldBand, WeldRemedy, WeldUse};
use axlebow_strength::Verdict;
use axlebow_units::Kind;

use crate::number::{Numbers, Shown, fixed};
use crate::page::Block;

/// An item for each stiffener's weld.
pub(super) fn weld_bands(bands: &[WeldBand], n: Numbers) -> Vec<Block> {
    if bands.is_empty() {
        return Vec::new();
    }
    let each = bands.iter().map(|band| words(band, n)).collect();
    vec![Block::heading("Welds, by how stiff they are taken to be"), Block::List(each)]
}

fn words(band: &WeldBand, n: Numbers) -> String {
    let used = |at: &WeldUse| format!("{} %", fixed(100.0 * at.used, 0));
    let per_length = |at: &WeldUse| n.full(at.stiffness, Shown::Free(Kind::Stress));
    let mut text = format!(
        "{}: uses {} of its strength with walls that give as wide plates ({}), {} between rigid walls ({}), {} as modeled \
         ({}), the worst case of each. The force per length rises with the stiffness, so that the stiff end is safe for the \
         weld and the soft end for the camber.",
        band.stiffener,
        used(&band.soft),
        per_length(&band.soft),
        used(&band.stiff),
        per_length(&band.stiff),
        used(&band.modeled),
        per_length(&band.modeled),
    );
    if band.soft.verdict != band.stiff.verdict {
        text +=
            " It passes at one end and fails at the other: go by the stiff end unless a test says better.";
    }
    if band.modeled.verdict != Verdict::Fails {
        return text;
    }
    let remedies: Vec<String> = band.remedies.iter().map(|remedy| in_words(*remedy, n)).collect();
    text + &match remedies.is_empty() {
        true => {
            " No leg that the parts allow, no run-out and no length that was tried lets it pass.".to_owned()
        }
        false => format!(" It would pass with {}.", remedies.join(", or with ")),
    }
}

fn in_words(remedy: WeldRemedy, n: Numbers) -> String {
    let length = |value: f64| n.full(value, Shown::Free(Kind::Length));
    match remedy {
        WeldRemedy::RunOut(run_out) => format!("each end tapered over {}", length(run_out)),
        WeldRemedy::Leg(leg) => format!("a leg of {}", length(leg)),
        WeldRemedy::Length(own) => format!("a length of {}", length(own)),
    }
}
