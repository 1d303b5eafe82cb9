//! Whether stated probabilities come true.

use crate::{Estimated, Sampled};

/// Statements whose probabilities lie in one range.
#[derive(Debug, Clone, PartialEq)]
pub struct ReliabilityBin {
    /// The range, its upper end in it only for the last.
    pub range: [f64; 2],
    /// Statements in it.
    pub count: usize,
    /// Mean of their probabilities.
    pub stated: f64,
    /// Share of them that came true, with its interval of Clopper and Pearson.
    pub came_true: Estimated,
}

/// Statements by their probability, in ranges of equal width; ranges without one are left out.
///
/// Arguments: `statements`, probability and whether it came true; `bins`, at least one; `confidence` of the intervals.
pub fn reliability(statements: &[(f64, bool)], bins: usize, confidence: f64) -> Vec<ReliabilityBin> {
    let bin_of = |stated: f64| ((stated * bins as f64) as usize).min(bins - 1);
    let of_bin = |bin: usize| {
        let own = statements.iter().filter(|(stated, _)| bin_of(*stated) == bin);
        let (mut count, mut sum, mut hits) = (0, 0.0, 0);
        for (stated, came_true) in own {
            (count, sum, hits) = (count + 1, sum + stated, hits + usize::from(*came_true));
        }
        (count > 0).then(|| ReliabilityBin {
            range: [bin, bin + 1].map(|edge| edge as f64 / bins as f64),
            count,
            stated: sum / count as f64,
            came_true: Sampled::share((hits, count), confidence),
        })
    };
    (0..bins).filter_map(of_bin).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn statements_are_counted_by_their_probability() {
        let statements = [(0.05, false), (0.15, true), (0.95, true), (1.0, true), (0.9, false)];
        let bins = reliability(&statements, 5, 0.95);
        assert_eq!(bins.len(), 2);
        assert_eq!((bins[0].range, bins[0].count), ([0.0, 0.2], 2));
        assert!((bins[0].stated - 0.1).abs() < 1e-15 && bins[0].came_true.value == 0.5);
        assert_eq!((bins[1].range, bins[1].count), ([0.8, 1.0], 3));
        assert!((bins[1].stated - 0.95).abs() < 1e-15 && (bins[1].came_true.value - 2.0 / 3.0).abs() < 1e-15);
    }
}
