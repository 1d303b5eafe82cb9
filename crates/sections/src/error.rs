//! What can be wrong with a material or a section.

use std::ops::RangeInclusive;

/// Lengths for which every property stays an ordinary number, 1 µm to 1 km.
pub const SECTION_LENGTHS: RangeInclusive<f64> = 1e-6..=1e3;

/// What can be wrong with a material or a section; lengths are held in meters and told in millimeters.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum SectionError {
    /// A length is not a number, not positive, or absurdly small or large.
    #[error(
        "{thing} is {} mm; accepted is {} mm to {} mm",
        millimeters(*value), millimeters(*SECTION_LENGTHS.start()), millimeters(*SECTION_LENGTHS.end())
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
        millimeters(*wall), millimeters(*limit)
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
        millimeters(*radius), millimeters(*limit)
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
    /// A corner of an outline has a coordinate or a turn that is not a number.
    #[error(
        "corner {corner} of the outline has a coordinate or turn of {value}; accepted is a finite number"
    )]
    CornerNumber {
        /// Which corner, from 1.
        corner: usize,
        /// The value refused.
        value: f64,
    },
    /// An outline has too few corners.
    #[error(
        "an outline of {count} corners encloses nothing; accepted is three or more, or two that an arc joins"
    )]
    TooFewCorners {
        /// How many there are.
        count: usize,
    },
    /// An arc goes all the way round.
    #[error(
        "the edge from corner {corner} of the outline turns by {:.6} degrees; accepted is less than 360 degrees \
         either way",
        turn.to_degrees()
    )]
    ArcTurn {
        /// The corner where the arc starts, from 1.
        corner: usize,
        /// The turn refused (rad).
        turn: f64,
    },
    /// Two corners in turn lie at the same place.
    #[error(
        "corners {first} and {second} of the outline both lie at {}; accepted is corners apart from each other",
        place_text(*place)
    )]
    CornersCoincide {
        /// The one corner, from 1.
        first: usize,
        /// The other.
        second: usize,
        /// Where (m).
        place: [f64; 2],
    },
    /// An outline meets itself.
    #[error(
        "outline crosses or touches itself at {}, cutting off {}; accepted is an edge that meets itself nowhere",
        place_text(*place), area_text(*area)
    )]
    CrossesItself {
        /// Where (m).
        place: [f64; 2],
        /// Area of the smaller of the two loops that meet there (m²).
        area: f64,
    },
    /// An outline runs the wrong way round.
    #[error(
        "outline runs clockwise round {}; accepted is counter-clockwise, forward to the right and up up",
        area_text(area.abs())
    )]
    Clockwise {
        /// The area it encloses, negative (m²).
        area: f64,
    },
    /// An outline encloses next to nothing.
    #[error(
        "outline of {} mm size encloses {}; accepted is more than a billionth of its size squared",
        millimeters(*size), area_text(area.abs())
    )]
    NoArea {
        /// The area it encloses (m²).
        area: f64,
        /// Its size (m).
        size: f64,
    },
    /// The roundings at the ends of an edge need more than the edge.
    #[error(
        "rounding of corner {corner} at {} has a radius of {} mm; accepted is 0 mm to {} mm, what its edges leave",
        place_text(*place), millimeters(*radius), millimeters(*limit)
    )]
    FilletTooLarge {
        /// Which corner, from 1.
        corner: usize,
        /// Where (m).
        place: [f64; 2],
        /// The radius refused (m).
        radius: f64,
        /// The largest that fits (m).
        limit: f64,
    },
    /// A hole is not within the outside edge.
    #[error(
        "hole {hole} reaches the outside edge at {} and {} of it lie outside; accepted is a hole within the \
         outside edge",
        place_text(*place), area_text(*area)
    )]
    HoleOutside {
        /// Which hole, from 1.
        hole: usize,
        /// Where it meets the outside edge, or where it lies (m).
        place: [f64; 2],
        /// The part of it that lies outside (m²).
        area: f64,
    },
    /// Two holes share material.
    #[error(
        "holes {first} and {second} overlap or touch at {}, by {}; accepted is holes apart from each other",
        place_text(*place), area_text(*area)
    )]
    HolesOverlap {
        /// The one hole, from 1.
        first: usize,
        /// The other.
        second: usize,
        /// Where (m).
        place: [f64; 2],
        /// The area that both claim (m²).
        area: f64,
    },
    /// Two parts of a composite claim the same material.
    #[error(
        "{first} and {second} overlap by {} about {}; accepted is parts that touch or stay clear",
        area_text(*area), place_text(*place)
    )]
    PartsOverlap {
        /// Name of the one part.
        first: String,
        /// Name of the other.
        second: String,
        /// The area that both claim (m²).
        area: f64,
        /// Its centroid (m).
        place: [f64; 2],
    },
    /// A composite has no parts.
    #[error("a composite has no parts; accepted is one or more")]
    NoParts,
    /// A thickness leaves no room.
    #[error("{thing} is {} mm; accepted is less than {} mm, {limited_by}",
        millimeters(*value), millimeters(*limit))]
    ShapeThickness {
        /// Which size.
        thing: &'static str,
        /// The value refused (m).
        value: f64,
        /// The value it must stay below (m).
        limit: f64,
        /// What sets the limit.
        limited_by: &'static str,
    },
    /// Parts of a section hang together by nothing.
    #[error(
        "only {reached} of the {nodes} joints or mesh points of the section hang together; accepted is parts that \
         are joined, by shared edges or by welds"
    )]
    NotJoined {
        /// How many hang together with the first.
        reached: usize,
        /// How many there are.
        nodes: usize,
    },
    /// A thin wall has no two joints.
    #[error(
        "wall {wall} runs from joint {from} to joint {to}; accepted is two joints of the list, turned less than \
         a whole turn"
    )]
    WallJoint {
        /// Which wall, from 1.
        wall: usize,
        /// The joint where it starts, from 0.
        from: usize,
        /// The joint where it ends.
        to: usize,
    },
    /// Edges of the parts meet in a way that no triangles fill.
    #[error("edges of the section's parts cross near {}; accepted is parts that touch or stay clear", place_text(*place))]
    EdgesCross {
        /// Where (m).
        place: [f64; 2],
    },
    /// No standard size has this name.
    #[error("no standard size is called {name}; near are {}", near.join(", "))]
    UnknownSize {
        /// The name refused.
        name: String,
        /// Names like it.
        near: Vec<String>,
    },
}

/// Passes a length through if it is a number in the accepted range.
pub(crate) fn accepted_length(thing: &'static str, value: f64) -> Result<f64, SectionError> {
    if SECTION_LENGTHS.contains(&value) { Ok(value) } else { Err(SectionError::Length { thing, value }) }
}

/// A length in millimeters to nine significant digits, so that 0.127 m reads as 127.
fn millimeters(length: f64) -> f64 {
    shortened(length * 1e3)
}

/// A place in millimeters to the nearest nanometer.
fn place_text(place: [f64; 2]) -> String {
    // Adding 0 makes -0 plain.
    let [x, z] = place.map(|length| (length * 1e9).round() / 1e6 + 0.0);
    format!("({x}, {z}) mm")
}

/// An area in square millimeters.
fn area_text(area: f64) -> String {
    format!("{} mm²", shortened(area * 1e6))
}

fn shortened(value: f64) -> f64 {
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
