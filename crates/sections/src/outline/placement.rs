//! Where an outline is put.

use crate::outline::edge::rotated;

/// Where an outline is put: first turned about the origin, then moved.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Placement {
    /// Turn about the origin, counter-clockwise in (x, z) (rad).
    pub turn: f64,
    /// Move along X, forward (m).
    pub x: f64,
    /// Move along Z, up (m).
    pub z: f64,
}

impl Placement {
    /// Where a place of the outline comes to lie.
    pub fn of(&self, place: [f64; 2]) -> [f64; 2] {
        let turned = rotated(place, self.turn);
        [turned[0] + self.x, turned[1] + self.z]
    }
}
