//! An invented seat that the tests change to taste.

use axlebow_sections::{Material, Profile, RoundTube};
use axlebow_wall::{SeatWall, Tie};

/// A bracket under a round tube of an outside diameter and a wall (m), as wide as `width` (m), round an angle (degrees).
pub fn seat((outer, wall): (f64, f64), width: f64, degrees: f64) -> SeatWall {
    let profile = Profile::from(RoundTube::new(outer, wall).unwrap());
    let material = Material::new("steel", 200e9, 0.3, 7850.0).unwrap();
    let breadth = degrees.to_radians() * 0.5 * (outer - wall);
    SeatWall { profile, material, width, breadth, clamp: None, tie: Tie::Rigid, layout: None }
}
