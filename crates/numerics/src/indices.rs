//! Whose fault the spread of a result is: variance-based indices of first order and total.

use rayon::prelude::*;
use statrs::distribution::{ContinuousCDF, Normal};

use crate::{Estimated, resampled};

/// Bootstrap samples of the standard error.
const RESAMPLES: u64 = 200;

/// How much of a result's variance an input makes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Index {
    /// Share of the variance that is gone on average if the input is known: what it does by itself.
    pub first: Estimated,
    /// Share that is left on average if all other inputs are known: by itself and together with others.
    pub total: Estimated,
}

/// Indices of every input, from rows of a result at two independent points and at those between.
///
/// ```text
/// Sᵢ = (1/N) Σ f(B)(f(Aᴮᵢ) − f(A))/V,   Tᵢ = (1/2N) Σ (f(A) − f(Aᴮᵢ))²/V,   V the variance of f(A) and f(B)
/// ```
///
/// f is taken less its mean, which leaves the formulas as they are and scatters less. Intervals are normal ones of the
/// bootstrap's standard error over rows.
///
/// Arguments: `rows`, each f(A), then f(Aᴮᵢ) for each input (A with input i of B), then f(B), all finite; `confidence`, above
/// 0 and below 1; `seed` of the bootstrap.
///
/// Returns an index for each input; none where the result does not vary.
///
/// Sources: A. Saltelli et al., Computer Physics Communications 181 (2010) 259-270, table 2 (b) and (f); M. J. W. Jansen,
/// Computer Physics Communications 117 (1999) 35-43; G. E. B. Archer, A. Saltelli, I. M. Sobol', J. Statistical Computation
/// and Simulation 58 (1997) 99-120, bootstrap (all from memory).
pub fn variance_indices(rows: &[Vec<f64>], confidence: f64, seed: u64) -> Vec<Index> {
    let Some(inputs) = rows.first().map(|row| row.len() - 2).filter(|_| rows.len() > 1) else {
        return Vec::new();
    };
    let whole: Vec<usize> = (0..rows.len()).collect();
    let found = estimates(rows, &whole, inputs);
    if found.iter().flatten().any(|value| !value.is_finite()) {
        return Vec::new();
    }
    let resample = |number| estimates(rows, &resampled(rows.len(), (seed, number)), inputs);
    let resamples: Vec<Vec<[f64; 2]>> = (0..RESAMPLES).into_par_iter().map(resample).collect();
    let z = Normal::standard().inverse_cdf(0.5 + 0.5 * confidence);
    let one = |input: usize, which: usize| {
        let own: Vec<f64> = resamples.iter().map(|of| of[input][which]).filter(|s| s.is_finite()).collect();
        let mean = own.iter().sum::<f64>() / own.len() as f64;
        let variance = own.iter().map(|s| (s - mean).powi(2)).sum::<f64>() / (own.len() as f64 - 1.0);
        let (value, half) = (found[input][which], z * variance.sqrt());
        Estimated { value, interval: Some([value - half, value + half]).filter(|_| half.is_finite()) }
    };
    (0..inputs).map(|input| Index { first: one(input, 0), total: one(input, 1) }).collect()
}

/// First-order and total index of every input, of the rows at some places.
fn estimates(rows: &[Vec<f64>], places: &[usize], inputs: usize) -> Vec<[f64; 2]> {
    let count = places.len() as f64;
    let chosen = || places.iter().map(|place| &rows[*place]);
    let mean = chosen().map(|row| row[0] + row[inputs + 1]).sum::<f64>() / (2.0 * count);
    let square = |value: f64| (value - mean) * (value - mean);
    let variance = chosen().map(|row| square(row[0]) + square(row[inputs + 1])).sum::<f64>() / (2.0 * count);
    let mut sums = vec![[0.0; 2]; inputs];
    for row in chosen() {
        for (input, sum) in sums.iter_mut().enumerate() {
            let step = row[input + 1] - row[0];
            sum[0] += (row[inputs + 1] - mean) * step;
            sum[1] += 0.5 * step * step;
        }
    }
    sums.iter().map(|sum| sum.map(|s| s / count / variance)).collect()
}

