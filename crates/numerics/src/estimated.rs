//! Estimates with their confidence intervals, from independent points or from independent replicates.

use statrs::distribution::{Beta, ContinuousCDF, Normal, StudentsT};

use crate::{order_interval, percentile};

/// An estimate and the interval that holds the truth with the confidence asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Estimated {
    /// The estimate.
    pub value: f64,
    /// Its interval; `None` where the sample is too small to tell.
    pub interval: Option<[f64; 2]>,
}

/// Values of a quantity in a sample.
#[derive(Debug, Clone)]
pub struct Sampled {
    /// Values of each independent replicate; one list for points that are independent themselves.
    pub replicates: Vec<Vec<f64>>,
    /// Probability that an interval holds the truth, above 0 and below 1.
    pub confidence: f64,
}

impl Sampled {
    /// All values.
    pub fn values(&self) -> impl Iterator<Item = f64> {
        self.replicates.iter().flatten().copied()
    }

    /// Mean of the values, by Student's t.
    pub fn mean(&self) -> Estimated {
        let whole = moments(self.values());
        match self.replicates.as_slice() {
            [_] => around(whole.mean, self.student(whole.count) * whole.deviation / whole.count.sqrt()),
            _ => self.between(whole.mean, |values| moments(values.iter().copied()).mean),
        }
    }

    /// Standard deviation of the values.
    ///
    /// Of independent points `s ± z √((m₄ − m₂²)/(4 m₂ n))`, which any distribution with a fourth moment has for large n.
    ///
    /// Source: H. Cramér, Mathematical Methods of Statistics, 1946, section 28.4 (from memory).
    pub fn deviation(&self) -> Estimated {
        let whole = moments(self.values());
        match self.replicates.as_slice() {
            [_] if whole.deviation > 0.0 => {
                let [second, fourth] = [2, 4].map(|power| {
                    self.values().map(|x| (x - whole.mean).powi(power)).sum::<f64>() / whole.count
                });
                let error = ((fourth - second * second).max(0.0) / (4.0 * second * whole.count)).sqrt();
                around(whole.deviation, self.normal() * error)
            }
            [_] => around(whole.deviation, 0.0),
            _ => self.between(whole.deviation, |values| moments(values.iter().copied()).deviation),
        }
    }

    /// Percentiles of the values, each between order statistics; of replicates by the scatter of shares.
    ///
    /// Arguments: `shares`, of the values that stay below, above 0 and below 1.
    pub fn percentiles(&self, shares: &[f64]) -> Vec<Estimated> {
        let mut whole: Vec<f64> = self.values().collect();
        whole.sort_by(f64::total_cmp);
        if let [_] = self.replicates.as_slice() {
            let one = |share: &f64| Estimated {
                value: percentile(&whole, *share),
                interval: order_interval(whole.len(), *share, self.confidence)
                    .map(|ends| ends.map(|place| whole[place])),
            };
            return shares.iter().map(one).collect();
        }
        shares.iter().map(|share| self.percentile_of_replicates(&whole, *share)).collect()
    }

    /// A percentile with the two between which the scatter of replicates puts it.
    ///
    /// ```text
    /// pᵣ the share of replicate r below the percentile,   δ = t √((s²(pᵣ) + 1/(12 n²))/R),   from Q(p − δ) to Q(p + δ)
    /// ```
    ///
    /// A percentile of few values is biased, a share is not; 1/(12 n²) is what counting in steps of 1/n leaves open.
    ///
    /// Source: R. S. Woodruff, J. American Statistical Association 47 (1952) 635-646 (from memory).
    fn percentile_of_replicates(&self, whole: &[f64], share: f64) -> Estimated {
        let value = percentile(whole, share);
        let below = |values: &Vec<f64>| {
            let ahead = values.iter().filter(|own| **own < value).count() as f64;
            let level = values.iter().filter(|own| **own == value).count() as f64;
            (ahead + 0.5 * level) / values.len() as f64
        };
        let own = moments(self.replicates.iter().map(below));
        let step = own.count / whole.len() as f64;
        let error = ((own.deviation.powi(2) + step * step / 12.0) / own.count).sqrt();
        let half = self.student(own.count) * error;
        let ends = [share - half, share + half];
        let inside = ends.iter().all(|end| (0.0..=1.0).contains(end));
        Estimated { value, interval: inside.then(|| ends.map(|end| percentile(whole, end))) }
    }

    /// Share of draws of which something holds, with the interval of Clopper and Pearson: exact for independent points,
    /// cautious for replicates of nets.
    ///
    /// Arguments: `hits` of `count` draws, at least one.
    ///
    /// Source: C. J. Clopper, E. S. Pearson, Biometrika 26 (1934) 404-413 (by the beta distribution, from memory).
    pub fn share((hits, count): (usize, usize), confidence: f64) -> Estimated {
        let tail = 0.5 * (1.0 - confidence);
        let (k, n) = (hits as f64, count as f64);
        let beta = |a: f64, b: f64, at: f64| Beta::new(a, b).map_or(f64::NAN, |beta| beta.inverse_cdf(at));
        let low = if hits == 0 { 0.0 } else { beta(k, n - k + 1.0, tail) };
        let high = if hits == count { 1.0 } else { beta(k + 1.0, n - k, 1.0 - tail) };
        Estimated { value: k / n, interval: Some([low, high]) }
    }

