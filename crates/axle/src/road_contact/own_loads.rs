//! What acts on the axle itself beside the road: weight, inertia, and the reaction of its drive.
//!
//! The mass between road and suspension slows down and is pushed aside with the vehicle, so that it feels a field of
//! force per mass `[B, −S − C, −W] g/W` for a braking force B, side and curb forces S and C, and axle load W (d'Alembert).
//! What is left of these forces passes through the seats. A pull is taken as steady, up a grade or against a load behind:
//! it accelerates nothing.
//!
//! A driven wheel has its torque from its shaft. The carrier of the final drive, in the middle of the housing, feels the
//! reaction `−T r` about Y of the torque of both shafts, and about X the torque `T r/i` of the propeller shaft, which
//! presses the left wheel down: a shaft that turns counter-clockwise seen from behind (from memory).

use crate::parts::load_case::Actions;
use crate::{Axle, Side};

/// Load columns of the axle's own loads.
pub(crate) const OWN_COLUMNS: usize = 5;

/// Loads on the axle itself.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct OwnLoads {
    /// Force per mass, forward, left and up, in units of standard gravity.
    pub field: [f64; 3],
    /// Moment on the carrier about X and Y, N m.
    pub carrier: [f64; 2],
}

impl OwnLoads {
    pub(crate) fn of(axle: &Axle, actions: &Actions) -> Self {
        let share = |force: f64| force / actions.axle_load * actions.gravity;
        let torque = actions.traction_force * axle.line_height();
        OwnLoads {
            field: [share(actions.braking_force), -share(actions.lateral_force()), -actions.gravity],
            carrier: [-torque / axle.loading.final_drive_ratio, -torque],
        }
    }

    /// Factor of each load column.
    pub(crate) fn factors(&self) -> [f64; OWN_COLUMNS] {
        let OwnLoads { field: [x, y, z], carrier: [about_x, about_y] } = *self;
        [x, y, z, about_x, about_y]
    }
}

impl Actions {
    /// Side and curb forces of the road on the whole axle, to the left, N.
    pub(crate) fn lateral_force(&self) -> f64 {
        let curb = |side: Side| -side.sign() * self.curb_force.of(side);
        self.side_force + curb(Side::Left) + curb(Side::Right)
    }
}
