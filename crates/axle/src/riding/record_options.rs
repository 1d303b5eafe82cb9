//! What a ride keeps beside the histories that it always keeps.

use crate::AxleError;
use crate::riding::ride_outcome::RideHistory;

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
    /// Refuses a ride of a duration (s) in steps of a length (s) whose histories would be too many numbers to keep.
    pub(crate) fn check_room(self, duration: f64, step: f64, stations: usize) -> Result<(), AxleError> {
        let stresses = self.stresses;
        let each = RideHistory::ALWAYS + if stresses { stations } else { 0 };
        let samples = duration / step + 1.0;
        if samples * each as f64 > MOST_NUMBERS {
            return Err(AxleError::RideTooLong { samples, most: MOST_NUMBERS / each as f64, stresses });
        }
        Ok(())
    }
}
