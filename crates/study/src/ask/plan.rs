//! The sample of a study: which points of the unit cube its designs are.

use axlebow_numerics::{Sampler, Spread};

/// Independent samples that the error of a net or of a Latin hypercube is told from.
pub const REPLICATES: usize = 8;

/// What a sample is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Purpose {
    /// To spread designs.
    Sweep,
    /// To tell how results scatter, with the error of that.
    Uncertainty {
        /// Whether the variance is split among the varied keys.
        with_indices: bool,
    },
}

/// The sample of a study.
///
/// With indices each row of the sample is d + 2 designs: a point A, then A with each one of its coordinates from B, then
/// another point B, so that neighbors differ in little.
#[derive(Debug, Clone)]
pub struct Plan {
    /// How points are spread.
    pub spread: Spread,
    /// Which of all samples.
    pub seed: u64,
    /// Rows of the sample.
    pub rows: usize,
    /// Whether the variance is split among the varied keys.
    pub with_indices: bool,
    dimensions: usize,
    samplers: Vec<Sampler>,
}

impl Plan {
    /// A sample.
    ///
    /// Arguments: `rows` in `dimensions`, rows a multiple of [`REPLICATES`] where [`replicates`](Self::replicates) says so.
    pub fn new(spread: Spread, (rows, dimensions): (usize, usize), seed: u64, purpose: Purpose) -> Plan {
        let with_indices = purpose == Purpose::Uncertainty { with_indices: true };
        let count = Self::replicates(spread, purpose);
        let axes = if with_indices { 2 * dimensions } else { dimensions };
        let sampler = |replicate| Sampler::new(spread, (rows / count, axes), (seed, replicate as u64));
        let samplers = (0..count).map(sampler).collect();
        Plan { spread, seed, rows, with_indices, dimensions, samplers }
    }

    /// Number of independent samples that rows are taken from, in turn.
    pub fn replicates(spread: Spread, purpose: Purpose) -> usize {
        if purpose == Purpose::Sweep || spread == Spread::Random { 1 } else { REPLICATES }
    }

    /// The same with about so many rows.
    pub fn coarse(&self, most: usize) -> Plan {
        let count = self.samplers.len();
        let rows = self.rows.min(most.div_ceil(count).max(2) * count);
        let purpose = match (self.with_indices, count) {
            (false, 1) => Purpose::Sweep,
            (with_indices, _) => Purpose::Uncertainty { with_indices },
        };
        Plan::new(self.spread, (rows, self.dimensions), self.seed, purpose)
    }

    /// Number of designs.
    pub fn count(&self) -> usize {
        self.rows.saturating_mul(self.each())
    }

    /// Designs of a row.
    pub fn each(&self) -> usize {
        if self.with_indices { self.dimensions + 2 } else { 1 }
    }

    /// Rows of each independent sample.
    pub fn rows_of_replicate(&self) -> usize {
        self.rows / self.samplers.len()
    }

    /// The point of the unit cube at a place.
    pub fn point(&self, place: usize) -> Vec<f64> {
        let (row, which) = (place / self.each(), place % self.each());
        let own = self.rows_of_replicate();
        let mut point = self.samplers[row / own].point(row % own);
        if self.with_indices {
            let other = point.split_off(self.dimensions);
            match which {
                0 => (),
                last if last == self.dimensions + 1 => return other,
                one => point[one - 1] = other[one - 1],
            }
        }
        point
    }

    /// Whether a design is a point of the sample itself, not one between two.
    pub fn is_own(&self, place: usize) -> bool {
        let which = place % self.each();
        which == 0 || which == self.dimensions + 1
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_with_indices_go_from_one_point_to_another() {
        let purpose = Purpose::Uncertainty { with_indices: true };
        let plan = Plan::new(Spread::Sobol, (64, 3), 1, purpose);
        assert_eq!((plan.count(), plan.each(), plan.rows_of_replicate()), (320, 5, 8));
        for row in [0, 9, 63] {
            let points: Vec<Vec<f64>> = (0..5).map(|which| plan.point(5 * row + which)).collect();
            for axis in 0..3 {
                let mut mixed = points[0].clone();
                mixed[axis] = points[4][axis];
                assert_eq!(points[axis + 1], mixed);
            }
            assert_eq!((0..5).map(|i| plan.is_own(5 * row + i)).filter(|own| *own).count(), 2);
        }
        assert!(plan.point(0) != plan.point(5 * 8), "replicates are strangers");
    }

    #[test]
    fn a_sweep_is_one_sample() {
        let plan = Plan::new(Spread::LatinHypercube, (10, 2), 1, Purpose::Sweep);
        let mut strata: Vec<usize> = (0..10).map(|i| (plan.point(i)[1] * 10.0) as usize).collect();
        strata.sort_unstable();
        assert_eq!(strata, (0..10).collect::<Vec<_>>());
    }
}
