//! Searches a study's designs.

use axlebow_numerics::{Descent, Sampler, Smooth, Spread, nondominated};
use rayon::prelude::*;

use super::outcome::{FoundLimit, Goal, Proof, SearchOutcome};
use super::space::Space;
use super::target::{MET, Reading, Target};
use crate::ask::{Limit, Point, SearchOptions, Study};
use crate::findings::{DesignWarning, Row, SolvedDesign, WarningCounts};
use crate::run::Asked;
use crate::solve::Measure;

/// Share of a goal within which two are the same.
const SAME: f64 = 1e-5;
/// Share of a limit within which it stands in the way.
const BINDING: f64 = 1e-5;
/// Share of a limit by which it is relaxed to see what that buys.
const RELAXED: f64 = 0.01;
/// Levels of what is traded first, and of what is traded second.
const LEVELS: [usize; 2] = [17, 6];

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

/// A search under way.
struct SearchRun<'s> {
    study: &'s Study,
    ask: &'s SearchOptions,
    asked: &'s Asked,
    measures: &'s [Measure],
    space: Space<'s>,
    goal: Goal,
    against: Vec<Measure>,
    /// Whether any wall at a seat is made of shells.
    shells: bool,
}

/// A design that was come to.
#[derive(Debug, Clone)]
struct Found {
    combination: usize,
    design: SolvedDesign,
    goal: f64,
    worst: f64,
    descent: Option<Descent>,
    solved: usize,
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

    fn design(&self, combination: usize, place: &[f64]) -> SolvedDesign {
        let point = self.space.point(combination, place);
        let mut designs = self.asked.solvers.lend(|solver| self.study.solve(&[point], self.asked, solver));
        designs.swap_remove(0)
    }

