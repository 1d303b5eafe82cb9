//! Seats: where the suspension holds the axle.
//!
//! A seat carries part of the axle's bending moment through its rotational stiffness about X. That path is
//! the arm or spring pack with its bush, in series with the local flexibility of the wall under the seat. A
//! clamped seat also stiffens the length that it covers.

use crate::parts::error::{finite, not_negative, positive};
use crate::{AxleError, BumpStop, SeatBracket, WallBy};

/// How a seat is fixed to the axle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fixing {
    /// Clamped by U-bolts.
    Clamped,
    /// Welded.
    Welded,
}

/// What joins a seat to the vehicle body. Stiffnesses are those of one side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Suspension {
    /// A leaf spring clamped to the seat.
    Leaf {
        /// Vertical spring rate, N/m.
        vertical: f64,
        /// Lateral stiffness, N/m.
        lateral: f64,
        /// Fore-aft stiffness, N/m.
        fore_aft: f64,
        /// Wind-up stiffness about Y, N m/rad.
        wind_up: f64,
        /// Stiffness about Z, N m/rad.
        yaw: f64,
    },
    /// An arm fixed to the seat that swings about a bush ahead of the axle, with a spring behind.
    TrailingArm {
        /// Distance of the bush ahead of the axle, m.
        pivot_ahead: f64,
        /// Height of the bush above the wheel center, m.
        pivot_above: f64,
        /// Radial stiffness of the bush, fore-aft and vertical, N/m.
        bush_radial: f64,
        /// Stiffness of the bush along its pin, N/m.
        bush_axial: f64,
        /// Distance of the spring behind the axle, m.
        spring_behind: f64,
        /// Vertical rate of the spring, N/m.
        spring_rate: f64,
    },
}

/// A seat on one side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Seat {
    /// Distance of its center from the center line, m.
    pub at: f64,
    /// Width along the axle, m.
    pub width: f64,
    /// How it is fixed.
    pub fixing: Fixing,
    /// Share, 0 to just below 1, by which the clamp shortens the flexing length under it: the flexibility
    /// of the seat's width is multiplied by one less this share. Shells of the wall give their own.
    pub composite_fraction: f64,
    /// What joins it to the body.
    pub suspension: Suspension,
    /// Stiffness about X of arm or spring pack with bush, N m/rad.
    pub rotational_stiffness: f64,
    /// Where the local flexibility of the axle's wall comes from.
    pub wall: WallBy,
    /// Local flexibility about X of the axle's wall under the seat where it is given, rad/(N m).
    pub wall_flexibility: f64,
    /// Length on both sides of it in which no stiffener may be welded, m.
    pub weld_keep_out: f64,
    /// What bears on the wall.
    pub bracket: SeatBracket,
    /// Loss factor of arm or spring pack with its bushes: the energy that a cycle turns into heat over 2π times the
    /// greatest that is stored.
    pub loss_factor: f64,
    /// Vertical damping of the suspension of this side in bump (the axle rises), at the seat, N s/m.
    pub damping: f64,
    /// The same in rebound (the axle falls), N s/m.
    pub rebound_damping: f64,
    /// What ends its travel in bump.
    pub bump_stop: Option<BumpStop>,
}

/// Largest composite fraction: a clamped length that does not bend at all would have no flexibility left.
pub const LARGEST_COMPOSITE_FRACTION: f64 = 0.99;

impl Seat {
    /// The same seat when every value is in range.
    ///
    /// # Errors
    /// [`AxleError::Value`] names the quantity out of range.
    pub fn checked(self) -> Result<Self, AxleError> {
        positive("seat place", self.at, "m")?;
        positive("seat width", self.width, "m")?;
        not_negative("seat rotational stiffness", self.rotational_stiffness, "N m/rad")?;
        not_negative("wall flexibility", self.wall_flexibility, "rad/(N m)")?;
        not_negative("seat damping", self.damping, "N s/m")?;
        not_negative("seat damping in rebound", self.rebound_damping, "N s/m")?;
        not_negative("weld keep-out of a seat", self.weld_keep_out, "m")?;
        let loss_factor = self.loss_factor;
        if !(0.0..=1.0).contains(&loss_factor) {
            let (what, accepted) = ("loss factor of a seat", "0 to 1");
            return Err(AxleError::Value { what, value: loss_factor, unit: "", accepted });
        }
        self.bracket.check()?;
        self.bump_stop.map(BumpStop::checked).transpose()?;
        let fraction = self.composite_fraction;
        if !(0.0..=LARGEST_COMPOSITE_FRACTION).contains(&fraction) {
            let accepted = "0 to 0.99";
            return Err(AxleError::Value { what: "composite fraction", value: fraction, unit: "", accepted });
        }
        self.suspension.check()?;
        Ok(self)
    }

    /// Damping that takes as much energy from a harmonic motion as bump and rebound together, N s/m.
    pub fn mean_damping(&self) -> f64 {
        0.5 * (self.damping + self.rebound_damping)
    }

    /// Distance of its outer edge from the center line, m.
    pub fn outer_edge(&self) -> f64 {
        self.at + 0.5 * self.width
    }

    /// Distance of its inner edge from the center line, m.
    pub fn inner_edge(&self) -> f64 {
        self.at - 0.5 * self.width
    }
}

impl Suspension {
    fn check(&self) -> Result<(), AxleError> {
        match *self {
            Suspension::Leaf { vertical, lateral, fore_aft, wind_up, yaw } => {
                positive("leaf spring vertical rate", vertical, "N/m")?;
                positive("leaf spring lateral stiffness", lateral, "N/m")?;
                positive("leaf spring fore-aft stiffness", fore_aft, "N/m")?;
                positive("leaf spring wind-up stiffness", wind_up, "N m/rad")?;
                positive("leaf spring yaw stiffness", yaw, "N m/rad")?;
            }
            Suspension::TrailingArm {
                pivot_ahead,
                pivot_above,
                bush_radial,
                bush_axial,
                spring_behind,
                spring_rate,
            } => {
                positive("pivot distance ahead of the axle", pivot_ahead, "m")?;
                finite("pivot height", pivot_above, "m")?;
                positive("bush radial stiffness", bush_radial, "N/m")?;
                positive("bush axial stiffness", bush_axial, "N/m")?;
                not_negative("spring distance behind the axle", spring_behind, "m")?;
                positive("spring rate", spring_rate, "N/m")?;
            }
        }
        Ok(())
    }
}
