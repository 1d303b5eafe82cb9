//! What can be wrong with a road.

use std::ops::RangeInclusive;

/// Lengths along the road, 1 mm to 100 km.
pub(crate) const LENGTHS: RangeInclusive<f64> = 1e-3..=1e5;

/// Heights of a single obstacle, down or up, to 10 m.
pub(crate) const HEIGHTS: RangeInclusive<f64> = -10.0..=10.0;

/// Distances between places on the road, to 100 km.
pub(crate) const DISTANCES: RangeInclusive<f64> = -1e5..=1e5;

/// What can be wrong with a road; every number is told in the unit that it is held in.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum RoadError {
    /// A quantity is not a number or out of its range.
    #[error("{thing} is {value} {unit}; accepted is {low} to {high} {unit}")]
    Range {
        /// Which quantity.
        thing: &'static str,
        /// The value refused.
        value: f64,
        /// Its unit.
        unit: &'static str,
        /// The least value accepted.
        low: f64,
        /// The greatest value accepted.
        high: f64,
    },
    /// A count of things is out of its range.
    #[error("{thing} is {count}; accepted is {low} to {high}")]
    Count {
        /// What is counted.
        thing: &'static str,
        /// The count refused.
        count: usize,
        /// The least count accepted.
        low: usize,
        /// The greatest count accepted.
        high: usize,
    },
    /// The two edges of a pothole meet before they reach its floor.
    #[error(
        "edge slope of the pothole is {slope} m/m; accepted is {least} m/m or more, so that it is deep enough"
    )]
    EdgesMeet {
        /// The slope refused (m/m).
        slope: f64,
        /// The least slope that reaches the floor (m/m).
        least: f64,
    },
    /// A band of wave numbers has no width.
    #[error("upper end of the band is {high} cycle/m; accepted is above its lower end, {low} cycle/m")]
    BandEmpty {
        /// The lower end (cycle/m).
        low: f64,
        /// The upper end refused (cycle/m).
        high: f64,
    },
    /// The samples lie too far apart for the shortest wave.
    #[error("sample spacing is {spacing} m; accepted is below {limit} m, half the shortest wave")]
    SpacingCoarse {
        /// The spacing refused (m).
        spacing: f64,
        /// Half the shortest wave (m).
        limit: f64,
    },
    /// The road is too short for the longest wave.
    #[error(
        "length of the random road is {length} m; accepted is {least} m or more, one of its longest waves"
    )]
    RoadShort {
        /// The length refused (m).
        length: f64,
        /// The least length accepted (m).
        least: f64,
    },
    /// The columns of a measured profile differ in length.
    #[error("measured profile has {distances} distances and {heights} heights; accepted is as many of each")]
    Columns {
        /// How many distances.
        distances: usize,
        /// How many heights.
        heights: usize,
    },
    /// A sample of a measured profile is not a number or out of range.
    #[error("{column} in row {row} of the measured profile is {value} m; accepted is {low} to {high} m")]
    Sample {
        /// Which column.
        column: &'static str,
        /// The row, counted from 1.
        row: usize,
        /// The value refused (m).
        value: f64,
        /// The least value accepted (m).
        low: f64,
        /// The greatest value accepted (m).
        high: f64,
    },
    /// The distances of a measured profile do not increase.
    #[error(
        "distance in row {row} of the measured profile is {value} m; \
         accepted is above {previous} m, the row before"
    )]
    NotIncreasing {
        /// The row, counted from 1.
        row: usize,
        /// The distance refused (m).
        value: f64,
        /// The distance in the row before (m).
        previous: f64,
    },
    /// A measured profile has a hole.
    #[error("gap before row {row} of the measured profile is {gap} m; accepted is {limit} m or less")]
    Gap {
        /// The row after the gap, counted from 1.
        row: usize,
        /// The gap refused (m).
        gap: f64,
        /// The widest gap accepted (m).
        limit: f64,
    },
    /// A profile is too short for its roughness index.
    #[error("length of the profile is {length} m; accepted for a roughness index is {least} m or more")]
    ProfileShort {
        /// The length refused (m).
        length: f64,
        /// The least length accepted (m).
        least: f64,
    },
}

/// Passes a quantity through if it is a number in the accepted range.
pub(crate) fn accepted(
    thing: &'static str,
    value: f64,
    unit: &'static str,
    range: RangeInclusive<f64>,
) -> Result<f64, RoadError> {
    if range.contains(&value) {
        return Ok(value);
    }
    Err(RoadError::Range { thing, value, unit, low: *range.start(), high: *range.end() })
}

/// Passes a length (m) through if it is a number from 1 mm to 100 km.
pub(crate) fn accepted_length(thing: &'static str, value: f64) -> Result<f64, RoadError> {
    accepted(thing, value, "m", LENGTHS)
}

/// Passes a height (m), up or down, through if it is a number within 10 m.
pub(crate) fn accepted_height(thing: &'static str, value: f64) -> Result<f64, RoadError> {
    accepted(thing, value, "m", HEIGHTS)
}

/// Passes a count through if it is in the accepted range.
pub(crate) fn accepted_count(
    thing: &'static str,
    count: usize,
    range: RangeInclusive<usize>,
) -> Result<usize, RoadError> {
    if range.contains(&count) {
        return Ok(count);
    }
    Err(RoadError::Count { thing, count, low: *range.start(), high: *range.end() })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_says_thing_value_unit_and_what_is_accepted() {
        assert_eq!(
            accepted_length("length of the bump", -0.5).unwrap_err().to_string(),
            "length of the bump is -0.5 m; accepted is 0.001 to 100000 m"
        );
        assert_eq!(
            accepted_count("count of waves", 0, 1..=9).unwrap_err().to_string(),
            "count of waves is 0; accepted is 1 to 9"
        );
    }

    #[test]
    fn ends_of_the_range_are_accepted_and_just_past_them_refused() {
        for good in [-10.0, -0.0, 10.0] {
            assert_eq!(accepted_height("height", good), Ok(good));
        }
        for bad in [-10.001, 10.001, f64::NAN, f64::INFINITY] {
            assert!(accepted_height("height", bad).is_err(), "{bad}");
        }
    }
}
