//! What an uncertainty study says.

use axlebow_numerics::{Histogram, Sampled, Spread, variance_indices};
use rayon::prelude::*;

use super::gathered::Gathered;
use crate::ask::{Plan, Study, StudyKind, Together};
use crate::findings::{Uncertain, Uncertainty, VariantUncertainty};
use crate::solve::Measure;

/// Fewest values from which anything is told.
const FEWEST: usize = 8;

impl Study {
    /// What an uncertainty study asks of its designs; none of another kind.
    ///
    /// Arguments: `measures` of the study, and those that it shows.
    pub(crate) fn gathering(&self, measures: &[Measure], shown: &[Measure]) -> Option<Gathered> {
        let asked = |own: &&Measure| {
            let derived = self.derived.iter().any(|derived| derived.name == own.name);
            derived || self.limits.iter().any(|limit| limit.of == own.name)
        };
        let others = measures.iter().filter(|own| !shown.contains(own)).filter(asked);
        let told = shown.iter().chain(others).cloned().collect();
        (self.kind == StudyKind::Uncertainty).then(|| Gathered::of(measures, told, &self.limits))
    }

    /// What all designs of an uncertainty study say.
    pub(crate) fn uncertainty_of(&self, gathered: &Gathered) -> Option<Uncertainty> {
        let Together::Sampled(plan) = &self.together else { return None };
        let each = plan.rows_of_replicate();
        let variants = 0..self.variants.len();
        Some(Uncertainty {
            confidence: self.uncertainty.confidence,
            shares: self.uncertainty.shares.clone(),
            replicates: plan.rows / each,
            rows_of_replicate: each,
            designs_of_row: plan.each(),
            is_unbalanced: plan.spread == Spread::Sobol && !each.is_power_of_two(),
            variants: variants.map(|variant| self.variant_uncertainty(plan, variant, gathered)).collect(),
        })
    }

    fn variant_uncertainty(&self, plan: &Plan, variant: usize, gathered: &Gathered) -> VariantUncertainty {
        let designs = variant * plan.count()..(variant + 1) * plan.count();
        let solved = own_of(&gathered.solved[designs.clone()], plan);
        let met: Vec<Vec<bool>> =
            gathered.met.iter().map(|met| own_of(&met[designs.clone()], plan)).collect();
        let share = |hits: usize| Sampled::share((hits, solved.len()), self.uncertainty.confidence);
        let all = (0..solved.len()).filter(|design| met.iter().all(|met| met[*design])).count();
        let told = gathered.told.par_iter().zip(&gathered.values);
        VariantUncertainty {
            designs: solved.len(),
            failed: solved.iter().filter(|solved| !**solved).count(),
            results: told
                .filter_map(|(measure, values)| self.uncertain(plan, measure, &values[designs.clone()]))
                .collect(),
            limits: met.iter().map(|met| share(met.iter().filter(|met| **met).count())).collect(),
            all_limits: (!met.is_empty()).then(|| share(all)),
        }
    }

    /// What is said of a result by its value in each design; nothing where hardly one has it.
    fn uncertain(&self, plan: &Plan, measure: &Measure, values: &[f64]) -> Option<Uncertain> {
        let has = |value: &f64| value.is_finite();
        let replicates = values.chunks(plan.rows_of_replicate() * plan.each());
        let replicates: Vec<Vec<f64>> =
            replicates.map(|values| own_of(values, plan).into_iter().filter(has).collect()).collect();
        let mut sorted = replicates.concat();
        if sorted.len() < FEWEST || replicates.iter().any(Vec::is_empty) {
            return None;
        }
        sorted.sort_by(f64::total_cmp);
        let sampled = Sampled { replicates, confidence: self.uncertainty.confidence };
        let whole = |row: &&[f64]| row.iter().all(has);
        let rows = || values.chunks(plan.each()).filter(whole).map(<[f64]>::to_vec).collect::<Vec<_>>();
        Some(Uncertain {
            measure: measure.clone(),
            count: sorted.len(),
            mean: sampled.mean(),
            deviation: sampled.deviation(),
            percentiles: sampled.percentiles(&self.uncertainty.shares),
            histogram: Histogram::of(&sorted),
            indices: match plan.with_indices {
                true => variance_indices(&rows(), self.uncertainty.confidence, plan.seed),
                false => Vec::new(),
            },
        })
    }
}

/// Of the designs of a sample those that are its own points.
fn own_of<T: Copy>(designs: &[T], plan: &Plan) -> Vec<T> {
    designs.iter().enumerate().filter(|(place, _)| plan.is_own(*place)).map(|(_, own)| *own).collect()
}
