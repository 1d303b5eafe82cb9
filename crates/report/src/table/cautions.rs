//! What stands under every result that could lead somebody to weld.

use axlebow_strength::WELDING_CAUTIONS;

use super::grid::paragraph;

/// Width of running text.
const WIDTH: usize = 98;

/// The cautions on welding, a paragraph each.
pub(super) fn welding() -> String {
    let lines = WELDING_CAUTIONS.iter().map(|caution| paragraph(&format!("- {caution}"), WIDTH, 2));
    format!("\nBefore anybody welds:\n{}", lines.collect::<String>())
}
