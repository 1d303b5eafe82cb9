//! The line through the two seats.

use axlebow_fe::State;

use crate::assembly::stations::nearest;
use crate::{Side, StaticDesign};

/// The rigid motion of the line through the two seats, taken out of displacements so that heave, roll and
/// swing on the springs do not hide the flex.
pub(crate) struct SeatLineFrame {
    height: f64,
    slope: f64,
    shift: [f64; 2],
    pitch: f64,
}

impl SeatLineFrame {
    /// The line through the seats of a state.
    pub(crate) fn on_seats(design: &StaticDesign, state: &State) -> SeatLineFrame {
        let seat = |side: Side| {
            let place = nearest(&design.frame.places, side.sign() * design.axle.seats.of(side).at);
            (design.frame.places[place].y, state.motion(design.frame.line[place]))
        };
        let ((left_y, left), (right_y, right)) = (seat(Side::Left), seat(Side::Right));
        let slope = (left[2] - right[2]) / (left_y - right_y);
        let mean = |i: usize| 0.5 * (left[i] + right[i]);
        SeatLineFrame { height: left[2] - slope * left_y, slope, shift: [mean(0), mean(1)], pitch: mean(4) }
    }

    /// Height of the seats' line at `y`, m.
    pub(crate) fn height_at(&self, y: f64) -> f64 {
        self.height + self.slope * y
    }

    /// A motion at (y, z) with the rigid part taken out.
    pub(crate) fn taken_out(&self, motion: [f64; 6], y: f64, z: f64) -> [f64; 6] {
        let [ux, uy, uz, rx, ry, rz] = motion;
        [
            ux - self.shift[0] - self.pitch * z,
            uy - self.shift[1] + self.slope * z,
            uz - self.height_at(y),
            rx - self.slope,
            ry - self.pitch,
            rz,
        ]
    }
}