    fn row(&self, combination: usize, place: &[f64]) -> Row {
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

    /// What is come to in a combination from a place.
    fn from(&self, combination: usize, place: &[f64], target: &Target) -> Found {
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

    /// What each limit does at a design.
    fn limits(&self, target: &Target, (at, met): (&Found, bool), all: &[Found]) -> Vec<FoundLimit> {
        let Some(values) = at.design.row.result.as_deref().ok().and_then(|readings| target.values(readings))
        else {
            return Vec::new();
        };
        let one = |(number, limit): (usize, &Limit)| {
            let sides = || target.sides.iter().enumerate().filter(move |(_, side)| side.limit == number);
            let missed = sides().map(|(side, _)| values.misses[side]).fold(f64::NEG_INFINITY, f64::max);
            let price = at.descent.as_ref().map(|descent| {
                let each = sides().map(|(side, own)| descent.multipliers[side] / own.scale());
                -self.sign() * target.scale() * each.sum::<f64>()
            });
            let again =
                |target: Target| self.again(&target, at, all).map(|goal| self.sign() * goal * target.scale());
            let relaxed = met.then(|| again(target.relaxed(number, RELAXED))).flatten();
            let without = met.then(|| again(target.without(number))).flatten();
            let goal = self.sign() * at.goal * target.scale();
            let moves =
                |other: Option<f64>| other.is_some_and(|other| (other - goal).abs() > SAME * goal.abs());
            let active = if at.descent.is_some() { missed.abs() < BINDING } else { moves(without) };
            let worst = self
                .measures
                .iter()
                .filter(|own| own.name == limit.of)
                .filter_map(|own| at.design.row.value(own));
            let value = worst.reduce(|a, b| if limit.admits(a) && !limit.admits(b) { b } else { a });
            FoundLimit {
                limit: limit.clone(),
                value: value.unwrap_or(f64::NAN),
                missed,
                active,
                price,
                relaxed,
                without,
            }
        };
        self.study.limits.iter().enumerate().map(one).collect()
    }

    fn sign(&self) -> f64 {
        if self.goal.least { 1.0 } else { -1.0 }
    }

    /// The best goal with other limits: among the designs that were solved where all are, else on from a design.
    fn again(&self, target: &Target, at: &Found, all: &[Found]) -> Option<f64> {
        let goals = |found: &Found| {
            let values = target.values(found.design.row.result.as_deref().ok()?)?;
            (values.worst() <= MET).then_some(values.goal)
        };
        let listed = all.iter().filter_map(goals).reduce(f64::min);
        let Some(descent) = &at.descent else { return listed };
        let on = self.from(at.combination, &descent.place, target);
        let own = (on.worst <= MET).then_some(on.goal);
        [own, listed].into_iter().flatten().reduce(f64::min)
    }

    /// Designs that trade the goal against other results.
    fn front(&self, target: &Target, best: &Found, all: &[Found]) -> Vec<SolvedDesign> {
        let Some(first) = self.against.first() else { return Vec::new() };
        let met = all.iter().filter(|found| found.worst <= MET);
        let mut designs: Vec<SolvedDesign> = met.map(|found| found.design.clone()).collect();
        if best.descent.is_some() {
            let combinations: Vec<usize> = (0..self.space.combinations()).collect();
            let traded = combinations.par_iter().map(|own| self.traded(target, (*own, first), all));
            designs.extend(traded.collect::<Vec<_>>().into_iter().flatten());
        }
        let entry = |design: &SolvedDesign| -> Vec<f64> {
            let row = &design.row;
            let goal = row.value(&self.goal.measure).map_or(f64::INFINITY, |goal| self.sign() * goal);
            let others = self.against.iter().map(|own| row.value(own).map_or(f64::INFINITY, f64::abs));
            std::iter::once(goal).chain(others).collect()
        };
        let entries: Vec<Vec<f64>> = designs.iter().map(entry).collect();
        let mut front: Vec<SolvedDesign> =
            nondominated(&entries).into_iter().map(|place| designs[place].clone()).collect();
        front.dedup_by(|b, a| {
            entry(a).iter().zip(entry(b)).all(|(one, other)| (one - other).abs() <= SAME * one.abs())
        });
        front
    }

    /// The best designs of one combination at levels of what is traded, from the best down to the least that it can be.
    fn traded(
        &self,
        target: &Target,
        (combination, first): (usize, &Measure),
        all: &[Found],
    ) -> Vec<SolvedDesign> {
        let own = all.iter().filter(|found| found.combination == combination && found.worst <= MET);
        let Some(best) = own.min_by(|a, b| a.goal.total_cmp(&b.goal)) else { return Vec::new() };
        let (Some(descent), Some(most)) = (&best.descent, best.design.row.value(first)) else {
            return Vec::new();
        };
        let magnitude = |measure: &Measure, from: &Row| {
            let size = from.value(measure).map_or(1.0, f64::abs);
            Target::new(
                Reading::Magnitude { place: measure.place },
                size,
                (&self.study.limits, self.measures),
            )
        };
        let far = self.from(combination, &descent.place, &magnitude(first, &best.design.row));
        let Some(least) = far.design.row.value(first).filter(|_| far.worst <= MET) else { return Vec::new() };
        let mut designs = vec![far.design.clone()];
        let mut place = descent.place.clone();
        for level in levels((most.abs(), least.abs()), LEVELS[0]) {
            let held = target.holding(first.place, level);
            let found = self.from(combination, &place, &held);
            if found.worst > MET {
                continue;
            }
            if let Some(descent) = &found.descent {
                place.clone_from(&descent.place);
            }
            for second in self.against.iter().skip(1) {
                designs.extend(self.traded_further(
                    &held,
                    (&found, second),
                    &magnitude(second, &found.design.row),
                ));
            }
            designs.push(found.design);
        }
        designs
    }

    fn traded_further(
        &self,
        held: &Target,
        (from, second): (&Found, &Measure),
        size: &Target,
    ) -> Vec<SolvedDesign> {
        let (Some(descent), Some(most)) = (&from.descent, from.design.row.value(second)) else {
            return Vec::new();
        };
        let far = self.from(from.combination, &descent.place, &size.within(held));
        let Some(least) = far.design.row.value(second).filter(|_| far.worst <= MET) else {
            return Vec::new();
        };
        let found = levels((most.abs(), least.abs()), LEVELS[1])
            .map(|level| self.from(from.combination, &descent.place, &held.holding(second.place, level)));
        found.filter(|found| found.worst <= MET).map(|found| found.design).chain([far.design]).collect()
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

/// Levels between two ends, these left out.
fn levels((from, to): (f64, f64), count: usize) -> impl Iterator<Item = f64> {
    (1..=count).map(move |i| from + (to - from) * i as f64 / (count + 1) as f64)
}
