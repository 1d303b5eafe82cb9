//! Class of a wall by ANSI/AISC 360-22, Table B4.1b.

use axlebow_units::Kind;

use super::{Wall, WallPart};
use crate::Check;

const SOURCE: &str = "ANSI/AISC 360-22, Table B4.1b, noncompact limit (from memory)";

/// Class of a wall in bending by ANSI/AISC 360-22.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum AiscClass {
    /// Reaches the full plastic moment.
    Compact,
    /// Yields at its edge before it buckles.
    Noncompact,
    /// Buckles before it yields.
    Slender,
}

impl AiscClass {
    /// Class of a wall of steel with E and F_y (Pa).
    pub fn of(wall: &Wall, elastic_modulus: f64, yield_strength: f64) -> Self {
        let [compact, noncompact] = aisc_limits(wall.part, elastic_modulus, yield_strength);
        match wall.slenderness {
            s if s <= compact => Self::Compact,
            s if s <= noncompact => Self::Noncompact,
            _ => Self::Slender,
        }
    }
}

/// Greatest slenderness of a compact and of a noncompact wall in bending.
///
/// Round: 0.07 E/F_y and 0.31 E/F_y. Flange of a box: 1.12 and 1.40 √(E/F_y); its web: 2.42 and 5.70 √(E/F_y).
///
/// - `elastic_modulus`: E (Pa)
/// - `yield_strength`: F_y (Pa)
///
/// Source: ANSI/AISC 360-22, Table B4.1b (from memory).
pub fn aisc_limits(part: WallPart, elastic_modulus: f64, yield_strength: f64) -> [f64; 2] {
    let ratio = elastic_modulus / yield_strength;
    match part {
        WallPart::Round => [0.07 * ratio, 0.31 * ratio],
        WallPart::BoxFlange => [1.12 * ratio.sqrt(), 1.40 * ratio.sqrt()],
        WallPart::BoxWeb => [2.42 * ratio.sqrt(), 5.70 * ratio.sqrt()],
    }
}

/// Greatest D/t of a round tube for which the rules of bending hold at all, 0.45 E/F_y.
///
/// Source: ANSI/AISC 360-22, F8 (from memory).
pub fn aisc_round_reach(elastic_modulus: f64, yield_strength: f64) -> f64 {
    0.45 * elastic_modulus / yield_strength
}

/// Slenderness of a wall against the noncompact limit, up to which an elastic stress check holds.
pub fn aisc_wall_check(wall: &Wall, elastic_modulus: f64, yield_strength: f64) -> Check {
    let [_, noncompact] = aisc_limits(wall.part, elastic_modulus, yield_strength);
    Check::at_most(wall.part.words(), Kind::Ratio, wall.slenderness, noncompact)
        .sourced(SOURCE)
        .advising("thicken the wall: it buckles before it yields")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_class_changes_just_past_each_limit() {
        let class = |part, slenderness| AiscClass::of(&Wall { part, slenderness }, 200e9, 345e6);
        for part in [WallPart::Round, WallPart::BoxFlange, WallPart::BoxWeb] {
            let [compact, noncompact] = aisc_limits(part, 200e9, 345e6);
            assert_eq!(class(part, compact), AiscClass::Compact);
            assert_eq!(class(part, compact * 1.001), AiscClass::Noncompact);
            assert_eq!(class(part, noncompact), AiscClass::Noncompact);
            assert_eq!(class(part, noncompact * 1.001), AiscClass::Slender);
        }
    }
}
