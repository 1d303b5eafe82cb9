//! What stands for what a file does not say.

use crate::ModelCard;
use crate::page::{Block, Column, Table};

/// The defaults in use, a row each.
pub(super) fn inputs(card: &ModelCard) -> Vec<Block> {
    if card.assumed.is_empty() {
        return Vec::new();
    }
    let mut table = Table::new(["key", "value", "what it is"].map(Column::words));
    for own in &card.assumed {
        table.add_row([&own.path, &own.value, &own.meaning]);
    }
    vec![Block::heading("What the file leaves to be assumed"), Block::Table(table)]
}
