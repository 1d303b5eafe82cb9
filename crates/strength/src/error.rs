//! What can be wrong with the input of a check.

use std::ops::RangeInclusive;

/// What can be wrong with the input of a check; every number is told in the unit that it is held in.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum StrengthError {
    /// A quantity is zero, negative or not a number.
    #[error("{thing} is {}; accepted is a finite number above 0", told(*value, unit))]
    NotPositive {
        /// Which quantity.
        thing: &'static str,
        /// The value refused.
        value: f64,
        /// Its unit; empty for a plain number.
        unit: &'static str,
    },
    /// A quantity is not a finite number.
    #[error("{thing} is {}; accepted is a finite number", told(*value, unit))]
    NotFinite {
        /// Which quantity.
        thing: &'static str,
        /// The value refused.
        value: f64,
        /// Its unit; empty for a plain number.
        unit: &'static str,
    },
    /// A quantity is out of its range or not a number.
    #[error("{thing} is {}; accepted is {low} to {}", told(*value, unit), told(*high, unit))]
    Range {
        /// Which quantity.
        thing: &'static str,
        /// The value refused.
        value: f64,
        /// Its unit; empty for a plain number.
        unit: &'static str,
        /// The least value accepted.
        low: f64,
        /// The greatest value accepted.
        high: f64,
    },
    /// No detail of the catalogue has this name.
    #[error("no fatigue detail is called `{name}`; accepted is one of: {known}")]
    UnknownDetail {
        /// The name refused.
        name: String,
        /// The names that there are, with commas.
        known: String,
    },
    /// A spectrum has no two increasing frequencies, or a negative density.
    #[error(
        "point {point} of the stress spectrum is ({frequency} Hz, {density} Pa²/Hz); accepted is {accepted}"
    )]
    Spectrum {
        /// Which point, counted from 1.
        point: usize,
        /// Its frequency (Hz).
        frequency: f64,
        /// Its density (Pa²/Hz).
        density: f64,
        /// What is accepted.
        accepted: &'static str,
    },
    /// A list has too few entries.
    #[error("{thing} has {count} entries; accepted is {least} or more")]
    TooFew {
        /// Which list.
        thing: &'static str,
        /// How many it has.
        count: usize,
        /// How many it needs.
        least: usize,
    },
}

/// A value with its unit; a plain number alone.
fn told(value: f64, unit: &str) -> String {
    if unit.is_empty() { value.to_string() } else { format!("{value} {unit}") }
}

/// Passes a quantity through if it is a finite number above 0.
pub(crate) fn positive(thing: &'static str, value: f64, unit: &'static str) -> Result<f64, StrengthError> {
    if value.is_finite() && value > 0.0 {
        return Ok(value);
    }
    Err(StrengthError::NotPositive { thing, value, unit })
}

/// Passes a quantity through if it is a finite number.
pub(crate) fn finite(thing: &'static str, value: f64, unit: &'static str) -> Result<f64, StrengthError> {
    if value.is_finite() { Ok(value) } else { Err(StrengthError::NotFinite { thing, value, unit }) }
}

/// Passes a quantity through if it is a number in the accepted range.
pub(crate) fn within(
    thing: &'static str,
    value: f64,
    unit: &'static str,
    range: RangeInclusive<f64>,
) -> Result<f64, StrengthError> {
    if range.contains(&value) {
        return Ok(value);
    }
    Err(StrengthError::Range { thing, value, unit, low: *range.start(), high: *range.end() })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_says_thing_value_unit_and_what_is_accepted() {
        assert_eq!(
            positive("leg of the fillet", -0.006, "m").unwrap_err().to_string(),
            "leg of the fillet is -0.006 m; accepted is a finite number above 0"
        );
        assert_eq!(
            within("safety factor", 0.5, "", 1.0..=10.0).unwrap_err().to_string(),
            "safety factor is 0.5; accepted is 1 to 10"
        );
    }

    #[test]
    fn what_is_no_number_is_refused() {
        for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert!(positive("x", bad, "m").is_err());
            assert!(finite("x", bad, "m").is_err());
            assert!(within("x", bad, "m", 0.0..=1.0).is_err());
        }
        assert!(positive("x", 0.0, "m").is_err());
        assert_eq!(finite("x", -1.0, "m"), Ok(-1.0));
    }
}
