//! Wear round a tire, and the waves in it.

use std::f64::consts::TAU;

/// Wear of one tire, rib by rib and part by part of its circumference.
#[derive(Debug, Clone, PartialEq)]
pub struct RoundMap {
    /// For each rib, the inner shoulder first, wear of each part in the order in which they meet the road, over the
    /// mean wear of the upright tire; none where no part of the ride fell.
    pub ribs: Vec<Vec<Option<f64>>>,
}

/// A wave of wear that goes round a tire a whole number of times.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Harmonic {
    /// Waves round the tire.
    pub count: u16,
    /// Half of crest less trough over the mean wear.
    pub amplitude: f64,
}

impl RoundMap {
    /// A map of ribs that have equally many parts.
    pub(crate) fn new(ribs: Vec<Vec<Option<f64>>>) -> Self {
        RoundMap { ribs }
    }

    /// Waves of a rib with 1 to `most` crests, by Fourier's sums over the parts; none where a part is missing or
    /// nothing wears.
    pub fn harmonics(&self, rib: usize, most: u16) -> Vec<Harmonic> {
        let parts: Option<Vec<f64>> = self.ribs.get(rib).and_then(|parts| parts.iter().copied().collect());
        let Some(parts) = parts.filter(|parts| parts.iter().sum::<f64>() > 0.0) else { return Vec::new() };
        let mean = parts.iter().sum::<f64>() / parts.len() as f64;
        let limit = most.min(u16::try_from(parts.len() / 2).unwrap_or(u16::MAX));
        let wave = |count: u16| {
            let turn = TAU * f64::from(count) / parts.len() as f64;
            let sum = parts.iter().enumerate().fold([0.0; 2], |sum, (i, part)| {
                let (sine, cosine) = (turn * i as f64).sin_cos();
                [sum[0] + part * cosine, sum[1] + part * sine]
            });
            Harmonic { count, amplitude: 2.0 * f64::hypot(sum[0], sum[1]) / (parts.len() as f64 * mean) }
        };
        (1..=limit).map(wave).collect()
    }

    /// The strongest wave of a rib.
    pub fn strongest(&self, rib: usize, most: u16) -> Option<Harmonic> {
        let stronger = |a: Harmonic, b: Harmonic| if b.amplitude > a.amplitude { b } else { a };
        self.harmonics(rib, most).into_iter().reduce(stronger)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wave_is_found_with_its_size() {
        let part = |i: usize| Some(2.0 * (1.0 + 0.3 * (TAU * 7.0 * i as f64 / 72.0 + 0.4).cos()));
        let map = RoundMap::new(vec![(0..72).map(part).collect()]);
        let strongest = map.strongest(0, 20).unwrap();
        assert_eq!(strongest.count, 7);
        assert!((strongest.amplitude - 0.3).abs() < 1e-12);
        let other = map.harmonics(0, 20).into_iter().filter(|harmonic| harmonic.count != 7);
        assert!(other.into_iter().all(|harmonic| harmonic.amplitude < 1e-12));
    }

    #[test]
    fn a_tire_that_did_not_turn_once_has_no_waves() {
        let map = RoundMap::new(vec![vec![Some(1.0), None, Some(2.0)]]);
        assert!(map.harmonics(0, 20).is_empty() && map.strongest(1, 20).is_none());
    }
}
