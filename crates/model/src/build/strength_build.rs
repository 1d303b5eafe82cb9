//! What a file says that strength is checked against.

use axlebow_axle::{StrengthOptions, StrengthRules};

use crate::content::Table;

/// What strength is asked for by the table `[strength]`.
pub(crate) fn strength_options(table: &Table) -> StrengthOptions {
    StrengthOptions {
        safety_factor: table.number("safety_factor"),
        rules: if table.word("rules") == "en" { StrengthRules::En } else { StrengthRules::Aisc },
        electrode_strength: table.number("electrode_strength"),
        haz_strength_factor: table.optional_number("haz_strength_factor"),
    }
}