#[cfg(test)]
mod tests {
    use std::f64::consts::PI;

    use super::*;
    use crate::{Sampler, Spread};

    const A: f64 = 7.0;
    const B: f64 = 0.1;

    /// sin x₁ + 7 sin² x₂ + 0.1 x₃⁴ sin x₁ for x between −π and π.
    fn ishigami(point: &[f64]) -> f64 {
        let [x1, x2, x3] = [0, 1, 2].map(|i| PI * (2.0 * point[i] - 1.0));
        x1.sin() + A * x2.sin().powi(2) + B * x3.powi(4) * x1.sin()
    }

    fn rows(count: usize, seed: u64) -> Vec<Vec<f64>> {
        let sampler = Sampler::new(Spread::Sobol, (count, 6), (seed, 0));
        let row = |i| {
            let point = sampler.point(i);
            let (a, b) = point.split_at(3);
            let mixed = |input| {
                let mut mixed = a.to_vec();
                mixed[input] = b[input];
                ishigami(&mixed)
            };
            vec![ishigami(a), mixed(0), mixed(1), mixed(2), ishigami(b)]
        };
        (0..count).map(row).collect()
    }

    /// Closed forms: V₁ = ½(1 + bπ⁴/5)², V₂ = a²/8, V₁₃ = 8b²π⁸/225, V = V₁ + V₂ + V₁₃.
    ///
    /// Source: T. Ishigami, T. Homma, ISUMA '90, 398-403; values as printed in A. Saltelli et al., Global Sensitivity
    /// Analysis: The Primer, 2008 (from memory): 0.3139, 0.4424, 0; 0.5576, 0.4424, 0.2437.
    fn exact() -> [[f64; 2]; 3] {
        let v1 = 0.5 * (1.0 + B * PI.powi(4) / 5.0).powi(2);
        let v2 = A * A / 8.0;
        let v13 = 8.0 * B * B * PI.powi(8) / 225.0;
        let v = v1 + v2 + v13;
        [[v1 / v, (v1 + v13) / v], [v2 / v, v2 / v], [0.0, v13 / v]]
    }

    #[test]
    fn closed_forms_match_ishigami_homma_printed_indices() {
        let printed = [[0.3139, 0.5576], [0.4424, 0.4424], [0.0, 0.2437]];
        for (own, printed) in exact().as_flattened().iter().zip(printed.as_flattened()) {
            assert!((own - printed).abs() < 0.5e-4, "{own} {printed}");
        }
    }

    /// The tolerance is the error of 16,384 rows of a net, not of digits: an estimate has no exact value.
    #[test]
    fn indices_match_ishigami_homma_within_sampling_error() {
        let own = variance_indices(&rows(16_384, 1), 0.95, 1);
        for (own, exact) in own.iter().zip(exact()) {
            assert!((own.first.value - exact[0]).abs() < 0.01, "{own:?} {exact:?}");
            assert!((own.total.value - exact[1]).abs() < 0.01, "{own:?} {exact:?}");
        }
    }

    /// The bootstrap takes rows for independent, which those of a net are not quite: it is cautious.
    #[test]
    fn intervals_hold_the_truth_at_least_as_often_as_they_say() {
        let exact = exact();
        let mut held = [[0; 2]; 3];
        for seed in 0..60 {
            for (input, own) in variance_indices(&rows(512, seed), 0.95, seed).iter().enumerate() {
                for (which, estimate) in [own.first, own.total].iter().enumerate() {
                    let [low, high] = estimate.interval.unwrap();
                    held[input][which] += u32::from((low..=high).contains(&exact[input][which]));
                }
            }
        }
        assert!(held.as_flattened().iter().all(|held| *held >= 53), "{held:?} of 60");
    }

    #[test]
    fn a_result_that_does_not_vary_has_no_indices() {
        assert!(variance_indices(&vec![vec![2.0; 5]; 10], 0.95, 1).is_empty());
        assert!(variance_indices(&[], 0.95, 1).is_empty());
    }
}
