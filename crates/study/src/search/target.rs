//! What a search makes less, and what it must keep.

use axlebow_numerics::SmoothValues;

use crate::ask::Limit;
use crate::solve::Measure;

/// Readings that are a goal and limits.
#[derive(Debug, Clone)]
pub(crate) struct Target {
    goal: Reading,
    scale: f64,
    pub sides: Vec<Side>,
}

/// A reading that is to be less.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Reading {
    /// It, times a sign.
    Plain { place: usize, sign: f64 },
    /// Its magnitude.
    Magnitude { place: usize },
}

/// One side of a limit: `sign (value − bound) ≤ 0`.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Side {
    /// Place of the limit.
    pub limit: usize,
    place: usize,
    sign: f64,
    bound: f64,
    scale: f64,
}

/// Share of a limit within which it counts as met.
pub(crate) const MET: f64 = 1e-6;

impl Reading {
    /// What is to be less.
    pub fn value(self, readings: &[f64]) -> f64 {
        match self {
            Reading::Plain { place, sign } => sign * readings[place],
            Reading::Magnitude { place } => readings[place].abs(),
        }
    }
}

impl Target {
    /// - `scale`: size of the goal
    pub fn new(goal: Reading, scale: f64, (limits, measures): (&[Limit], &[Measure])) -> Self {
        let scale = if scale.is_finite() && scale > 0.0 { scale } else { 1.0 };
        let mut target = Target { goal, scale, sides: Vec::new() };
        for (number, limit) in limits.iter().enumerate() {
            for measure in measures.iter().filter(|measure| measure.name == limit.of) {
                let within = limit.within;
                let ends =
                    [(1.0, limit.most), (-1.0, limit.least), (1.0, within), (-1.0, within.map(|own| -own))];
                for (sign, bound) in ends {
                    target.sides.extend(bound.map(|bound| Side::new(number, measure.place, (sign, bound))));
                }
            }
        }
        target
    }

    /// The same with the magnitude of a further reading held to a level.
    pub fn holding(&self, place: usize, level: f64) -> Self {
        let mut target = self.clone();
        for sign in [1.0, -1.0] {
            target.sides.push(Side::new(usize::MAX, place, (sign, sign * level)));
        }
        target
    }

    /// The same goal within the limits of another one.
    pub fn within(&self, other: &Target) -> Self {
        Target { sides: other.sides.clone(), ..self.clone() }
    }

    /// The same with a limit's bounds moved outward by a share of themselves.
    pub fn relaxed(&self, limit: usize, share: f64) -> Self {
        let mut target = self.clone();
        for side in target.sides.iter_mut().filter(|side| side.limit == limit) {
            side.bound += side.sign * share * side.scale;
        }
        target
    }

    /// The same without a limit.
    pub fn without(&self, limit: usize) -> Self {
        let mut target = self.clone();
        target.sides.retain(|side| side.limit != limit);
        target
    }

    /// Goal and misses; none where a reading has no value.
    pub fn values(&self, readings: &[f64]) -> Option<SmoothValues> {
        let goal = self.goal.value(readings) / self.scale;
        let misses: Vec<f64> = self.sides.iter().map(|side| side.miss(readings)).collect();
        let sound = goal.is_finite() && misses.iter().all(|miss| miss.is_finite());
        sound.then_some(SmoothValues { goal, misses })
    }

    /// Size of the goal.
    pub fn scale(&self) -> f64 {
        self.scale
    }
}

impl Side {
    fn new(limit: usize, place: usize, (sign, bound): (f64, f64)) -> Self {
        let scale = if bound == 0.0 { 1.0 } else { bound.abs() };
        Side { limit, place, sign, bound, scale }
    }

    fn miss(&self, readings: &[f64]) -> f64 {
        self.sign * (readings[self.place] - self.bound) / self.scale
    }

    /// Size of the bound.
    pub fn scale(&self) -> f64 {
        self.scale
    }
}
