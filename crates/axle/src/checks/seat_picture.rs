//! The wall at a seat under a load case, to be drawn.

use axlebow_wall::{Fineness, WallPicture};

use crate::assembly::seat_wall::seat_wall;
use crate::assembly::station_names::SEAT;
use crate::checks::seat_strength::beside;
use crate::outcome::CaseOutcome;
use crate::{Axle, AxleError, Side};

/// The wall at a seat and how the axle moves there.
#[derive(Debug, Clone, PartialEq)]
pub struct SeatPicture {
    /// Position of the seat, m.
    pub y: f64,
    /// Motion of the axle at the seat: ux, uy, uz (m), rx, ry, rz (rad), in the frame of the vehicle body.
    pub motion: [f64; 6],
    /// The wall about the seat's center.
    pub wall: WallPicture,
}

/// Pictures of the walls at the seats whose shells a model asks for.
///
/// # Errors
/// [`AxleError::Wall`].
pub fn seat_pictures(axle: &Axle, case: &CaseOutcome) -> Result<Vec<SeatPicture>, AxleError> {
    let asked = Side::BOTH.into_iter().filter(|side| axle.seats.of(*side).wall.is_shell());
    asked.map(|side| seat_picture(axle, case, side)).collect()
}

fn seat_picture(axle: &Axle, case: &CaseOutcome, side: Side) -> Result<SeatPicture, AxleError> {
    let solved = seat_wall(axle, side).solved(&Fineness::USUAL);
    let wall = solved.map_err(|error| AxleError::Wall { side, error })?.picture(&beside(case, side));
    let station = case.stations.iter().find(|station| station.name == *SEAT.of(side));
    let motion = station.map_or([0.0; 6], |station| station.displacement);
    Ok(SeatPicture { y: case.seats.of(side).y, motion, wall })
}
