//! How often each range of a random stress comes.

use std::f64::consts::SQRT_2;

use libm::tgamma;

use super::{LifeCurve, SpectralMoments};

/// From this regularity on a stress is a narrow band: the coefficients of the wide one become 0/0.
const NARROW: f64 = 1.0 - 1e-9;

/// Even parts of each branch of a life curve for Simpson's rule: the narrowest exponential that Dirlik's formula
/// gives in practice spans tens of them.
const PARTS: usize = 2000;

/// How often each range of a random stress comes, with z = S/(2 √m0):
///
/// p(S) = [D1/Q exp(-z/Q) + D2 z/R² exp(-z²/2R²) + D3 z exp(-z²/2)] / (2 √m0).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RangeDistribution {
    scale: f64,
    rate: f64,
    weights: [f64; 3],
    q: f64,
    r: f64,
}

impl RangeDistribution {
    /// Ranges of a narrow band: twice its peaks, which follow Rayleigh's law, as often as it crosses its mean.
    ///
    /// An upper bound of the damage of a wide one.
    ///
    /// Source: J. W. Miles, *J. Aeronaut. Sci.* 21 (1954) 753-762.
    pub fn narrow_band(moments: &SpectralMoments) -> Self {
        let (scale, rate) = (2.0 * moments.rms(), moments.upcrossing_rate());
        Self { scale, rate, weights: [0.0, 0.0, 1.0], q: 1.0, r: 1.0 }
    }

    /// Ranges of a band of any width as rainflow would count them, as often as there are peaks.
    ///
    /// An empirical fit to simulated Gaussian histories. Where it has no value, as for no stress at all, that of a
    /// narrow band.
    ///
    /// Source: T. Dirlik, *Application of Computers in Fatigue Analysis*, PhD thesis, Univ. of Warwick 1985 (from
    /// memory).
    pub fn dirlik(moments: &SpectralMoments) -> Self {
        let gamma = moments.regularity();
        if gamma >= NARROW {
            return Self::narrow_band(moments);
        }
        let x_m = moments.mean_over_peak_rate();
        let d_1 = 2.0 * (x_m - gamma * gamma) / (1.0 + gamma * gamma);
        let r = (gamma - x_m - d_1 * d_1) / (1.0 - gamma - d_1 + d_1 * d_1);
        let d_2 = (1.0 - gamma - d_1 + d_1 * d_1) / (1.0 - r);
        let d_3 = 1.0 - d_1 - d_2;
        let q = 1.25 * (gamma - d_3 - d_2 * r) / d_1;
        if !(q.is_finite() && r.is_finite()) {
            return Self::narrow_band(moments);
        }
        Self { scale: 2.0 * moments.rms(), rate: moments.peak_rate(), weights: [d_1, d_2, d_3], q, r }
    }

    /// Cycles per second (Hz).
    pub fn rate(&self) -> f64 {
        self.rate
    }

    /// Weights D1, D2, D3 of the exponential and of the two Rayleigh laws, with Q and R.
    pub fn coefficients(&self) -> ([f64; 3], f64, f64) {
        (self.weights, self.q, self.r)
    }

    /// Mean of S^m (Pa^m), (2 √m0)^m [D1 Q^m Γ(1+m) + √2^m Γ(1+m/2) (D2 |R|^m + D3)].
    pub fn mean_power(&self, m: f64) -> f64 {
        let [d_1, d_2, d_3] = self.weights;
        let exponential = d_1 * self.q.powf(m) * tgamma(1.0 + m);
        let rayleigh = SQRT_2.powf(m) * tgamma(1.0 + 0.5 * m) * (d_2 * self.r.abs().powf(m) + d_3);
        self.scale.powf(m) * (exponential + rayleigh)
    }

    /// Density p(S) (1/Pa) at a range S (Pa).
    pub fn density(&self, range: f64) -> f64 {
        let z = range / self.scale;
        let [d_1, d_2, d_3] = self.weights;
        let rayleigh = |width: f64| z / (width * width) * (-0.5 * (z / width).powi(2)).exp();
        (d_1 / self.q * (-z / self.q).exp() + d_2 * rayleigh(self.r) + d_3 * rayleigh(1.0)) / self.scale
    }

