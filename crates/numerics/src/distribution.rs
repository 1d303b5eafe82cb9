//! How a value is distributed, by its quantile function.

use statrs::distribution::{ContinuousCDF, Normal};

/// How a value is distributed.
#[derive(Debug, Clone, PartialEq)]
pub enum Distribution {
    /// Normal; within a range if one is given, the probability outside spread over what is inside.
    Normal {
        /// Mean without the range.
        mean: f64,
        /// Standard deviation without the range, above 0.
        deviation: f64,
        /// Least and most; infinite where there is no limit.
        range: [f64; 2],
    },
    /// A value whose logarithm is normal.
    Lognormal {
        /// Mean of the value itself, above 0.
        mean: f64,
        /// Standard deviation of the value itself, above 0.
        deviation: f64,
        /// Least and most; infinite where there is no limit.
        range: [f64; 2],
    },
    /// Every value of a range alike.
    Uniform {
        /// Least.
        from: f64,
        /// Most.
        to: f64,
    },
    /// Every ratio of a range alike: the logarithm is uniform.
    LogUniform {
        /// Least, above 0.
        from: f64,
        /// Most.
        to: f64,
    },
    /// Rising in a straight line to the likeliest value and falling from it.
    Triangular {
        /// Least.
        from: f64,
        /// The likeliest, between the ends.
        likely: f64,
        /// Most.
        to: f64,
    },
}

/// Least share of the probability that a range must hold.
const LEAST_HELD: f64 = 1e-6;

impl Distribution {
    /// The value that a share of all values stays below.
    ///
    /// ```text
    /// lognormal: exp(μ + σ z),   σ² = ln(1 + (deviation/mean)²),   μ = ln mean − σ²/2
    /// triangular: from + √(u (to − from)(likely − from)) up to likely, to − √((1 − u)(to − from)(to − likely)) beyond
    /// truncated: Q(F(least) + u (F(most) − F(least)))
    /// ```
    ///
    /// Arguments: `share`, u, above 0 and below 1.
    ///
    /// Source: any textbook of statistics; N. L. Johnson, S. Kotz, N. Balakrishnan, Continuous Univariate Distributions,
    /// vol. 1, 1994, chapters 13 and 14 (from memory).
    pub fn quantile(&self, share: f64) -> f64 {
        match *self {
            Self::Normal { mean, deviation, range } => {
                let z = truncated(share, range.map(|end| (end - mean) / deviation));
                (mean + deviation * z).clamp(range[0], range[1])
            }
            Self::Lognormal { range, .. } => {
                let (middle, spread) = self.of_logarithm();
                let z = truncated(share, range.map(|end| (end.max(0.0).ln() - middle) / spread));
                (middle + spread * z).exp().clamp(range[0], range[1])
            }
            Self::Uniform { from, to } => (from + share * (to - from)).clamp(from, to),
            Self::LogUniform { from, to } => (from * (to / from).powf(share)).clamp(from, to),
            Self::Triangular { from, likely, to } => triangular(share, [from, likely, to]),
        }
    }

    /// Share of the probability that the range holds, 1 without one.
    pub fn held(&self) -> f64 {
        let standard = |range: [f64; 2], (middle, spread): (f64, f64)| {
            let [least, most] = range.map(|end| below((end - middle) / spread));
            most - least
        };
        match *self {
            Self::Normal { mean, deviation, range } => standard(range, (mean, deviation)),
            Self::Lognormal { range, .. } => {
                standard(range.map(|end| end.max(0.0).ln()), self.of_logarithm())
            }
            _ => 1.0,
        }
    }

    /// Whether its range holds enough of the probability to be drawn from.
    pub fn is_sound(&self) -> bool {
        self.held() >= LEAST_HELD
    }

    /// Mean and standard deviation of the logarithm.
    fn of_logarithm(&self) -> (f64, f64) {
        let Self::Lognormal { mean, deviation, .. } = *self else { return (f64::NAN, f64::NAN) };
        let variance = (deviation / mean).powi(2).ln_1p();
        (mean.ln() - 0.5 * variance, variance.sqrt())
    }
}

/// Standard normal value at a share of what a range holds.
fn truncated(share: f64, range: [f64; 2]) -> f64 {
    // In the upper tail shares crowd at 1: the lower tail has the same values with the other sign.
    if range[0] > 0.0 {
        return -truncated(1.0 - share, [-range[1], -range[0]]);
    }
    let [least, most] = range.map(below);
    Normal::standard().inverse_cdf((least + share * (most - least)).clamp(f64::MIN_POSITIVE, 1.0))
}

/// Share of the standard normal distribution below a value.
fn below(z: f64) -> f64 {
    if z.is_infinite() { f64::from(u8::from(z > 0.0)) } else { Normal::standard().cdf(z) }
}

