//! What can be wrong with a material or a section.

use std::ops::RangeInclusive;

/// Lengths for which every property stays an ordinary number, 1 µm to 1 km.
const LENGTHS: RangeInclusive<f64> = 1e-6..=1e3;

/// What can be wrong with a material or a section; lengths are held in metres and told in millimetres.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum SectionError {
    /// A length is not a number, not positive, or absurdly small or large.
    #[error(
        "{thing} is {} mm; accepted is {} mm to {} mm",
        millimetres(*value), millimetres(*LENGTHS.start()), millimetres(*LENGTHS.end())
    )]
    Length {
        /// Which length.
        thing: &'static str,
        /// The value refused (m).
        value: f64,
    },
    /// The walls meet in the middle.
    #[error(
        "wall is {} mm; accepted is less than {} mm, half the outside size \
         (for a solid section use a round bar)",
        millimetres(*wall), millimetres(*limit)
    )]
    WallTooThick {
        /// The wall refused (m).
        wall: f64,
        /// Half the smallest outside size (m).
        limit: f64,
    },
    /// The outside corner radius is negative, not a number, or does not fit.
    #[error(
        "corner radius is {} mm; accepted is 0 mm to {} mm, half the smaller side",
        millimetres(*radius), millimetres(*limit)
    )]
    CornerRadius {
        /// The radius refused (m).
        radius: f64,
        /// Half the smaller side (m).
        limit: f64,
    },
    /// A material property is out of its range.
    #[error("{thing} of {material} is {value} {unit}; accepted is {accepted}")]
    MaterialProperty {
        /// The name of the material.
        material: String,
        /// Which property.
        thing: &'static str,
        /// The value refused.
        value: f64,
        /// Its unit; empty for a plain number.
        unit: &'static str,
        /// The accepted range in words.
        accepted: &'static str,
    },
    /// A taper joins sections of different kinds.
    #[error("a taper from a {from} to a {to} has no blend; both ends must be of the same kind")]
    TaperKinds {
        /// Kind at the start.
        from: &'static str,
        /// Kind at the end.
        to: &'static str,
    },
    /// A place along a taper lies outside it.
    #[error("place along the taper is {value}; accepted is 0 (start) to 1 (end)")]
    TaperPlace {
        /// The fraction refused.
        value: f64,
    },
}

/// Passes a length through if it is a number in the accepted range.
pub(crate) fn accepted_length(thing: &'static str, value: f64) -> Result<f64, SectionError> {
    if LENGTHS.contains(&value) { Ok(value) } else { Err(SectionError::Length { thing, value }) }
}

/// A length in millimetres to nine significant digits, so that 0.127 m reads as 127.
fn millimetres(length: f64) -> f64 {
    let value = length * 1e3;
    format!("{value:.8e}").parse().unwrap_or(value)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_says_thing_value_unit_and_what_is_accepted() {
        let refused = accepted_length("outside diameter", -0.127);
        assert_eq!(
            refused.unwrap_err().to_string(),
            "outside diameter is -127 mm; accepted is 0.001 mm to 1000000 mm"
        );
    }

    #[test]
    fn ends_of_the_range_are_accepted_and_just_past_them_refused() {
        for good in [1e-6, 1e3] {
            assert_eq!(accepted_length("wall", good), Ok(good));
        }
        for bad in [0.99e-6, 1.001e3, 0.0, -0.0, f64::NAN, f64::INFINITY] {
            assert!(accepted_length("wall", bad).is_err(), "{bad}");
        }
    }
}
