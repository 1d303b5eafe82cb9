//! What is measured against the straight line through the two hubs.

use axlebow_fe::State;

use crate::mesh::frame::Frame;
use crate::parts::freedoms::RX;
use crate::{Axle, Side};

/// A state of an axle, read against the line through its hubs.
#[derive(Debug, Clone, Copy)]
pub(crate) struct HubLine<'a> {
    pub axle: &'a Axle,
    pub frame: &'a Frame,
    pub state: &'a State<'a>,
}

impl HubLine<'_> {
    /// Slope of the line, as a rotation about X against the vehicle body, rad.
    pub(crate) fn lean(&self) -> f64 {
        (self.of_hub(Side::Left, 2) - self.of_hub(Side::Right, 2)) / self.axle.hub_distance()
    }

    /// Turn of the line, as a rotation about Z, rad.
    pub(crate) fn turn(&self) -> f64 {
        -(self.of_hub(Side::Left, 0) - self.of_hub(Side::Right, 0)) / self.axle.hub_distance()
    }

    /// Height of the axle's center above the line, m.
    pub(crate) fn bow(&self) -> f64 {
        let ends = &self.axle.wheel_ends;
        let (left, right) = (self.of_hub(Side::Left, 2), self.of_hub(Side::Right, 2));
        let chord =
            (left * ends.right.mounting_face + right * ends.left.mounting_face) / self.axle.hub_distance();
        self.state.motion(self.frame.node_at(0.0))[2] - chord
    }

    /// Camber change of one wheel, rad; left camber = −rx, right camber = +rx, less the lean of the line.
    pub(crate) fn camber_change(&self, side: Side) -> f64 {
        -side.sign() * (self.of_hub(side, RX) - self.lean())
    }

    /// Toe change of one wheel, rad; left toe = −rz, right toe = +rz, less the turn of the line.
    pub(crate) fn toe_change(&self, side: Side) -> f64 {
        -side.sign() * (self.of_hub(side, 5) - self.turn())
    }

    fn of_hub(&self, side: Side, freedom: usize) -> f64 {
        self.state.motion(*self.frame.hubs.of(side))[freedom]
    }
}
