//! Runs the designs of a study on all cores.

use axlebow_fe::StaticSystem;
use rayon::prelude::*;

use crate::{Point, Row, Study, StudyOutcome};

/// Designs between two reports of progress.
const BATCH: usize = 512;

impl Study {
    /// Runs every design.
    ///
    /// Arguments: `progress`, told after each batch how many designs are done, and of how many.
    ///
    /// Returns a row for each design in the order of [`points`](Self::points); the same on any number of
    /// threads.
    pub fn run(&self, progress: &dyn Fn(usize, usize)) -> StudyOutcome {
        let of = self.count();
        let mut rows: Vec<Row> = Vec::with_capacity(of);
        while rows.len() < of {
            let batch = rows.len()..of.min(rows.len() + BATCH);
            let solved = batch
                .into_par_iter()
                .map_init(StaticSystem::new, |system, index| self.row(self.point(index), system));
            rows.par_extend(solved);
            progress(rows.len(), of);
        }
        let mut outcome = StudyOutcome {
            name: self.name.clone(),
            note: self.note.clone(),
            case: self.case.clone(),
            variants: self.variants.iter().map(|variant| variant.name.clone()).collect(),
            varied: self.varied.clone(),
            rows,
            constant_mass: Vec::new(),
        };
        outcome.constant_mass = self.masses.iter().map(|&mass| self.equal_mass(mass, &outcome)).collect();
        outcome
    }

    pub(crate) fn row(&self, point: Point, system: &mut StaticSystem) -> Row {
        let result = self.design(&point, system);
        Row { variant: point.variant, values: point.values, result }
    }
}
