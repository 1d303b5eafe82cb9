//! What stands under the tables of every command: warnings and defaults.

use axlebow_axle::Warning;

use crate::ModelCard;
use crate::page::Block;
use crate::words::warning::sentence;

/// Warnings, a block each.
pub(super) fn warnings(warnings: &[Warning]) -> impl Iterator<Item = Block> {
    warnings.iter().map(|own| Block::Warning(sentence(own)))
}

/// How many values are defaults; `option` lists them. None where none is.
pub(super) fn defaults(card: &ModelCard, option: &str) -> Option<Block> {
    match card.assumed.len() {
        0 => None,
        1 => Some(Block::Defaults(format!("1 value is a default ({option} lists it)."))),
        count => Some(Block::Defaults(format!("{count} values are defaults ({option} lists them)."))),
    }
}

/// What the signs of camber and toe mean.
pub(super) const SIGNS: &str = "Camber: negative, tops lean in. Toe: positive, toe-in.";

/// What the sign of camber means.
pub(super) const CAMBER_SIGN: &str = "Camber: negative, tops lean in.";

/// The option that lists defaults where a command has no details.
pub(super) const JSON: &str = "--json";

/// What to do with the result.
pub(super) fn next(text: &str) -> Block {
    Block::paragraph(format!("Next: {text}"))
}
