//! What the net present value may come to when the inputs with a range are drawn from it.

use axlebow_numerics::{Estimated, Histogram, Sampled, Sampler, Spread, percentile};
use rayon::prelude::*;

use super::study::PaybackStudy;
use super::wear::AxleChange;

/// Shares of the draws below the values that are told.
const SHARES: [f64; 5] = [0.05, 0.25, 0.5, 0.75, 0.95];
/// Probability that an interval holds the truth.
const CONFIDENCE: f64 = 0.95;

/// How many draws are made, and which.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DrawOptions {
    /// How many.
    pub count: u32,
    /// Which of all sets of draws.
    pub seed: u32,
}

/// The net present value over the draws.
#[derive(Debug, Clone, PartialEq)]
pub struct PaybackDraws {
    /// How many were made.
    pub count: usize,
    /// The mean.
    pub mean: Estimated,
    /// Standard deviation.
    pub deviation: Estimated,
    /// Shares of the draws and the values below which they stay.
    pub percentiles: Vec<(f64, f64)>,
    /// Probability that the remedy pays.
    pub pays: Estimated,
    /// The values counted in steps.
    pub histogram: Histogram,
}

impl PaybackStudy {
    /// The draws; none where no input has a range.
    ///
    /// Inputs are drawn independently of one another, each draw by its place: the same on any number of threads.
    pub(crate) fn drawn(&self, change: &AxleChange) -> Option<PaybackDraws> {
        if self.ranges.is_empty() {
            return None;
        }
        let count = self.draws.count as usize;
        let sampler = Sampler::new(Spread::Random, (count, self.ranges.len()), (self.draws.seed.into(), 0));
        let worth = |place: usize| {
            let point = sampler.point(place);
            let drawn = self.ranges.iter().zip(point).fold(self.terms, |terms, (range, share)| {
                terms.with(range.input, range.distribution.quantile(share))
            });
            drawn.net_present_value(change)
        };
        let values: Vec<f64> = (0..count).into_par_iter().map(worth).collect();
        let pays = values.iter().filter(|value| **value > 0.0).count();
        let sampled = Sampled { replicates: vec![values], confidence: CONFIDENCE };
        let (mean, deviation) = (sampled.mean(), sampled.deviation());
        let mut sorted = sampled.replicates.concat();
        sorted.sort_by(f64::total_cmp);
        Some(PaybackDraws {
            count,
            mean,
            deviation,
            percentiles: SHARES.map(|share| (share, percentile(&sorted, share))).to_vec(),
            pays: Sampled::share((pays, count), CONFIDENCE),
            histogram: Histogram::of(&sorted),
        })
    }
}
