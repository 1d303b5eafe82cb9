//! Tries remedies and ranks them.

use axlebow_axle::{Axle, Ride};
use axlebow_model::{Document, Model};
use rayon::prelude::*;

use super::change::{AsItIs, Change, changed, misfit};
use super::outcome::{Money, RankBy, RemediesOutcome, Standing, Tried, WhyNot};
use super::own::OwnRemedy;
use super::remedy::{Remedy, Standard};
use super::state::{Asked, Binding, Solved, State, Upright};
use crate::payback::PaybackStudy;

/// How many of the best are tried in pairs.
const PAIRED: usize = 4;
/// Share of the wear by which a remedy must lower it to count as one (a judgment, no source).
const FELT: f64 = 1e-3;

/// What is asked of remedies.
#[derive(Debug, Clone)]
pub struct RemedyOptions<'a> {
    /// Name of the load case in which the tires stand; strength is checked in all of the model.
    pub case: &'a str,
    /// The road over which the tires wear; standing still if there is none.
    pub ride: Option<&'a Ride>,
    /// Remedies beside the standard ones.
    pub own: Vec<OwnRemedy>,
    /// By what those that help are ranked; by money only where there are prices.
    pub rank: RankBy,
    /// The payback study whose fleet, tires and mass say what a remedy is worth; its own remedy does not count.
    pub prices: Option<&'a PaybackStudy>,
}

/// Every standard remedy, the user's own, and pairs of the best, tried on a model and ranked by the wear of the shoulder
/// that wears most.
///
/// # Errors
/// Why the axle cannot be solved as it is.
pub fn remedies(document: &Document, options: &RemedyOptions<'_>) -> Result<RemediesOutcome, WhyNot> {
    let model = Model::of(document).map_err(misfit)?;
    let asked = Asked { case: options.case, ride: options.ride };
    let solved = Solved::of(&model, &asked)?;
    let camber_change = solved.camber_change();
    let bench = Bench {
        of: AsItIs {
            document,
            axle: &model.axle,
            camber_change: &camber_change,
            rides: asked.ride.is_some(),
        },
        upright: solved.upright(),
        asked,
        model: &model,
        prices: options.prices,
    };
    let mut outcome = RemediesOutcome {
        case: options.case.to_owned(),
        duty: model.axle.running.duty.name(),
        road: options.ride.map(|ride| ride.name.clone()),
        base: solved.state(&model.axle, &bench.upright),
        rank: options.rank,
        money: options.prices.map(Money::of),
        helping: Vec::new(),
        idle: Vec::new(),
        impossible: Vec::new(),
        not_needed: Vec::new(),
    };
    let standard = Standard::ALL.into_iter().map(Remedy::Standard);
    outcome.take(bench.try_all(standard.chain(options.own.iter().cloned().map(Remedy::Own)).collect()));
    let mut pairs = bench.try_all(outcome.pairs());
    pairs.retain(|(pair, tried)| {
        tried.as_ref().is_some_and(|tried| outcome.is_better_than_its_parts(pair, tried))
    });
    outcome.take(pairs);
    Ok(outcome)
}

/// An axle on which remedies are tried.
struct Bench<'a> {
    of: AsItIs<'a>,
    upright: Upright,
    asked: Asked<'a>,
    /// The axle as it is.
    model: &'a Model,
    prices: Option<&'a PaybackStudy>,
}

/// What came of a remedy: none where the axle does not need it.
type Attempt = (Remedy, Option<Result<Tried, WhyNot>>);

impl Bench<'_> {
    fn try_all(&self, remedies: Vec<Remedy>) -> Vec<Attempt> {
        let attempt = |remedy: Remedy| {
            let changes = remedy.changes(self.of);
            let tried = (!changes.is_empty()).then(|| self.try_one(remedy.clone(), changes));
            (remedy, tried)
        };
        remedies.into_par_iter().map(attempt).collect()
    }

    fn try_one(&self, remedy: Remedy, changes: Vec<Change>) -> Result<Tried, WhyNot> {
        let document = changed(self.of.document, &changes)?;
        let model = Model::of(&document).map_err(misfit)?;
        let state = self.state(&model)?;
        let priced = self.prices.filter(|_| !remedy.is_another_tire());
        let worth = priced.map(|prices| prices.worth_of_an_axle([self.model, &model]));
        let worth = worth.transpose().map_err(|error| WhyNot::Misfit(error.to_string()))?;
        Ok(Tried { remedy, changes, state, worth })
    }

    fn state(&self, model: &Model) -> Result<State, WhyNot> {
        let axle: &Axle = &model.axle;
        Ok(Solved::of(model, &self.asked)?.state(axle, &self.upright))
    }
}

impl RemediesOutcome {
    /// Sorts what was tried among what was tried before.
    fn take(&mut self, attempts: Vec<Attempt>) {
        for (remedy, attempt) in attempts {
            match attempt {
                None => self.not_needed.push(remedy),
                Some(Err(why)) => self.impossible.push((remedy, why)),
                Some(Ok(tried)) if self.helps(&tried.state) => self.helping.push(tried),
                Some(Ok(tried)) => self.idle.push(tried),
            }
        }
        let order = |a: &Tried, b: &Tried| {
            let wear = a.state.shoulder.wear.total_cmp(&b.state.shoulder.wear);
            a.standing(&self.base)
                .cmp(&b.standing(&self.base))
                .then(self.rank.order(a, b))
                .then(wear)
                .then(a.state.axle_mass.total_cmp(&b.state.axle_mass))
        };
        self.helping.sort_by(order);
    }

    fn helps(&self, state: &State) -> bool {
        state.shoulder.wear < self.base.shoulder.wear * (1.0 - FELT)
    }

    /// Pairs of the best single remedies that go together, each better than today.
    fn pairs(&self) -> Vec<Remedy> {
        let best: Vec<&Remedy> = self.helping.iter().take(PAIRED).map(|tried| &tried.remedy).collect();
        let mut pairs = Vec::new();
        for (place, one) in best.iter().enumerate() {
            for other in best[place + 1..].iter().filter(|other| one.goes_with(other)) {
                pairs.push(Remedy::Pair(Box::new([(*one).clone(), (*other).clone()])));
            }
        }
        pairs
    }
}

impl RemediesOutcome {
    /// Whether a pair lowers wear below what its better part does; what cannot be is none of those.
    fn is_better_than_its_parts(&self, pair: &Remedy, tried: &Result<Tried, WhyNot>) -> bool {
        let Ok(tried) = tried else { return false };
        let parts = self.helping.iter().filter(|own| pair.parts().contains(&own.remedy));
        parts.map(|own| own.state.shoulder.wear).all(|wear| tried.state.shoulder.wear < wear * (1.0 - FELT))
    }
}

impl Tried {
    /// How the checks stand with it, against those of the axle as it is.
    pub fn standing(&self, base: &State) -> Standing {
        if self.state.seat_clearance <= 0.0 {
            return Standing::Refused;
        }
        let Some(own) = self.state.failing() else { return Standing::Holds };
        let no_worse = |base: &Binding| !base.holds && own.utilization <= base.utilization * (1.0 + 1e-6);
        if base.binding.as_ref().is_some_and(no_worse) { Standing::StillFails } else { Standing::Refused }
    }
}
