//! What an uncertainty study says.

use rayon::prelude::*;

use super::{Estimated, Index, Sampled, variance_indices};
use crate::{Limit, Measure, Plan, Row, Study, StudyKind, Together};

/// What an uncertainty study says, variant by variant.
#[derive(Debug, Clone, PartialEq)]
pub struct Uncertainty {
    /// How often the intervals hold the truth.
    pub confidence: f64,
    /// Shares of designs below the percentiles that are told.
    pub shares: Vec<f64>,
    /// Independent samples that the intervals of means and percentiles are told from; 1 where every design is independent.
    pub replicates: usize,
    /// Rows of each of these.
    pub rows_of_replicate: usize,
    /// Designs of each row: 1, or of a row with indices two points of the sample, first and last, and those between.
    pub designs_of_row: usize,
    /// Whether Sobol's sequence is cut where it is not balanced.
    pub is_unbalanced: bool,
    /// Each variant.
    pub variants: Vec<VariantUncertainty>,
}

impl Uncertainty {
    /// Whether the design at a place is of the sample itself, not one between two of its points.
    pub fn is_own(&self, place: usize) -> bool {
        let which = place % self.designs_of_row;
        which == 0 || which + 1 == self.designs_of_row
    }
}

/// What an uncertainty study says of a variant.
#[derive(Debug, Clone, PartialEq)]
pub struct VariantUncertainty {
    /// Designs of the sample itself.
    pub designs: usize,
    /// Of these, how many have no result.
    pub failed: usize,
    /// What is said of each result that is shown, derived or limited, in the order of the study's measures.
    pub results: Vec<Uncertain>,
    /// Share of designs that meets each limit of the study.
    pub limits: Vec<Estimated>,
    /// Share of designs that meets them all, if there are any.
    pub all_limits: Option<Estimated>,
}

/// What is said of a result.
#[derive(Debug, Clone, PartialEq)]
pub struct Uncertain {
    /// The result.
    pub measure: Measure,
    /// Designs of the sample that have it.
    pub count: usize,
    /// Its mean.
    pub mean: Estimated,
    /// Its standard deviation.
    pub deviation: Estimated,
    /// Its percentiles.
    pub percentiles: Vec<Estimated>,
    /// Its variance among the varied keys, in their order; none where that was not asked or it does not vary.
    pub indices: Vec<Index>,
}

/// Fewest values from which anything is told.
const FEWEST: usize = 8;

impl Study {
    /// What the rows of an uncertainty study say; none of another kind.
    ///
    /// Arguments: `rows` of all designs in order; `measures` of the study and those of them that are told of.
    pub(crate) fn uncertainty(
        &self,
        rows: &[Row],
        (measures, told): (&[Measure], &[Measure]),
    ) -> Option<Uncertainty> {
        let Together::Sampled(plan) = &self.together else { return None };
        if self.kind != StudyKind::Uncertainty {
            return None;
        }
        let variants = rows.chunks(plan.count()).map(|rows| {
            let own: Vec<&Row> = own_rows(rows, plan).collect();
            let results = told.par_iter().filter_map(|measure| self.uncertain(rows, plan, measure));
            let share = |is_met: &dyn Fn(&Row) -> bool| {
                let hits = own.iter().filter(|row| is_met(row)).count();
                Sampled::share((hits, own.len()), self.uncertainty.confidence)
            };
            let meets = |limit: &Limit| share(&|row| limit.is_met(row, measures));
            let all = |row: &Row| self.limits.iter().all(|limit| limit.is_met(row, measures));
            VariantUncertainty {
                designs: own.len(),
                failed: own.iter().filter(|row| row.result.is_err()).count(),
                results: results.collect(),
                limits: self.limits.iter().map(meets).collect(),
                all_limits: (!self.limits.is_empty()).then(|| share(&all)),
            }
        });
        let each = plan.rows_of_replicate();
        Some(Uncertainty {
            confidence: self.uncertainty.confidence,
            shares: self.uncertainty.shares.clone(),
            replicates: plan.rows / each,
            rows_of_replicate: each,
            designs_of_row: plan.each(),
            is_unbalanced: plan.spread == crate::Spread::Sobol && !each.is_power_of_two(),
            variants: variants.collect(),
        })
    }

    /// What is said of a result; nothing where hardly a design has it.
    fn uncertain(&self, rows: &[Row], plan: &Plan, measure: &Measure) -> Option<Uncertain> {
        let values = |rows: &[Row]| own_rows(rows, plan).filter_map(|row| row.value(measure)).collect();
        let replicates: Vec<Vec<f64>> =
            rows.chunks(plan.rows_of_replicate() * plan.each()).map(values).collect();
        let count = replicates.iter().map(Vec::len).sum();
        let sampled = Sampled { replicates, confidence: self.uncertainty.confidence };
        if count < FEWEST || sampled.replicates.iter().any(Vec::is_empty) {
            return None;
        }
        Some(Uncertain {
            measure: measure.clone(),
            count,
            mean: sampled.mean(),
            deviation: sampled.deviation(),
            percentiles: sampled.percentiles(&self.uncertainty.shares),
            indices: if plan.with_indices { self.indices(rows, plan, measure) } else { Vec::new() },
        })
    }

    /// The variance of a result among the varied keys, by rows of which every design has it.
    fn indices(&self, rows: &[Row], plan: &Plan, measure: &Measure) -> Vec<Index> {
        let row =
            |designs: &[Row]| designs.iter().map(|row| row.value(measure)).collect::<Option<Vec<f64>>>();
        let whole: Vec<Vec<f64>> = rows.chunks(plan.each()).filter_map(row).collect();
        variance_indices(&whole, self.uncertainty.confidence, plan.seed)
    }
}

/// Designs of the sample itself, without those between two of its points.
fn own_rows<'r>(rows: &'r [Row], plan: &Plan) -> impl Iterator<Item = &'r Row> {
    rows.iter().enumerate().filter(|(place, _)| plan.is_own(*place)).map(|(_, row)| row)
}
