//! What a camber change owes to values that nobody has measured.

use super::phrases::listed;
use crate::ModelCard;

/// What decides a camber change by bending of the axle, with its keys.
const OF_BENDING: [(&str, &[&str]); 5] = [
    ("the outside size", &["tube.od", "housing.profile[2].height"]),
    ("the wall", &["tube.wall", "housing.wall"]),
    ("the place of the wheels", &["wheel_end.mounting_face_at", "wheel.offset"]),
    ("the place of the seats", &["seat.at"]),
    ("the load", &["loads.rated_load"]),
];
/// What decides one by rotation of the seats.
const OF_SEATS: [(&str, &[&str]); 2] = [
    ("the stiffness of the seats", &["seat.rotational_stiffness", "seat.wall_flexibility"]),
    ("the load", &["loads.rated_load"]),
];
/// What decides one within the wheel ends.
const OF_WHEEL_ENDS: [(&str, &[&str]); 2] = [
    ("the place of the bearings", &["wheel_end.inner_bearing_at", "wheel_end.outer_bearing_at"]),
    ("the load", &["loads.rated_load"]),
];

/// The part that makes most of a camber change.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum LargestPart {
    Axle,
    Seats,
    WheelEnds,
}

/// That the answer is an estimate, and which typical values make it one; none where what decides it was measured.
pub(super) fn estimate(part: LargestPart, card: &ModelCard) -> Option<String> {
    let deciding: &[(&str, &[&str])] = match part {
        LargestPart::Axle => &OF_BENDING,
        LargestPart::Seats => &OF_SEATS,
        LargestPart::WheelEnds => &OF_WHEEL_ENDS,
    };
    let is_typical = |keys: &&[&str]| keys.iter().any(|key| card.typical.iter().any(|own| covers(own, key)));
    let open: Vec<String> =
        deciding.iter().filter(|(_, keys)| is_typical(keys)).map(|(words, _)| (*words).to_owned()).collect();
    let are = if open.len() > 1 { "are" } else { "is" };
    (!open.is_empty()).then(|| format!("an estimate, for {} {are} typical and not measured", listed(&open)))
}

/// Whether an entry of the typical keys is a key or holds it.
fn covers(entry: &str, key: &str) -> bool {
    key.strip_prefix(entry).is_some_and(|rest| rest.is_empty() || rest.starts_with(['.', '[']))
}

#[cfg(test)]
mod tests {
    use super::covers;

    #[test]
    fn an_entry_covers_itself_and_what_it_holds() {
        assert!(
            covers("tube", "tube.od")
                && covers("tube.od", "tube.od")
                && covers("housing", "housing.profile[2].height")
        );
        assert!(!covers("tube.o", "tube.od") && !covers("tube.od", "tube") && !covers("tub", "tube.od"));
    }
}
