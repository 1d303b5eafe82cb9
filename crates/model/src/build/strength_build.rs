//! What a file says that strength is checked against.

use axlebow_axle::{SeatStress, StrengthOptions, StrengthRules};
use axlebow_strength::{MeanStress, Reliability};

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
        mean_stress: mean_stress(table.word("mean_stress")),
        seat_stress: seat_stress(table.word("seat_stress")),
    }
}

/// Where compression counts less, of a word of the key; nowhere of any other.
fn mean_stress(word: &str) -> MeanStress {
    MeanStress::ALL.into_iter().find(|own| own.word() == word).unwrap_or_default()
}

/// By which stress seats are held, of a word of the key; the nominal one of any other.
fn seat_stress(word: &str) -> SeatStress {
    SeatStress::ALL.into_iter().find(|own| own.word() == word).unwrap_or_default()
}

/// The reliability of a word of the key; 90 % of any other.
fn reliability(word: &str) -> Reliability {
    Reliability::ALL.into_iter().find(|own| own.word() == word).unwrap_or(Reliability::Ninety)
}
