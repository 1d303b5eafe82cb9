//! The walls of a tube in bending, as local buckling sees them.

use axlebow_sections::Profile;

/// What a wall does when the tube bends vertically.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WallPart {
    /// The wall of a round tube.
    Round,
    /// A wall of a rectangular tube that is pressed all over: its top or bottom.
    BoxFlange,
    /// A wall of a rectangular tube that is pressed on one edge and drawn on the other: its front or rear.
    BoxWeb,
}

impl WallPart {
    /// What messages call it.
    pub fn words(self) -> &'static str {
        match self {
            Self::Round => "diameter to wall",
            Self::BoxFlange => "flange width to wall",
            Self::BoxWeb => "web height to wall",
        }
    }
}

/// A wall and its slenderness.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wall {
    /// What it does.
    pub part: WallPart,
    /// D/t of a round tube, flat width over thickness of a rectangular one.
    pub slenderness: f64,
}

/// The walls of a section that bends vertically; none of a solid bar.
///
/// The flat of a rectangular tube runs between its outside corner radii, or between the inner faces where the corner
/// is sharper than the wall.
pub fn walls(profile: &Profile) -> Vec<Wall> {
    match profile {
        Profile::RoundTube(tube) => {
            vec![Wall { part: WallPart::Round, slenderness: tube.outside_diameter() / tube.wall() }]
        }
        Profile::RoundBar(_) => Vec::new(),
        Profile::RectangularTube(tube) => {
            let (t, corner) = (tube.wall(), tube.corner_radius().max(tube.wall()));
            let flat = |side: f64| (side - 2.0 * corner).max(0.0) / t;
            vec![
                Wall { part: WallPart::BoxFlange, slenderness: flat(tube.width()) },
                Wall { part: WallPart::BoxWeb, slenderness: flat(tube.height()) },
            ]
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use axlebow_sections::{RectangularTube, RoundBar, RoundTube};

    #[test]
    fn a_round_tube_has_one_wall_a_box_two_and_a_bar_none() {
        let tube = walls(&RoundTube::new(0.127, 0.0127).unwrap().into());
        assert!((tube[0].slenderness - 10.0).abs() < 1e-12);
        let housing = walls(&RectangularTube::new(0.12, 0.15, 0.01, 0.02).unwrap().into());
        assert!((housing[0].slenderness - 8.0).abs() < 1e-12);
        assert!((housing[1].slenderness - 11.0).abs() < 1e-12);
        assert!(walls(&RoundBar::new(0.1).unwrap().into()).is_empty());
    }

    #[test]
    fn a_sharp_corner_leaves_the_clear_width() {
        let sharp = walls(&RectangularTube::new(0.12, 0.15, 0.008, 0.0).unwrap().into());
        assert!((sharp[0].slenderness - 13.0).abs() < 1e-12);
    }
}
