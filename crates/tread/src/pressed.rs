//! Tires of a hub as springs, and the ribs of each as a row of one-sided springs under a crowned, leaning tread.
//!
//! This is the contact of the axle's statics and rides: a tire is a spring under its own center, which pushes only.
//! On one hub that leans by γ the outer of two tires carries k s γ more than the inner, s apart, until the inner one is
//! off the road. What a tire carries is then shared by its ribs. Angles are small: a rib at y lies y γ lower.

use crate::{Face, Pose, TreadError};

/// A face under load.
#[derive(Debug, Clone, PartialEq)]
pub struct Pressed {
    /// Deflection of a rib without crown in the middle of each tire, m; negative where only ribs far from it touch.
    pub middle: Vec<f64>,
    /// Deflection of each rib, zero where it does not touch, m.
    pub deflection: Vec<f64>,
    /// Load of each rib, N.
    pub load: Vec<f64>,
}

impl Face {
    /// Deflection `δ = max(0, middle + y γ − crown)` and load `k δ` of each rib, with the deflection in the middle of each
    /// tire at which its ribs together carry its load.
    ///
    /// Both loads grow piecewise linearly with the deflection, so that it is found exactly: ribs touch in the order of their
    /// `y γ − crown`, and the deflection that a number of them makes is the answer where no further rib would touch.
    ///
    /// # Errors
    /// [`TreadError::Value`] for a load that is not finite, or a camber beyond ±0.2 rad.
    pub fn pressed(&self, pose: Pose) -> Result<Pressed, TreadError> {
        pose.check()?;
        let stiffness = self.rib_stiffness();
        let offsets: Vec<f64> = self.ribs.iter().map(|rib| rib.on_tire * pose.camber - rib.crown).collect();
        let (mut middle, mut deflection) = (Vec::with_capacity(self.places.len()), Vec::new());
        for (load, own) in self.tire_loads(pose).into_iter().zip(offsets.chunks(self.tread.ribs)) {
            let mean = mean_deflection(own, load / stiffness);
            deflection.extend(own.iter().map(|offset| (mean + offset).max(0.0)));
            middle.push(mean);
        }
        let load = deflection.iter().map(|deflection| stiffness * deflection).collect();
        Ok(Pressed { middle, deflection, load })
    }

    /// Load of each tire: springs under their centers on one hub.
    fn tire_loads(&self, pose: Pose) -> Vec<f64> {
        let stiffness = self.carcass.stiffness;
        let lower: Vec<f64> = self.places.iter().map(|place| place * pose.camber).collect();
        let mean = mean_deflection(&lower, pose.load.max(0.0) / stiffness);
        lower.iter().map(|lower| stiffness * (mean + lower).max(0.0)).collect()
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
