//! What each limit does at a design, and what relaxing it buys.

use super::hunt::{Found, SAME, SearchRun};
use super::outcome::FoundLimit;
use super::target::{MET, Target};
use crate::ask::Limit;

/// Share of a limit within which it stands in the way.
const BINDING: f64 = 1e-5;
/// Share of a limit by which it is relaxed to see what that buys.
const RELAXED: f64 = 0.01;

impl SearchRun<'_> {
    /// What each limit does at a design.
    pub(super) fn limits(
        &self,
        target: &Target,
        (at, met): (&Found, bool),
        all: &[Found],
    ) -> Vec<FoundLimit> {
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
}
