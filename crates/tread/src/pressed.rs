//! Ribs under load: a row of one-sided springs under a crowned, leaning tread.

use crate::{Face, Pose, TreadError};

/// A face under load.
#[derive(Debug, Clone, PartialEq)]
pub struct Pressed {
    /// Deflection of a rib without crown in the middle of the face, m; negative where only ribs far from it touch.
    pub mean: f64,
    /// Deflection of each rib, zero where it does not touch, m.
    pub deflection: Vec<f64>,
    /// Load of each rib, N.
    pub load: Vec<f64>,
}

impl Face {
    /// Deflection `δ = max(0, mean + y tan γ − crown)` and load `k δ` of each rib, with the mean at which the ribs
    /// together carry the load.
    ///
    /// The load grows piecewise linearly with the mean, so that it is found exactly: ribs touch in the order of their
    /// `y tan γ − crown`, and the mean that a number of them makes is the answer where no further rib would touch.
    ///
    /// # Errors
    /// [`TreadError::Value`] for a load that is not finite, or a camber beyond ±0.2 rad.
    pub fn pressed(&self, pose: Pose) -> Result<Pressed, TreadError> {
        pose.check()?;
        let slope = pose.camber.tan();
        let offsets: Vec<f64> = self.ribs.iter().map(|rib| rib.outboard * slope - rib.crown).collect();
        let stiffness = self.rib_stiffness();
        let mean = mean_deflection(&offsets, pose.load.max(0.0) / stiffness);
        let deflection: Vec<f64> = offsets.iter().map(|offset| (mean + offset).max(0.0)).collect();
        let load = deflection.iter().map(|deflection| stiffness * deflection).collect();
        Ok(Pressed { mean, deflection, load })
    }
}

/// The mean at which `Σ max(0, mean + offset)` is `total`.
fn mean_deflection(offsets: &[f64], total: f64) -> f64 {
    let mut falling = offsets.to_vec();
    falling.sort_by(|a, b| b.total_cmp(a));
    let mut sum = 0.0;
    let mut mean = 0.0;
    for (i, offset) in falling.iter().enumerate() {
        sum += offset;
        mean = (total - sum) / (i + 1) as f64;
        if falling.get(i + 1).is_none_or(|next| mean + next <= 0.0) {
            break;
        }
    }
    mean
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_mean_carries_the_total() {
        let offsets = [0.3, -0.2, 0.1, -0.9];
        for total in [0.0, 0.05, 0.2, 0.7, 1.0, 3.0, 10.0] {
            let mean = mean_deflection(&offsets, total);
            let sum: f64 = offsets.iter().map(|offset| (mean + offset).max(0.0)).sum();
            assert!((sum - total).abs() < 1e-12, "{total}: {sum}");
        }
    }
}
