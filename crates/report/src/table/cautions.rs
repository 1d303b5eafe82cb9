//! What stands under every result that could lead somebody to weld.

use axlebow_strength::{CLAMPING_CAUTIONS, WELDING_CAUTIONS};

use super::grid::paragraph;

/// Width of running text.
const WIDTH: usize = 98;

/// The cautions on welding, a paragraph each.
pub(super) fn welding() -> String {
    block("Before anybody welds:", &WELDING_CAUTIONS)
}

/// The cautions on tightening U-bolts, a paragraph each.
pub(super) fn clamping() -> String {
    block("Before anybody tightens a U-bolt:", &CLAMPING_CAUTIONS)
}

fn block(heading: &str, cautions: &[&str]) -> String {
    let lines = cautions.iter().map(|caution| paragraph(&format!("- {caution}"), WIDTH, 2));
    format!("\n{heading}\n{}", lines.collect::<String>())
}
