//! Two causes at once.
//!
//! The logarithms of wear of two causes add up, as do their sizes among the parameters: exact for small ones, and the more wrong
//! the more one changes what the other does.

use axlebow_numerics::{JointNormal, chi_squared_tail, log_sum_exp};
use nalgebra::{DMatrix, DVector};
use rayon::prelude::*;

use super::likelihood::{Likelihood, OnCell};
use super::observed::PredictedBy;
use super::wear_cause::WearCause;

/// Share of worn axles that have two causes at once (invented).
pub const TWO_AT_ONCE: f64 = 0.15;
/// Causes that are tried with all others, the most probable first.
const TRIED: usize = 3;

/// Two causes at once, with how well they explain the readings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RankedPair {
    /// The causes, the more probable one first.
    pub causes: [WearCause; 2],
    /// Probability after the readings among single causes and the pairs tried.
    pub posterior: f64,
    /// Logarithm of how probable the readings are with both over how probable with the better one alone.
    pub log_gain: f64,
    /// Probability that readings lie as far from where both predict them as these, at their best sizes.
    pub fit: f64,
}

/// A cause with its logarithms of prior and likelihood.
#[derive(Debug, Clone, Copy)]
pub(super) struct Single {
    pub cause: WearCause,
    pub log_prior: f64,
    pub log_likelihood: f64,
}

/// Pairs with one of the most probable causes in them, the most probable first.
///
/// - `singles`: all causes, the most probable first
pub(super) fn ranked_pairs(likelihood: &Likelihood<'_>, singles: &[Single]) -> Vec<RankedPair> {
    let sound = likelihood.sound();
    let acting = |own: &&Single| own.cause != WearCause::Normal;
    let causes: Vec<&Single> = singles.iter().filter(acting).collect();
    let both: Vec<[&Single; 2]> = (0..causes.len().min(TRIED))
        .flat_map(|first| causes[first + 1..].iter().map(move |second| (first, *second)))
        .map(|(first, second)| [causes[first], second])
        .collect();
    let tried: Vec<Tried<'_>> =
        both.into_par_iter().filter_map(|singles| Tried::of(likelihood, &sound, singles)).collect();
    let weights = log_sum_exp(&tried.iter().map(Tried::log_weight).collect::<Vec<_>>());
    let prior = |own: &Tried<'_>| own.log_weight() - weights + TWO_AT_ONCE.ln();
    let alone = singles.iter().map(|own| own.log_prior + (1.0 - TWO_AT_ONCE).ln() + own.log_likelihood);
    let all: Vec<f64> = alone.chain(tried.iter().map(|own| prior(own) + own.log_likelihood)).collect();
    let total = log_sum_exp(&all);
    let ranked = |own: &Tried<'_>| RankedPair {
        causes: own.singles.map(|single| single.cause),
        posterior: (prior(own) + own.log_likelihood - total).exp(),
        log_gain: own.log_likelihood - own.singles[0].log_likelihood.max(own.singles[1].log_likelihood),
        fit: own.fit,
    };
    let mut pairs: Vec<RankedPair> = tried.iter().map(ranked).collect();
    pairs.sort_by(|a, b| b.posterior.total_cmp(&a.posterior));
    pairs
}

/// A pair that was held against the readings.
struct Tried<'a> {
    singles: [&'a Single; 2],
    log_likelihood: f64,
    fit: f64,
}

impl<'a> Tried<'a> {
    /// Mean likelihood over the cells of both; none where both move the same parameter.
    fn of(likelihood: &Likelihood<'_>, sound: &DVector<f64>, singles: [&'a Single; 2]) -> Option<Self> {
        let [first, second] =
            singles.map(|single| likelihood.cells_of(single.cause).collect::<Vec<&OnCell<'_>>>());
        let compatible = |a: &OnCell<'_>, b: &OnCell<'_>| !a.cell.variant.meets(&b.cell.variant);
        let pairs: Vec<[&OnCell<'_>; 2]> = first
            .iter()
            .flat_map(|a| second.iter().map(move |b| [*a, *b]))
            .filter(|[a, b]| compatible(a, b))
            .collect();
        if pairs.is_empty() {
            return None;
        }
        let share = |[a, b]: &[&OnCell<'_>; 2]| (a.cell.share * b.cell.share).ln();
        let shares = log_sum_exp(&pairs.iter().map(share).collect::<Vec<_>>());
        let told: Vec<(f64, f64)> = pairs
            .iter()
            .map(|pair| {
                let (log_likelihood, fit) = Together { likelihood, sound, pair: *pair }.told();
                (share(pair) - shares + log_likelihood, fit)
            })
            .collect();
        Some(Tried {
            singles,
            log_likelihood: log_sum_exp(&told.iter().map(|own| own.0).collect::<Vec<_>>()),
            fit: told.iter().map(|own| own.1).fold(0.0, f64::max),
        })
    }

    fn log_weight(&self) -> f64 {
        self.singles[0].log_prior + self.singles[1].log_prior
    }
}

/// Two cells at once.
struct Together<'a> {
    likelihood: &'a Likelihood<'a>,
    /// Mean of each number on a sound axle.
    sound: &'a DVector<f64>,
    pair: [&'a OnCell<'a>; 2],
}

impl Together<'_> {
    /// Logarithm of the likelihood, and the fit.
    fn told(&self) -> (f64, f64) {
        let [a, b] = self.pair;
        let count = self.sound.len();
        let words = self.likelihood.of_words_together(self.pair);
        if count == 0 {
            return (words, 0.0);
        }
        let mean = &a.mean + &b.mean - self.sound;
        let sized = |on: &OnCell<'_>| &on.per_size * on.per_size.transpose() * on.cell.size_variance;
        let per_spread = self.per_spread();
        let known = &per_spread * per_spread.transpose() + sized(a) + sized(b) + &self.likelihood.tire_face;
        let read = self.likelihood.readings.straightened(&mean, &known);
        let Some(joint) = JointNormal::new(mean, known + &read.errors) else {
            return (f64::NEG_INFINITY, 0.0);
        };
        let log_density = joint.log_density(&read.values) - read.log_units.sum();
        (log_density + words, chi_squared_tail(joint.squared_distance(&read.values), count))
    }

    /// What parameters add: as where wheels drag, if they do in either; nothing where a size stands in their place.
    fn per_spread(&self) -> DMatrix<f64> {
        let [a, b] = self.pair;
        let (base, other) = if b.cell.variant.drags() { (b, a) } else { (a, b) };
        let mut per_spread = base.per_spread.clone();
        for (place, parameter) in self.likelihood.worn.parameters().iter().enumerate() {
            if other.cell.variant.replaces(*parameter) {
                per_spread.column_mut(place).fill(0.0);
            }
        }
        per_spread
    }
}

impl Likelihood<'_> {
    /// Mean of each number on a sound axle.
    fn sound(&self) -> DVector<f64> {
        let (usual, parameters) = (self.worn.usual(), self.worn.parameters());
        let of = |by: &PredictedBy| match by {
            PredictedBy::Rib { rib, .. } => self.library.usual.log_wear[*rib] + self.observed.rate.0,
            PredictedBy::Parameters { base, of } => {
                let own = parameters.iter().zip(&usual).filter(|(parameter, _)| of.contains(parameter));
                base + own.map(|(_, value)| value).sum::<f64>()
            }
        };
        let numbers = &self.observed.numbers;
        DVector::from_iterator(numbers.len(), numbers.iter().map(|read| of(&read.predicted_by)))
    }
}
