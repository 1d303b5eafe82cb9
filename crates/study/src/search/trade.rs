//! Designs that trade the goal against other results.

use axlebow_numerics::nondominated;
use rayon::prelude::*;

use super::hunt::{Found, SAME, SearchRun};
use super::target::{MET, Reading, Target};
use crate::findings::{Row, SolvedDesign};
use crate::solve::Measure;

/// Levels of what is traded first, and of what is traded second.
const LEVELS: [usize; 2] = [17, 6];

impl SearchRun<'_> {
    /// Designs that trade the goal against other results.
    pub(super) fn front(&self, target: &Target, best: &Found, all: &[Found]) -> Vec<SolvedDesign> {
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

/// Levels between two ends, these left out.
fn levels((from, to): (f64, f64), count: usize) -> impl Iterator<Item = f64> {
    (1..=count).map(move |i| from + (to - from) * i as f64 / (count + 1) as f64)
}
