//! What an uncertainty needs of each design, gathered while the designs pass by.

use crate::ask::Limit;
use crate::findings::Row;
use crate::solve::Measure;

/// What an uncertainty needs of each design, in their order.
#[derive(Debug, Clone)]
pub(crate) struct Gathered {
    measures: Vec<Measure>,
    limits: Vec<Limit>,
    /// Results that are told of.
    pub told: Vec<Measure>,
    /// Their values, SI, design by design; NaN where there is none.
    pub values: Vec<Vec<f64>>,
    /// Whether each limit is met, design by design.
    pub met: Vec<Vec<bool>>,
    /// Whether there is a result, design by design.
    pub solved: Vec<bool>,
}

impl Gathered {
    /// Nothing yet.
    ///
    /// Arguments: `measures` of the study, those of them that are told of, and its limits.
    pub fn of(measures: &[Measure], told: Vec<Measure>, limits: &[Limit]) -> Gathered {
        Gathered {
            measures: measures.to_vec(),
            limits: limits.to_vec(),
            values: vec![Vec::new(); told.len()],
            met: vec![Vec::new(); limits.len()],
            solved: Vec::new(),
            told,
        }
    }

    /// Adds the next design.
    pub fn add(&mut self, row: &Row) {
        for (measure, values) in self.told.iter().zip(&mut self.values) {
            values.push(row.value(measure).unwrap_or(f64::NAN));
        }
        for (limit, met) in self.limits.iter().zip(&mut self.met) {
            met.push(limit.is_met(row, &self.measures));
        }
        self.solved.push(row.result.is_ok());
    }
}
