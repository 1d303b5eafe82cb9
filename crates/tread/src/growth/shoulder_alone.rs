//! One rib beside ribs that hold the tire up: the closed form of a shoulder that feeds on itself.

use crate::ROLLING_SHARE;

/// A rib beside ribs that hold the tire up and turn it, under a wave that is long against the contact.
///
/// Its wear goes with `F s²`, s² the square of its braking slip σ and of the slip s_u that driving asks for to and fro. A
/// spot that is higher by d adds `d/δ` of the load and takes `2d/(3R)` off the braking slip.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShoulderAlone {
    /// Radius R, m.
    pub radius: f64,
    /// Deflection δ of the rib, m.
    pub deflection: f64,
    /// Slip s_u that driving asks for.
    pub usual_slip: f64,
}

impl ShoulderAlone {
    /// Braking slips between which a wave grows, `σ² − (4δ/3R) σ + s_u² < 0`, the lower one the critical slip; our
    /// derivation. None from [`ShoulderAlone::usual_slip_without_growth`] on.
    pub fn growing_slips(&self) -> Option<[f64; 2]> {
        let half = self.usual_slip_without_growth();
        let square = half * half - self.usual_slip * self.usual_slip;
        // The lower root as product over the higher one, which keeps its digits.
        let high = half + square.sqrt();
        (square > 0.0).then(|| [self.usual_slip * self.usual_slip / high, high])
    }

    /// Usual slip from which on nothing grows, `2δ/(3R)`.
    pub fn usual_slip_without_growth(&self) -> f64 {
        (1.0 - ROLLING_SHARE) * self.deflection / self.radius
    }
}
