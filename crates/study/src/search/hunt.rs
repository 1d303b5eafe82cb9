//! What is come to in one combination from one place.

use axlebow_numerics::{Descent, Smooth};

use super::outcome::Goal;
use super::space::Space;
use super::target::Target;
use crate::ask::{SearchOptions, Study};
use crate::findings::{Row, SolvedDesign};
use crate::run::Asked;
use crate::solve::Measure;

/// Share of a goal within which two are the same.
pub(super) const SAME: f64 = 1e-5;

/// A search under way.
pub(super) struct SearchRun<'s> {
    pub study: &'s Study,
    pub ask: &'s SearchOptions,
    pub asked: &'s Asked,
    pub measures: &'s [Measure],
    pub space: Space<'s>,
    pub goal: Goal,
    pub against: Vec<Measure>,
    /// Whether any wall at a seat is made of shells.
    pub shells: bool,
}

/// A design that was come to.
#[derive(Debug, Clone)]
pub(super) struct Found {
    pub combination: usize,
    pub design: SolvedDesign,
    pub goal: f64,
    pub worst: f64,
    pub descent: Option<Descent>,
    pub solved: usize,
}

impl SearchRun<'_> {
    pub(super) fn sign(&self) -> f64 {
        if self.goal.least { 1.0 } else { -1.0 }
    }

    fn design(&self, combination: usize, place: &[f64]) -> SolvedDesign {
        let point = self.space.point(combination, place);
        let mut designs = self.asked.solvers.lend(|solver| self.study.solve(&[point], self.asked, solver));
        designs.swap_remove(0)
    }

    pub(super) fn row(&self, combination: usize, place: &[f64]) -> Row {
        self.design(combination, place).row
    }

    /// A design beside another one, its shells meshed alike.
    fn row_beside(&self, combination: usize, [near, place]: [&[f64]; 2]) -> Row {
        if !self.shells {
            return self.row(combination, near);
        }
        let [near, own] = [near, place].map(|place| self.space.point(combination, place));
        let mut designs = self.asked.solvers.lend(|solver| {
            solver.mesh_as(self.study, &own);
            let designs = self.study.solve(&[near], self.asked, solver);
            solver.mesh_freely();
            designs
        });
        designs.swap_remove(0).row
    }

    /// What is come to in a combination from a place.
    pub(super) fn from(&self, combination: usize, place: &[f64], target: &Target) -> Found {
        let solved = std::cell::Cell::new(1);
        let values = |row: Row| {
            solved.set(solved.get() + 1);
            target.values(row.result.as_deref().ok()?)
        };
        let at = |place: &[f64]| values(self.row(combination, place));
        let beside = |near: &[f64], place: &[f64]| values(self.row_beside(combination, [near, place]));
        let smooth = Smooth { dimensions: self.space.dimensions(), at: &at, beside: &beside };
        let descent = if place.is_empty() { None } else { smooth.descend(place) };
        let design = self.design(combination, descent.as_ref().map_or(place, |descent| &descent.place));
        let values = design.row.result.as_deref().ok().and_then(|readings| target.values(readings));
        let (goal, worst) = values.map_or((f64::INFINITY, f64::INFINITY), |own| (own.goal, own.worst()));
        Found { combination, design, goal, worst, descent, solved: solved.get() }
    }
}
