//! Springs of seats, brakes and wheel discs.

use axlebow_fe::{Attachment, Spring};

use crate::assembly::wall_at_seat::WallAtSeat;
use crate::parts::freedoms::RX;
use crate::parts::seat::{Seat, Suspension};
use crate::parts::wall_by::WallBy;
use crate::parts::wheel::Wheel;

/// Torsional stiffness of hub against spindle through the brake, N m/rad: stiff against everything else; it
/// carries no torque unless the wheel is braked.
pub(crate) const BRAKE_STIFFNESS: f64 = 1e7;

/// Stiffness of a wheel against its hub in every direction in which the disc does not lean, N/m and N m/rad: stiff
/// against bearings and brake.
pub(crate) const DISC_STIFFNESS: f64 = 1e10;

/// The path from the axle's wall to the vehicle body: arm or spring pack, then the wall in series; none where the two
/// together have no stiffness.
pub(crate) fn seat_spring(seat: &Seat, wall: &WallAtSeat, at: Attachment) -> Option<Spring> {
    let about_x = seat.rotational_stiffness;
    let spring = match seat.suspension {
        Suspension::Leaf { vertical, lateral, fore_aft, wind_up, yaw } => {
            Spring::to_ground(at, [fore_aft, lateral, vertical, about_x, wind_up, yaw])
        }
        Suspension::TrailingArm {
            pivot_ahead,
            pivot_above,
            bush_radial,
            bush_axial,
            spring_behind,
            spring_rate,
        } => Spring::to_ground(at, [0.0, 0.0, 0.0, about_x, 0.0, 0.0])
            .with_rates_at(
                [pivot_ahead, 0.0, pivot_above],
                [bush_radial, bush_axial, bush_radial, 0.0, 0.0, 0.0],
            )
            .with_rates_at([-spring_behind, 0.0, 0.0], [0.0, 0.0, spring_rate, 0.0, 0.0, 0.0]),
    };
    match wall.by {
        WallBy::Shell | WallBy::ShellSpread => spring.in_series_with(&wall.compliance),
        WallBy::Given | WallBy::Formula => Some(spring.in_series(RX, wall.rotational_flexibility())),
    }
}

/// Rates of disc and flange between hub and wheel; none where they are rigid.
pub(crate) fn disc_rates(wheel: &Wheel) -> Option<[f64; 6]> {
    let lean = (wheel.disc_flexibility() > 0.0).then(|| wheel.disc_flexibility().recip())?;
    let stiff = DISC_STIFFNESS;
    Some([stiff, stiff, stiff, lean, stiff, lean])
}