fn triangular(share: f64, [from, likely, to]: [f64; 3]) -> f64 {
    let width = to - from;
    if share * width < likely - from {
        from + (share * width * (likely - from)).sqrt()
    } else {
        to - ((1.0 - share) * width * (to - likely)).sqrt()
    }
}

#[cfg(test)]
mod tests {
    use approx::assert_relative_eq;

    use super::*;

    const OPEN: [f64; 2] = [f64::NEG_INFINITY, f64::INFINITY];

    fn moments(distribution: &Distribution) -> (f64, f64) {
        let count = 200_000;
        let values = || (0..count).map(|i| distribution.quantile((f64::from(i) + 0.5) / f64::from(count)));
        let mean = values().sum::<f64>() / f64::from(count);
        let variance = values().map(|x| (x - mean).powi(2)).sum::<f64>() / f64::from(count);
        (mean, variance.sqrt())
    }

    /// Standard normal quantiles: Abramowitz and Stegun table 26.5 (from memory), the half of the last digit printed.
    #[test]
    fn normal_quantiles_match_abramowitz_stegun_table_26_5() {
        let normal = Distribution::Normal { mean: 10.0, deviation: 2.0, range: OPEN };
        for (upper, z) in [(0.5, 0.0), (0.05, 1.64485), (0.025, 1.95996), (0.005, 2.57583), (0.001, 3.09023)]
        {
            assert!((normal.quantile(1.0 - upper) - (10.0 + 2.0 * z)).abs() < 2.0 * 0.5e-5);
            assert!((normal.quantile(upper) - (10.0 - 2.0 * z)).abs() < 2.0 * 0.5e-5);
        }
    }

    /// Closed forms; the sum over 200,000 midpoints leaves out the outermost tails.
    #[test]
    fn moments_are_those_asked_for() {
        let lognormal = Distribution::Lognormal { mean: 3.0, deviation: 1.2, range: OPEN };
        let (mean, deviation) = moments(&lognormal);
        assert_relative_eq!(mean, 3.0, max_relative = 1e-5);
        assert_relative_eq!(deviation, 1.2, max_relative = 1e-3);
        let (mean, deviation) = moments(&Distribution::Triangular { from: 1.0, likely: 2.0, to: 5.0 });
        assert_relative_eq!(mean, 8.0 / 3.0, max_relative = 1e-9);
        // (a² + b² + c² − ab − ac − bc)/18
        assert_relative_eq!(deviation, (13.0_f64 / 18.0).sqrt(), max_relative = 1e-6);
        let (mean, deviation) = moments(&Distribution::Uniform { from: 2.0, to: 4.0 });
        assert_relative_eq!(mean, 3.0, max_relative = 1e-12);
        assert_relative_eq!(deviation, 2.0 / 12.0_f64.sqrt(), max_relative = 1e-9);
        let log = Distribution::LogUniform { from: 1.0, to: 100.0 };
        assert_relative_eq!(log.quantile(0.5), 10.0, max_relative = 1e-14);
    }

    /// The half normal beyond its mean: mean σ√(2/π), deviation σ√(1 − 2/π).
    #[test]
    fn truncated_at_the_mean_is_half_normal() {
        let half = Distribution::Normal { mean: 1.0, deviation: 2.0, range: [1.0, f64::INFINITY] };
        let (mean, deviation) = moments(&half);
        let ratio = std::f64::consts::FRAC_2_PI;
        assert_relative_eq!(mean, 1.0 + 2.0 * ratio.sqrt(), max_relative = 1e-5);
        assert_relative_eq!(deviation, 2.0 * (1.0 - ratio).sqrt(), max_relative = 1e-3);
        assert_relative_eq!(half.held(), 0.5, max_relative = 1e-12);
    }

    #[test]
    fn a_range_far_from_the_mean_keeps_its_digits_and_one_beyond_is_unsound() {
        for sign in [-1.0, 1.0] {
            let ends: [f64; 2] = [4.0 * sign, 4.1 * sign];
            let range = [ends[0].min(ends[1]), ends[0].max(ends[1])];
            let tail = Distribution::Normal { mean: 0.0, deviation: 1.0, range };
            let values: Vec<f64> = (0..1000).map(|i| tail.quantile((f64::from(i) + 0.5) / 1000.0)).collect();
            assert!(values.is_sorted() && values.iter().all(|x| (range[0]..=range[1]).contains(x)));
            assert!(values.windows(2).all(|pair| pair[1] > pair[0]), "no two alike");
            assert!(tail.is_sound());
        }
        let beyond = Distribution::Normal { mean: 0.0, deviation: 1.0, range: [9.0, 10.0] };
        assert!(!beyond.is_sound());
    }
}
