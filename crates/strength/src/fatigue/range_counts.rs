//! How often each range of stress came, in little room.

use super::{Cycle, LifeCurve};

/// Bins for each doubling of the range: one is 1.1 % broad.
const PER_DOUBLING: f64 = 64.0;
/// Doublings from 1 Pa that have bins, to beyond 1e12 Pa.
const DOUBLINGS: usize = 40;
/// The last bin, which takes all that is beyond.
const LAST: usize = PER_DOUBLING as usize * DOUBLINGS - 1;

/// How often each range of stress came: bins 1.1 % broad from 1 Pa on, so that hours of road take no room.
///
/// A bin stands for its cycles by their mean of S³, so that damage on a branch of slope 3 is exact and on one of slope 5
/// within 1e-4. What is below 1 Pa is left out; what is beyond the bins counts in the last one.
#[derive(Debug, Clone, PartialEq)]
pub struct RangeCounts {
    bins: Vec<Bin>,
}

#[derive(Debug, Clone, Copy, PartialEq, Default)]
struct Bin {
    cycles: f64,
    /// Sum of S³.
    cubes: f64,
}

impl Default for RangeCounts {
    fn default() -> Self {
        Self { bins: vec![Bin::default(); PER_DOUBLING as usize * DOUBLINGS] }
    }
}

impl RangeCounts {
    /// Counts a cycle.
    #[inline]
    pub fn add(&mut self, cycle: Cycle) {
        if cycle.range < 1.0 {
            return;
        }
        let number = (cycle.range.log2() * PER_DOUBLING) as usize;
        let bin = &mut self.bins[number.min(LAST)];
        bin.cycles += cycle.count;
        bin.cubes += cycle.count * cycle.range.powi(3);
    }

    /// Counts the cycles of another history so many times.
    pub fn add_times(&mut self, other: &Self, times: f64) {
        for (bin, more) in self.bins.iter_mut().zip(&other.bins) {
            bin.cycles += times * more.cycles;
            bin.cubes += times * more.cubes;
        }
    }

    /// The ranges (Pa) that came, with how often.
    pub fn ranges(&self) -> impl Iterator<Item = (f64, f64)> + '_ {
        let came = self.bins.iter().filter(|bin| bin.cycles > 0.0);
        came.map(|bin| ((bin.cubes / bin.cycles).cbrt(), bin.cycles))
    }

    /// Damage by Miner's sum; a crack is expected at 1.
    ///
    /// Source: M. A. Miner, *J. Appl. Mech.* 12 (1945) A159-A164.
    pub fn damage(&self, curve: &LifeCurve) -> f64 {
        self.ranges().fold(0.0, |sum, (range, cycles)| sum + cycles / curve.cycles(range))
    }

    /// Greatest range that came, Pa; 0 where none did.
    pub fn greatest(&self) -> f64 {
        self.ranges().last().map_or(0.0, |(range, _)| range)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Detail, damage, rainflow};
    use approx::assert_relative_eq;

    fn history() -> Vec<f64> {
        (0..5000).map(|i| 90e6 * (0.37 * f64::from(i)).sin() * (0.0113 * f64::from(i)).cos()).collect()
    }

    #[test]
    fn bins_do_the_damage_of_their_cycles() {
        let cycles = rainflow(&history()).unwrap();
        let mut counts = RangeCounts::default();
        cycles.iter().for_each(|cycle| counts.add(*cycle));
        for name in ["attachment-long", "throat-shear", "iiw-gusset-long"] {
            let curve = Detail::named(name).unwrap().curve().unwrap();
            assert_relative_eq!(counts.damage(&curve), damage(&cycles, &curve), max_relative = 2e-3);
        }
        let plain = LifeCurve::through(71e6, 2e6, 3.0).unwrap();
        assert_relative_eq!(counts.damage(&plain), damage(&cycles, &plain), max_relative = 1e-9);
    }

    #[test]
    fn damage_adds_up() {
        let curve = Detail::named("attachment-long").unwrap().curve().unwrap();
        let counted = |history: &[f64]| {
            let mut counts = RangeCounts::default();
            rainflow(history).unwrap().into_iter().for_each(|cycle| counts.add(cycle));
            counts
        };
        let (mild, rough) = (counted(&history()), counted(&[0.0, 140e6, 0.0]));
        let mut year = RangeCounts::default();
        year.add_times(&mild, 3.0);
        year.add_times(&rough, 50.0);
        let sum = 3.0 * mild.damage(&curve) + 50.0 * rough.damage(&curve);
        assert_relative_eq!(year.damage(&curve), sum, max_relative = 2e-3);
        assert_relative_eq!(year.greatest(), 179.9e6, max_relative = 0.01);
    }

    #[test]
    fn small_ranges_count_down_to_a_pascal() {
        let curve = LifeCurve::through(100.0, 10.0, 3.0).unwrap();
        let mut counts = RangeCounts::default();
        [0.5, 100.0].into_iter().for_each(|range| {
            counts.add(Cycle { range, mean: 0.0, count: 1.0, from: 0, to: 1 });
        });
        assert_relative_eq!(counts.damage(&curve), 0.1, max_relative = 1e-9);
    }

    #[test]
    fn ranges_beyond_the_bins_are_not_lost() {
        let curve = Detail::named("attachment-long").unwrap().curve().unwrap();
        let mut counts = RangeCounts::default();
        counts.add(Cycle { range: 1e15, mean: 0.0, count: 1.0, from: 0, to: 1 });
        assert_relative_eq!(counts.greatest(), 1e15, max_relative = 1e-9);
        assert!(counts.damage(&curve) > 1e6);
    }

    #[test]
    fn no_cycles_do_no_damage() {
        let curve = Detail::named("attachment-long").unwrap().curve().unwrap();
        assert_eq!(RangeCounts::default().damage(&curve).recip(), f64::INFINITY);
        assert_eq!(RangeCounts::default().greatest(), 0.0);
    }
}
