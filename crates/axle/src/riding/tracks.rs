//! The tracks of a road under the wheels of an axle.

use axlebow_road::{Road, Track};

use crate::Side;

/// The track of one side.
pub(crate) fn track(road: &Road, side: Side) -> &Track {
    match side {
        Side::Left => &road.left,
        Side::Right => &road.right,
    }
}

/// Height of a track at a distance (m) and how fast it rises under a tire (m/s).
pub(crate) fn felt(track: &Track, distance: f64, speed: f64) -> [f64; 2] {
    let [height, slope] = track.height_and_slope(distance);
    [height, speed * slope]
}
