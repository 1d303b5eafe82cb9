//! What can be wrong with a tire face.

/// What can be wrong with a tread or with what it is asked.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum TreadError {
    /// A value is out of its range or not a number.
    #[error("{}; {accepted} is accepted", told(thing, *value, unit))]
    Value {
        /// What it is.
        thing: &'static str,
        /// The value refused.
        value: f64,
        /// Its unit; empty for a plain number.
        unit: &'static str,
        /// What is accepted, in words.
        accepted: &'static str,
    },
    /// A hub has no tire or too many.
    #[error("a hub has {count} tires; 1 or 2 is accepted")]
    Tires {
        /// How many.
        count: usize,
    },
    /// A list has not one value for each tire.
    #[error("{thing} has {count} values for {tires} tires; one for each is accepted")]
    Each {
        /// What is listed.
        thing: &'static str,
        /// How many values.
        count: usize,
        /// How many tires.
        tires: usize,
    },
    /// The shares of a duty are not the whole way.
    #[error("the shares of a duty sum to {sum}; a sum of 1 is accepted")]
    Shares {
        /// Their sum.
        sum: f64,
    },
    /// A ride is too short to take a mean of.
    #[error("a ride of {samples} samples has no distance; two or more that move on are accepted")]
    TooShort {
        /// How many samples it has.
        samples: usize,
    },
}

fn told(thing: &str, value: f64, unit: &str) -> String {
    format!("{thing} is {value} {unit}").trim_end().to_owned()
}

/// Refuses what is not finite or not above zero.
pub(crate) fn positive(thing: &'static str, value: f64, unit: &'static str) -> Result<(), TreadError> {
    let accepted = "a finite value greater than zero";
    if value.is_finite() && value > 0.0 { Ok(()) } else { refused(thing, value, unit, accepted) }
}

/// Refuses what is not finite or below zero.
pub(crate) fn not_negative(thing: &'static str, value: f64, unit: &'static str) -> Result<(), TreadError> {
    let accepted = "a finite value of zero or more";
    if value.is_finite() && value >= 0.0 { Ok(()) } else { refused(thing, value, unit, accepted) }
}

/// Refuses what lies beyond `most` to either side.
pub(crate) fn at_most(
    thing: &'static str,
    (value, unit): (f64, &'static str),
    most: f64,
    accepted: &'static str,
) -> Result<(), TreadError> {
    if value.abs() <= most { Ok(()) } else { refused(thing, value, unit, accepted) }
}

/// Refuses a load that is not finite; one of zero or less is off the road.
pub(crate) fn finite_load(value: f64) -> Result<(), TreadError> {
    if value.is_finite() { Ok(()) } else { refused("load", value, "N", "a finite value") }
}

fn refused(
    thing: &'static str,
    value: f64,
    unit: &'static str,
    accepted: &'static str,
) -> Result<(), TreadError> {
    Err(TreadError::Value { thing, value, unit, accepted })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_says_thing_value_unit_and_what_is_accepted() {
        let error = positive("tread depth", -0.01, "m").unwrap_err();
        assert_eq!(error.to_string(), "tread depth is -0.01 m; a finite value greater than zero is accepted");
        let error = not_negative("abradability", f64::NAN, "").unwrap_err();
        assert_eq!(error.to_string(), "abradability is NaN; a finite value of zero or more is accepted");
    }
}
