//! Runs the designs of a study on all cores.

use std::ops::Range;

use rayon::prelude::*;

use super::asked::Asked;
use crate::ask::{Point, Study};
use crate::findings::{Row, SolvedDesign, StudyOutcome, WarningCounts};
use crate::solve::Solver;

/// Designs between two reports of progress.
const BATCH: usize = 512;
/// The same, where they ride.
const RIDING_BATCH: usize = 128;
/// Designs of one axle that one thread solves together, at most.
const TOGETHER: usize = 16;
/// Axles that one thread takes at a time, where they only stand.
const SHARE: usize = 32;

impl Study {
    /// Runs every design.
    ///
    /// Arguments: `progress`, told after each batch how many designs are done, and of how many.
    ///
    /// Returns a row for each design in the order of [`points`](Self::points); the same on any number of
    /// threads.
    pub fn run(&self, progress: &dyn Fn(usize, usize)) -> StudyOutcome {
        self.clone().ready().run_when_ready(progress)
    }

    /// The study with its tables of seats, if it asks for any: made once, they need not be made for each run.
    pub fn ready(self) -> Study {
        Study { seat_tables: self.made_seat_tables(), ..self }
    }

    fn run_when_ready(&self, progress: &dyn Fn(usize, usize)) -> StudyOutcome {
        let (of, asked) = (self.count(), self.asked());
        let batch = if self.rides.is_empty() { BATCH } else { RIDING_BATCH };
        let mut rows: Vec<Row> = Vec::with_capacity(of);
        let mut warnings = WarningCounts::default();
        while rows.len() < of {
            for solved in self.solved(rows.len()..of.min(rows.len() + batch), &asked) {
                warnings.add_design(rows.len(), &solved.warnings);
                rows.push(solved.row);
            }
            progress(rows.len(), of);
        }
        let outcome = self.outcome(rows, asked.columns.measures());
        self.with_equal_mass(StudyOutcome { warnings: warnings.of_study(self), ..outcome }, &asked)
    }

    /// Consecutive designs, solved on all cores. Those whose axles have one line are solved one after another, because they
    /// share most of the work.
    pub(crate) fn solved(&self, designs: Range<usize>, asked: &Asked) -> Vec<SolvedDesign> {
        let mut placed: Vec<(usize, Point)> = designs.map(|design| self.point(design)).enumerate().collect();
        self.put_lines_together(&mut placed);
        let (places, points): (Vec<usize>, Vec<Point>) = placed.into_iter().unzip();
        let solved = self.solved_in_order(&points, asked);
        let mut all: Vec<Option<SolvedDesign>> = places.iter().map(|_| None).collect();
        places.iter().zip(solved).for_each(|(place, design)| all[*place] = Some(design));
        all.into_iter().flatten().collect()
    }

    fn solved_in_order(&self, points: &[Point], asked: &Asked) -> Vec<SolvedDesign> {
        let alike = points.chunk_by(|one, other| self.is_one_axle(one, other));
        let together: Vec<&[Point]> = alike.flat_map(|points| points.chunks(TOGETHER)).collect();
        let shares = together.par_chunks(if self.rides.is_empty() { SHARE } else { 1 });
        let solved = shares.map(|share| {
            let designs = |solver: &mut Solver| {
                share.iter().flat_map(|points| self.solve(points, asked, solver)).collect::<Vec<_>>()
            };
            asked.solvers.lend(designs)
        });
        solved.flatten_iter().collect()
    }
}
