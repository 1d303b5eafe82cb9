//! What a ride keeps beside the histories that it always keeps.

use axlebow_fe::NodeId;

use crate::dynamics::vibration::VibrationModel;
use crate::riding::ride_outcome::RideHistory;
use crate::{AxleError, Ride, Side, Sides};

/// Most numbers that a ride's histories may have: 400 MB of them.
const MOST_NUMBERS: f64 = 5e7;

/// What a ride keeps beside the histories that it always keeps; by default nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct RecordOptions {
    /// The fiber stress of every place on the axle.
    pub stresses: bool,
    /// At so many moments, evenly spread over the ride from its first sample to its last, the shape of the axle;
    /// every sample when there are fewer of them.
    pub shapes: usize,
}

impl RecordOptions {
    /// Refuses a ride of a duration (s) whose histories would be too many numbers to keep.
    pub(crate) fn check_room(ride: &Ride, duration: f64, stations: usize) -> Result<(), AxleError> {
        let each = RideHistory::ALWAYS + if ride.keep.stresses { stations } else { 0 };
        let samples = duration / ride.step + 1.0;
        if samples * each as f64 > MOST_NUMBERS {
            let most = MOST_NUMBERS / each as f64;
            return Err(AxleError::RideTooLong { samples, most, stresses: ride.keep.stresses });
        }
        Ok(())
    }
}

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

/// Which samples are among the moments kept.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Moments {
    wanted: usize,
    taken: usize,
    last: usize,
}

impl Moments {
    /// Moments of a ride whose samples are numbered from 0 to `last`.
    pub(crate) fn new(wanted: usize, last: usize) -> Self {
        Moments { wanted: wanted.min(last + 1), taken: 0, last }
    }

    /// Whether a sample is one of them; samples come in order.
    pub(crate) fn take(&mut self, sample: usize) -> bool {
        let due = self.taken < self.wanted && sample >= self.next();
        self.taken += usize::from(due);
        due
    }

    fn next(&self) -> usize {
        let gaps = self.wanted.saturating_sub(1).max(1);
        (self.taken * self.last + gaps / 2) / gaps
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn taken(wanted: usize, last: usize) -> Vec<usize> {
        let mut moments = Moments::new(wanted, last);
        (0..=last).filter(|sample| moments.take(*sample)).collect()
    }

    #[test]
    fn moments_are_spread_evenly_with_both_ends() {
        assert_eq!(taken(5, 100), [0, 25, 50, 75, 100]);
        assert_eq!(taken(4, 10), [0, 3, 7, 10]);
        assert_eq!(taken(2, 10), [0, 10]);
        assert_eq!(taken(1, 10), [0]);
        assert_eq!(taken(0, 10), [0; 0]);
    }

    #[test]
    fn a_short_ride_gives_every_sample() {
        assert_eq!(taken(100, 3), [0, 1, 2, 3]);
        for wanted in [7, 333, 600, 999, 1001] {
            assert_eq!(taken(wanted, 1000).len(), wanted);
        }
    }
}
