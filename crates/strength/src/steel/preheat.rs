//! Whether a steel wants warming before it is welded.

use axlebow_units::Kind;

use crate::error::within;
use crate::{Check, StrengthError};

const SOURCE: &str = "rule of thumb on the carbon equivalent of the International Institute of Welding, cf. EN \
     1011-2:2001, Annex C, method A (from memory)";

/// Carbon equivalent from which steel is normally preheated, and from which the whole weld is controlled.
const LIMITS: [f64; 2] = [0.40, 0.60];

/// Whether a steel wants warming before it is welded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PreheatNeed {
    /// None.
    Unneeded,
    /// Preheat.
    Usual,
    /// Preheat, with control of hydrogen, heat input and cooling.
    Controlled,
}

impl PreheatNeed {
    /// The word of results.
    pub fn word(self) -> &'static str {
        match self {
            Self::Unneeded => "unneeded",
            Self::Usual => "usual",
            Self::Controlled => "controlled",
        }
    }

    /// What to do, in words.
    pub fn advice(self) -> &'static str {
        match self {
            Self::Unneeded => {
                "no preheat is normally needed at moderate thickness; keep steel and electrodes dry"
            }
            Self::Usual => "preheat by a qualified weld procedure, with low-hydrogen electrodes",
            Self::Controlled => {
                "do not weld without the axle maker's own procedure: preheat, low hydrogen, held temperature between \
                 passes, slow cooling"
            }
        }
    }
}

/// What a carbon equivalent (per cent) suggests: below 0.40 nothing, to 0.60 preheat, above preheat and control.
///
/// Thickness, hydrogen and heat input move these limits; the qualified procedure decides.
///
/// Source: rule of thumb, cf. EN 1011-2:2001, Annex C, method A; J. F. Lancaster, *Metallurgy of Welding* (from memory).
pub fn preheat(carbon_equivalent: f64) -> PreheatNeed {
    match carbon_equivalent {
        ce if ce < LIMITS[0] => PreheatNeed::Unneeded,
        ce if ce <= LIMITS[1] => PreheatNeed::Usual,
        _ => PreheatNeed::Controlled,
    }
}

/// A carbon equivalent (per cent), as of a [`Composition`](crate::Composition), as an advisory check against 0.40.
///
/// Errors: [`StrengthError::Range`] below 0 or above 100 per cent, or not a number.
pub fn preheat_check(carbon_equivalent: f64) -> Result<Check, StrengthError> {
    let ce = within("carbon equivalent", carbon_equivalent, "%", 0.0..=100.0)?;
    Ok(Check::at_most("carbon equivalent in per cent", Kind::Ratio, ce, LIMITS[0])
        .sourced(SOURCE)
        .advising(preheat(ce).advice())
        .advisory())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Composition, Verdict};

    #[test]
    fn the_advice_changes_at_the_limits() {
        use PreheatNeed::*;
        assert_eq!(
            [0.0, 0.399, 0.40, 0.60, 0.601, f64::NAN].map(preheat),
            [Unneeded, Unneeded, Usual, Usual, Controlled, Controlled]
        );
    }

    #[test]
    fn a_chromium_molybdenum_steel_is_to_be_watched() {
        let steel = Composition {
            carbon: 0.40,
            manganese: 0.85,
            chromium: 0.95,
            molybdenum: 0.20,
            ..Composition::default()
        };
        let check = preheat_check(steel.carbon_equivalent()).unwrap();
        assert_eq!(check.verdict(), Verdict::Watch);
        assert!(check.advice.starts_with("do not weld without"));
        assert!(preheat_check(f64::NAN).is_err());
    }
}
