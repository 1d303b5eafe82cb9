//! The camber from which a shoulder feeds on itself.

use crate::growth::scuff_slopes::Slopes;
use crate::{Face, Pose, ROLLING_SHARE, TreadError};

/// Steepest camber that is looked at, rad.
const STEEPEST: f64 = 0.05;
/// Steps over the cambers.
const STEPS: usize = 100;
/// Halvings of the step in which a shoulder turns.
const HALVINGS: usize = 40;

/// Cambers from which a shoulder rib feeds on itself beside ribs that hold the tire up and turn it, under a wave that is
/// long against the contact. Camber is positive with the top leaning outward.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CriticalCamber {
    /// The inner shoulders feed on themselves below it, rad, zero or less: with the tops leaning farther in. Zero where they do
    /// so upright; none where they do not down to −0.05 rad.
    pub inner: Option<f64>,
    /// The outer shoulders feed on themselves above it, rad, zero or more; as for the inner ones.
    pub outer: Option<f64>,
}

impl CriticalCamber {
    /// Whether a shoulder of the upright tire feeds on itself.
    pub fn is_upright(&self) -> bool {
        self.inner == Some(0.0) || self.outer == Some(0.0)
    }

    /// How far a camber (rad) is from the nearer one, rad: zero or below where a shoulder feeds on itself.
    pub fn margin(&self, camber: f64) -> Option<f64> {
        let margins =
            [self.inner.map(|critical| camber - critical), self.outer.map(|critical| critical - camber)];
        margins.into_iter().flatten().reduce(f64::min)
    }
}

impl Face {
    /// The cambers from which the shoulders feed on themselves under the load and toe of a pose.
    ///
    /// # Errors
    /// As [`Face::rolling`].
    pub fn critical_camber(&self, pose: Pose) -> Result<CriticalCamber, TreadError> {
        let critical = |rib: usize, side: f64| self.turning_point(pose, rib, side);
        Ok(CriticalCamber {
            inner: critical(0, -1.0)?.map(|lean| 0.0 - lean),
            outer: critical(self.tread.ribs - 1, 1.0)?,
        })
    }

    /// The least lean to a side (±1) at which a rib of some tire feeds on itself.
    fn turning_point(&self, pose: Pose, rib: usize, side: f64) -> Result<Option<f64>, TreadError> {
        let feeds =
            |lean: f64| Ok::<_, TreadError>(self.leveling(Pose { camber: side * lean, ..pose }, rib)? < 0.0);
        let (mut low, mut high) = (0.0, 0.0);
        while !feeds(high)? {
            low = high;
            high += STEEPEST / STEPS as f64;
            if high > STEEPEST {
                return Ok(None);
            }
        }
        for _ in 0..HALVINGS {
            let middle = 0.5 * (low + high);
            *(if feeds(middle)? { &mut high } else { &mut low }) = middle;
        }
        Ok(Some(0.5 * (low + high)))
    }

    /// Wear gained by a higher spot of a rib, the least over the tires, J/m² for each m.
    fn leveling(&self, pose: Pose, rib: usize) -> Result<f64, TreadError> {
        let each = self.own_leveling(pose)?;
        Ok((0..self.tires()).map(|tire| each[tire * self.tread.ribs + rib]).fold(f64::INFINITY, f64::min))
    }

    /// Wear that a higher spot of each rib gains by itself, hub and speed of turning held: `k ∂w/∂F + (2/3) ∂w/∂R`.
    fn own_leveling(&self, pose: Pose) -> Result<Vec<f64>, TreadError> {
        let springs = self.rib_springs();
        let mut sums = vec![0.0; springs.len()];
        for state in self.wear_states(pose)? {
            for ((sum, slopes), (_, stiffness)) in sums.iter_mut().zip(&state.ribs).zip(&springs) {
                let Slopes { load, radius, .. } = slopes.energy;
                *sum += state.share * (stiffness * load + (1.0 - ROLLING_SHARE) * radius);
            }
        }
        Ok(sums)
    }
}
