//! What a file says that strength is checked against.

use axlebow_axle::{StrengthOptions, StrengthRules};
use axlebow_strength::Reliability;

use crate::content::Table;

/// What strength is asked for by the table `[strength]`.
pub(crate) fn strength_options(table: &Table) -> StrengthOptions {
    StrengthOptions {
        safety_factor: table.number("safety_factor"),
        rules: if table.word("rules") == "en" { StrengthRules::En } else { StrengthRules::Aisc },
        electrode_strength: table.number("electrode_strength"),
        haz_strength_factor: table.optional_number("haz_strength_factor"),
        bearing_distance: table.optional_number("bearing_distance"),
        bearing_reliability: reliability(table.word("bearing_reliability")),
    }
}

/// The reliability of a word of the key; 90 % of any other.
fn reliability(word: &str) -> Reliability {
    Reliability::ALL.into_iter().find(|own| own.word() == word).unwrap_or(Reliability::Ninety)
}