    /// An estimate of the whole with the interval that its scatter between replicates makes.
    fn between(&self, whole: f64, of: impl Fn(&[f64]) -> f64) -> Estimated {
        let own = moments(self.replicates.iter().map(|values| of(values)));
        around(whole, self.student(own.count) * own.deviation / own.count.sqrt())
    }

    fn normal(&self) -> f64 {
        Normal::standard().inverse_cdf(0.5 + 0.5 * self.confidence)
    }

    /// Student's t of a mean of so many.
    fn student(&self, count: f64) -> f64 {
        let of = StudentsT::new(0.0, 1.0, count - 1.0);
        of.map_or(f64::NAN, |of| of.inverse_cdf(0.5 + 0.5 * self.confidence))
    }
}

fn around(value: f64, half: f64) -> Estimated {
    Estimated { value, interval: Some([value - half, value + half]).filter(|_| half.is_finite()) }
}

struct Moments {
    count: f64,
    mean: f64,
    deviation: f64,
}

/// Mean and standard deviation in one pass.
///
/// Source: B. P. Welford, Technometrics 4 (1962) 419-420 (from memory).
fn moments(values: impl Iterator<Item = f64>) -> Moments {
    let (mut count, mut mean, mut squares) = (0.0, 0.0, 0.0);
    for value in values {
        count += 1.0;
        let away = value - mean;
        mean += away / count;
        squares += away * (value - mean);
    }
    Moments { count, mean, deviation: (squares / (count - 1.0)).sqrt() }
}

#[cfg(test)]
mod tests {
    use approx::assert_abs_diff_eq;

    use super::*;
    use crate::{Distribution, Sampler, Spread};

    /// Clopper-Pearson 95 %: 0 of 10 up to 0.3085 = 1 − 0.025^(1/10), 10 of 10 from 0.6915 (closed forms), 3 of 10 from 0.0667
    /// to 0.6525 (tables of binomial limits, from memory).
    #[test]
    fn share_matches_clopper_pearson_table() {
        for (hits, low, high) in [(0, 0.0, 0.3085), (3, 0.0667, 0.6525), (10, 0.6915, 1.0)] {
            let [own_low, own_high] = Sampled::share((hits, 10), 0.95).interval.unwrap();
            assert_abs_diff_eq!(own_low, low, epsilon = 0.5e-4);
            assert_abs_diff_eq!(own_high, high, epsilon = 0.5e-4);
        }
    }

    /// Mean 3, s = √2.5, t₀.₉₇₅(4) = 2.776 (any table of Student's t).
    #[test]
    fn mean_of_five_has_the_interval_of_students_t() {
        let own = Sampled { replicates: vec![vec![1.0, 2.0, 3.0, 4.0, 5.0]], confidence: 0.95 }.mean();
        assert_eq!(own.value, 3.0);
        assert_abs_diff_eq!(own.interval.unwrap()[1] - 3.0, 2.776 * 0.5_f64.sqrt(), epsilon = 0.5e-3);
    }

    #[test]
    fn values_that_do_not_scatter_are_certain() {
        for replicates in [vec![vec![2.0; 100]], vec![vec![2.0; 10]; 8]] {
            let own = Sampled { replicates, confidence: 0.95 };
            let sure = |value| Estimated { value, interval: Some([value, value]) };
            assert_eq!((own.mean(), own.deviation()), (sure(2.0), sure(0.0)));
            assert_eq!(own.percentiles(&[0.5]), [sure(2.0)]);
        }
    }

    /// Share of 400 samples whose interval holds the truth. The standard deviation of such a share of 0.95 is 0.011.
    fn coverage(spread: Spread, replicates: u64, of: &dyn Fn(&Sampled) -> Estimated, truth: f64) -> f64 {
        let value =
            Distribution::Normal { mean: 0.0, deviation: 1.0, range: [f64::NEG_INFINITY, f64::INFINITY] };
        let each = 512 / replicates as usize;
        let held = (0..400).filter(|seed| {
            let sample = |replicate| {
                let sampler = Sampler::new(spread, (each, 2), (*seed, replicate));
                let point = |i| sampler.point(i).iter().map(|u| value.quantile(*u)).sum::<f64>();
                (0..each).map(point).collect()
            };
            let sampled = Sampled { replicates: (0..replicates).map(sample).collect(), confidence: 0.95 };
            let [low, high] = of(&sampled).interval.unwrap();
            (low..=high).contains(&truth)
        });
        held.count() as f64 / 400.0
    }

    /// The sum of two normal values is normal with deviation √2; its 95th percentile is 1.64485 √2.
    #[test]
    fn intervals_hold_the_truth_as_often_as_they_say() {
        let root = 2.0_f64.sqrt();
        type Of = fn(&Sampled) -> Estimated;
        let asked: [(Of, f64); 3] = [
            (|own| own.mean(), 0.0),
            (|own| own.deviation(), root),
            (|own| own.percentiles(&[0.95])[0], 1.644_85 * root),
        ];
        for (spread, replicates) in [(Spread::Random, 1), (Spread::Sobol, 8), (Spread::LatinHypercube, 8)] {
            for (which, (of, truth)) in asked.iter().enumerate() {
                let share = coverage(spread, replicates, of, *truth);
                assert!((0.91..=1.0).contains(&share), "{spread:?} {which}: {share}");
            }
        }
    }
}
