//! What stands under every result that could lead somebody to weld.

use axlebow_strength::{CLAMPING_CAUTIONS, WELDING_CAUTIONS};

use crate::page::{Block, Caution};

/// The cautions on welding.
pub(super) fn welding() -> Block {
    caution("Before anybody welds:", &WELDING_CAUTIONS)
}

/// The cautions on tightening U-bolts.
pub(super) fn clamping() -> Block {
    caution("Before anybody tightens a U-bolt:", &CLAMPING_CAUTIONS)
}

fn caution(heading: &str, cautions: &[&str]) -> Block {
    let items = cautions.iter().map(|caution| (*caution).to_owned()).collect();
    Block::Caution(Caution { heading: heading.to_owned(), items })
}
