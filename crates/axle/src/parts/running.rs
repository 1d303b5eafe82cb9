//! How an axle runs on the road.

use axlebow_tread::Duty;

/// What the axle is asked for on the road, and how it is set in the vehicle.
#[derive(Debug, Clone, PartialEq)]
pub struct Running {
    /// Forces that driving asks of the tires.
    pub duty: Duty,
    /// Volume that a joule of scuff takes off an ordinary rubber on the fleet's roads, as removals tell it, m³/J.
    pub abrasion: Option<f64>,
    /// Angle of the axle out of square with the vehicle, positive with its left end ahead, rad: it toes the left wheel in
    /// and the right one out.
    pub skew: f64,
    /// Speeds that the fleet holds, by which waves of wear grow.
    pub held: HeldSpeed,
}

/// Speeds that a fleet holds: a normal distribution.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeldSpeed {
    /// Mean, m/s, above zero.
    pub mean: f64,
    /// Standard deviation, m/s; zero for one speed.
    pub deviation: f64,
}

impl Default for Running {
    fn default() -> Self {
        Running { duty: Duty::line_haul(), abrasion: None, skew: 0.0, held: HeldSpeed::default() }
    }
}

/// 100 km/h by 4 km/h (assumed: a governed line haul).
impl Default for HeldSpeed {
    fn default() -> Self {
        HeldSpeed { mean: 100.0 / 3.6, deviation: 4.0 / 3.6 }
    }
}
