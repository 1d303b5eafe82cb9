//! Names of the stations that every axle has.

use crate::Sides;

/// Names of a place on the left and on the right.
type Pair = Sides<&'static str>;

macro_rules! pair {
    ($place:literal) => {
        Sides { left: concat!("left-", $place), right: concat!("right-", $place) }
    };
}

pub(crate) const SPINDLE_END: Pair = pair!("spindle-end");
pub(crate) const OUTER_BEARING: Pair = pair!("outer-bearing");
pub(crate) const INNER_BEARING: Pair = pair!("inner-bearing");
pub(crate) const HUB: Pair = pair!("hub");
pub(crate) const TUBE_END: Pair = pair!("tube-end");
pub(crate) const SEAT: Pair = pair!("seat");
pub(crate) const SEAT_OUTER_EDGE: Pair = pair!("seat-outer-edge");
pub(crate) const SEAT_INNER_EDGE: Pair = pair!("seat-inner-edge");
pub(crate) const TIRE_CONTACT: Pair = pair!("tire-contact");
pub(crate) const OUTER_TIRE_CONTACT: Pair = pair!("outer-tire-contact");
pub(crate) const INNER_TIRE_CONTACT: Pair = pair!("inner-tire-contact");
pub(crate) const CENTER: &str = "center";
/// Section changes inside tube, housing and spindle, numbered from the center outward.
pub(crate) const SECTION_CHANGE: Pair = pair!("section-change");

const STANDARD: [Pair; 11] = [
    SPINDLE_END,
    OUTER_BEARING,
    INNER_BEARING,
    HUB,
    TUBE_END,
    SEAT,
    SEAT_OUTER_EDGE,
    SEAT_INNER_EDGE,
    TIRE_CONTACT,
    OUTER_TIRE_CONTACT,
    INNER_TIRE_CONTACT,
];

/// Whether a name belongs to a station that every axle has.
pub(crate) fn is_standard_name(name: &str) -> bool {
    let change = [SECTION_CHANGE.left, SECTION_CHANGE.right];
    name == CENTER
        || STANDARD.iter().any(|pair| pair.left == name || pair.right == name)
        || change.iter().any(|prefix| name.starts_with(prefix))
}
