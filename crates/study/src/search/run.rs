//! Searches a study's designs.

use axlebow_numerics::{Sampler, Spread};
use rayon::prelude::*;

use super::hunt::{Found, SAME, SearchRun};
use super::outcome::{Goal, Proof, SearchOutcome};
use super::space::Space;
use super::target::{MET, Reading, Target};
use crate::ask::{Point, Study};
use crate::findings::{DesignWarning, Row, SolvedDesign, WarningCounts};
use crate::solve::Measure;

impl Study {
    /// Searches for the best design within the limits; `None` if the study asks for no search.
    ///
    /// Arguments: `progress`, told how many combinations and starts are done, and of how many.
    ///
    /// The same on any number of threads.
    pub fn search(&self, progress: &(dyn Fn(usize, usize) + Sync)) -> Option<SearchOutcome> {
        let ask = self.search.as_ref()?;
        let study = Study { seat_tables: self.made_seat_tables(), ..self.clone() };
        let asked = study.asked();
        let measures = asked.columns.measures();
        let named = |name: &str| measures.iter().find(|measure| measure.name == name).cloned();
        let goal = Goal { measure: named(&ask.goal)?, least: ask.least };
        let against: Vec<Measure> = ask.against.iter().filter_map(|name| named(name)).collect();
        let space = Space::of(&study);
        let shells = study.has_shells();
        let hunt = SearchRun {
            study: &study,
            ask,
            asked: &asked,
            measures: &measures,
            space,
            goal,
            against,
            shells,
        };
        Some(hunt.outcome(progress))
    }
}

impl SearchRun<'_> {
    fn outcome(self, progress: &(dyn Fn(usize, usize) + Sync)) -> SearchOutcome {
        let target = self.target(self.size_of_goal());
        let all = self.all(&target, progress);
        let solved = all.iter().map(|found| found.solved).sum();
        let failures = || all.iter().filter_map(|found| found.design.row.result.as_ref().err());
        let failed = (failures().count(), failures().next().cloned());
        let met = |found: &&Found| found.worst <= MET;
        let best = all.iter().filter(met).min_by(|a, b| a.goal.total_cmp(&b.goal));
        let nearest =
            all.iter().min_by(|a, b| a.worst.total_cmp(&b.worst)).filter(|found| found.worst.is_finite());
        let at = best.or(nearest);
        let front = best.map_or(Vec::new(), |best| self.front(&target, best, &all));
        SearchOutcome {
            name: self.study.name.clone(),
            note: self.study.note.clone(),
            case: self.study.case.clone(),
            variants: self.study.variants.iter().map(|variant| variant.name.clone()).collect(),
            varied: self.study.varied.clone(),
            measures: self.measures.to_vec(),
            limits: at.map_or(Vec::new(), |at| self.limits(&target, (at, best.is_some()), &all)),
            proof: self.proof(best, &all),
            warnings: warnings(at.map(|found| &found.design).into_iter().chain(&front)),
            front: front.into_iter().map(|design| design.row).collect(),
            nearest: if best.is_some() { None } else { nearest.map(|found| found.design.row.clone()) },
            best: best.map(|found| found.design.row.clone()),
            solved,
            failed,
            stiffened: self.study.variants.iter().any(|variant| variant.is_stiffened()),
            goal: self.goal,
            against: self.against,
        }
    }

    fn target(&self, scale: f64) -> Target {
        let sign = if self.goal.least { 1.0 } else { -1.0 };
        let goal = Reading::Plain { place: self.goal.measure.place, sign };
        Target::new(goal, scale, (&self.study.limits, self.measures))
    }

    /// The goal in the middle of the first combination that has one.
    fn size_of_goal(&self) -> f64 {
        let middle = vec![0.5; self.space.dimensions()];
        let few = 0..self.space.combinations().min(100);
        let goals = few.filter_map(|combination| self.row(combination, &middle).value(&self.goal.measure));
        goals.map(f64::abs).find(|goal| *goal > 0.0).unwrap_or(1.0)
    }

    /// Every combination, from every place.
    fn all(&self, target: &Target, progress: &(dyn Fn(usize, usize) + Sync)) -> Vec<Found> {
        let starts = self.starts();
        let of = self.space.combinations() * starts.len();
        let mut all = Vec::with_capacity(of);
        const BATCH: usize = 512;
        for first in (0..of).step_by(BATCH) {
            let batch = (first..of.min(first + BATCH)).into_par_iter();
            all.par_extend(
                batch.map(|task| self.from(task / starts.len(), &starts[task % starts.len()], target)),
            );
            progress(all.len(), of);
        }
        all
    }

    /// The middle, then places spread over the cube; one without continuous values.
    fn starts(&self) -> Vec<Vec<f64>> {
        let dimensions = self.space.dimensions();
        if dimensions == 0 {
            return vec![Vec::new()];
        }
        let count = self.ask.starts;
        let spread = Sampler::new(Spread::LatinHypercube, (count, dimensions), (self.ask.seed, 0));
        let others = (1..count).map(|place| spread.point(place));
        std::iter::once(vec![0.5; dimensions]).chain(others).collect()
    }

    fn proof(&self, best: Option<&Found>, all: &[Found]) -> Proof {
        let combinations = self.space.combinations();
        if self.space.dimensions() == 0 {
            return Proof::Every { combinations };
        }
        let agrees = |found: &&Found| {
            best.is_some_and(|best| {
                let same = (found.goal - best.goal).abs() <= SAME * best.goal.abs();
                found.combination == best.combination && found.worst <= MET && same
            })
        };
        let agreed = all.iter().filter(agrees).count();
        Proof::Starts { combinations, starts: self.ask.starts, agreed }
    }
}

/// Warnings of designs; one that comes twice counts once.
fn warnings<'d>(designs: impl Iterator<Item = &'d SolvedDesign>) -> Vec<DesignWarning> {
    let mut each: Vec<&SolvedDesign> = Vec::new();
    for design in designs {
        let is_same = |own: &&SolvedDesign| {
            (own.row.variant, &own.row.values) == (design.row.variant, &design.row.values)
        };
        if !each.iter().any(is_same) {
            each.push(design);
        }
    }
    let mut counts = WarningCounts::default();
    each.iter().enumerate().for_each(|(place, design)| counts.add_design(place, &design.warnings));
    counts.with_points(|place| {
        let Row { variant, values, .. } = &each[place].row;
        Point { variant: *variant, values: values.clone() }
    })
}
