//! Class of a wall by EN 1993-1-1:2005, Table 5.2.

use axlebow_units::Kind;

use super::{Wall, WallPart};
use crate::Check;

const SOURCE: &str = "EN 1993-1-1:2005, Table 5.2, class 3 (from memory)";

/// Class of a wall in bending by EN 1993-1-1:2005.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum EnClass {
    /// Reaches the plastic moment and turns on.
    One,
    /// Reaches the plastic moment.
    Two,
    /// Yields at its edge before it buckles.
    Three,
    /// Buckles before it yields.
    Four,
}

impl EnClass {
    /// Class of a wall of steel with f_y (Pa).
    pub fn of(wall: &Wall, yield_strength: f64) -> Self {
        let limits = en_limits(wall.part, yield_strength);
        let within = limits.iter().position(|limit| wall.slenderness <= *limit);
        within.map_or(Self::Four, |class| [Self::One, Self::Two, Self::Three][class])
    }
}

/// Greatest slenderness of classes 1, 2 and 3 in bending, with ε² = 235 MPa/f_y.
///
/// Round: 50, 70, 90 ε². Internal part in compression: 33, 38, 42 ε; in bending: 72, 83, 124 ε.
///
/// - `yield_strength`: f_y (Pa)
///
/// Source: EN 1993-1-1:2005, Table 5.2, sheets 1 and 3 (from memory).
pub fn en_limits(part: WallPart, yield_strength: f64) -> [f64; 3] {
    let square = 235e6 / yield_strength;
    let (limits, epsilon) = match part {
        WallPart::Round => ([50.0, 70.0, 90.0], square),
        WallPart::BoxFlange => ([33.0, 38.0, 42.0], square.sqrt()),
        WallPart::BoxWeb => ([72.0, 83.0, 124.0], square.sqrt()),
    };
    limits.map(|limit| limit * epsilon)
}

/// Slenderness of a wall against the limit of class 3, up to which an elastic stress check holds.
pub fn en_wall_check(wall: &Wall, yield_strength: f64) -> Check {
    let [.., elastic] = en_limits(wall.part, yield_strength);
    Check::at_most(wall.part.words(), Kind::Ratio, wall.slenderness, elastic)
        .sourced(SOURCE)
        .advising("thicken the wall: it buckles before it yields")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_class_changes_just_past_each_limit() {
        let classes = [EnClass::One, EnClass::Two, EnClass::Three, EnClass::Four];
        for part in [WallPart::Round, WallPart::BoxFlange, WallPart::BoxWeb] {
            for (i, slenderness) in en_limits(part, 355e6).into_iter().enumerate() {
                assert_eq!(EnClass::of(&Wall { part, slenderness }, 355e6), classes[i]);
                let past = Wall { part, slenderness: slenderness * 1.001 };
                assert_eq!(EnClass::of(&past, 355e6), classes[i + 1]);
            }
        }
    }
}
