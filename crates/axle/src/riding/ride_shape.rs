//! The shape of an axle at a moment of a ride.

use axlebow_fe::NodeId;

use crate::dynamics::vibration::VibrationModel;
use crate::{Side, Sides};

/// How a point moved, up and about X, against the axle without load.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Rise {
    /// Displacement up, m.
    pub up: f64,
    /// Rotation about X, rad: positive lifts the left.
    pub turn: f64,
}

/// The shape of the axle at one moment of a ride.
#[derive(Debug, Clone, PartialEq)]
pub struct RideShape {
    /// Number of the sample, for the histories.
    pub sample: usize,
    /// Every place on the axle, from left to right as the stations of the outcome.
    pub line: Vec<Rise>,
    /// Hubs, at their mounting faces.
    pub hubs: Sides<Rise>,
    /// The vehicle body at the middle of the axle.
    pub body: Rise,
}

impl RideShape {
    /// The shape from the motion of each node.
    pub(crate) fn of(model: &VibrationModel, sample: usize, motion: impl Fn(NodeId) -> [f64; 6]) -> Self {
        let rise = |node: NodeId| {
            let [_, _, up, turn, _, _] = motion(node);
            Rise { up, turn }
        };
        RideShape {
            sample,
            line: model.frame.stations().rev().map(|(_, node)| rise(node)).collect(),
            hubs: Sides::each(|side: Side| rise(*model.frame.hubs.of(side))),
            body: rise(model.body),
        }
    }
}