    /// Damage per second by Miner's sum (1/s), rate ∫ p(S)/N(S) dS over every branch of the curve.
    ///
    /// Error below 1e-6 of the value, by Simpson's rule; exact where the curve is one branch without end.
    pub fn damage_rate(&self, curve: &LifeCurve) -> f64 {
        if let [only] = curve.branches()
            && only.least == 0.0
        {
            return self.rate * self.mean_power(only.slope) / only.constant;
        }
        let (mut top, mut sum) = (self.farthest(), 0.0);
        for branch in curve.branches() {
            let power = |range: f64| self.density(range) * range.powf(branch.slope) / branch.constant;
            sum += simpson(power, branch.least, top);
            top = top.min(branch.least);
        }
        self.rate * sum
    }

    /// A range so far out that what lies beyond does no damage: z of 16 and of 60 Q.
    fn farthest(&self) -> f64 {
        self.scale * (60.0 * self.q.abs()).max(16.0)
    }
}

/// Integral from `low` to `high` by Simpson's rule; 0 where there is nothing between.
fn simpson(value: impl Fn(f64) -> f64, low: f64, high: f64) -> f64 {
    if low >= high {
        return 0.0;
    }
    let step = (high - low) / PARTS as f64;
    let weight = |i: usize| match i {
        0 | PARTS => 1.0,
        i if i % 2 == 1 => 4.0,
        _ => 2.0,
    };
    let sum: f64 = (0..=PARTS).map(|i| weight(i) * value(low + i as f64 * step)).sum();
    sum * step / 3.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::StressSpectrum;
    use approx::assert_relative_eq;

    fn flat() -> SpectralMoments {
        StressSpectrum::new(vec![(5.0, 250e12), (15.0, 250e12)]).unwrap().moments()
    }

    #[test]
    fn densities_sum_to_one_and_to_the_closed_form_of_their_powers() {
        for distribution in [RangeDistribution::narrow_band(&flat()), RangeDistribution::dirlik(&flat())] {
            let top = distribution.farthest();
            assert_relative_eq!(simpson(|s| distribution.density(s), 0.0, top), 1.0, max_relative = 1e-6);
            for m in [1.0, 3.0, 5.0] {
                let sum = simpson(|s| distribution.density(s) * s.powf(m), 0.0, top);
                assert_relative_eq!(sum, distribution.mean_power(m), max_relative = 1e-6);
            }
        }
    }

    #[test]
    fn no_stress_does_no_damage() {
        let still = StressSpectrum::new(vec![(5.0, 0.0), (15.0, 0.0)]).unwrap().moments();
        let curve = LifeCurve::through(71e6, 2e6, 3.0).unwrap();
        for curve in [curve.clone(), curve.ending_at(5e6).unwrap()] {
            assert_eq!(RangeDistribution::dirlik(&still).damage_rate(&curve), 0.0);
        }
    }

    #[test]
    fn a_knee_that_changes_nothing_does_not_change_the_damage() {
        let plain = LifeCurve::through(71e6, 2e6, 3.0).unwrap();
        let knee = plain.clone().then(3.0, 5e6).unwrap();
        let distribution = RangeDistribution::dirlik(&flat());
        let (one, two) = (distribution.damage_rate(&plain), distribution.damage_rate(&knee));
        assert_relative_eq!(one, two, max_relative = 1e-6);
    }

    #[test]
    fn a_narrow_band_is_the_limit_of_a_wide_one() {
        let narrow = StressSpectrum::new(vec![(9.999, 1e15), (10.001, 1e15)]).unwrap().moments();
        let [by_dirlik, by_miles] = [RangeDistribution::dirlik, RangeDistribution::narrow_band].map(|law| {
            let distribution = law(&narrow);
            distribution.rate() * distribution.mean_power(3.0)
        });
        assert_relative_eq!(by_dirlik, by_miles, max_relative = 1e-2);
    }
}
