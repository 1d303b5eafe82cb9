//! How an axle runs on the road.

use axlebow_tread::Duty;

/// What the axle is asked for on the road, and how it is set in the vehicle.
#[derive(Debug, Clone, PartialEq)]
pub struct Running {
    /// Forces that driving asks of the tires.
    pub duty: Duty,
    /// Angle of the axle out of square with the vehicle, positive with its left end ahead, rad: it toes the left wheel in
    /// and the right one out.
    pub skew: f64,
}

impl Default for Running {
    fn default() -> Self {
        Running { duty: Duty::line_haul(), skew: 0.0 }
    }
}
