//! The wall at the seats in JSON documents.

use axlebow_axle::{Side, Sides, WallAtSeat, WallBy};
use schemars::JsonSchema;
use serde::Serialize;

/// The wall at both seats.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SeatWallsEntry {
    /// Left of the vehicle.
    pub left: SeatWallEntry,
    /// Right of the vehicle.
    pub right: SeatWallEntry,
}

/// The wall at one seat.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SeatWallEntry {
    /// `given`, `formula`, `shell` or `shell-spread`.
    pub by: &'static str,
    /// Share of the flexibility under the seat that is taken away.
    pub composite_fraction: f64,
    /// Rotation about X per moment, beyond that of the beam, rad/(N m).
    pub rotational_flexibility_rad_per_n_m: f64,
    /// Motion (ux, uy, uz in m; rx, ry, rz in rad) per force (N) and moment (N m) through the seat, beyond that of the
    /// beam whose flexibility under the seat is so reduced.
    pub compliance: [[f64; 6]; 6],
    /// Unknowns of the shells.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unknowns: Option<usize>,
}

impl SeatWallsEntry {
    /// The walls, unless both are given.
    pub(crate) fn of(walls: &Sides<WallAtSeat>) -> Option<Self> {
        let entry = |side| SeatWallEntry::from(walls.of(side));
        let solved = Side::BOTH.iter().any(|side| walls.of(*side).by != WallBy::Given);
        solved.then(|| Self { left: entry(Side::Left), right: entry(Side::Right) })
    }
}

impl From<&WallAtSeat> for SeatWallEntry {
    fn from(wall: &WallAtSeat) -> Self {
        Self {
            by: wall.by.word(),
            composite_fraction: wall.composite_fraction,
            rotational_flexibility_rad_per_n_m: wall.rotational_flexibility(),
            compliance: wall.compliance,
            unknowns: wall.unknowns,
        }
    }
}
