//! What came of trying remedies.

use std::cmp::Ordering;

use axlebow_axle::AxleError;
use axlebow_axle::tread::DutyName;
use axlebow_model::ModelError;

use super::change::Change;
use super::remedy::{DoneBy, Remedy};
use super::state::State;
use crate::payback::PaybackStudy;

/// Remedies tried on an axle.
#[derive(Debug, Clone, PartialEq)]
pub struct RemediesOutcome {
    /// Name of the load case.
    pub case: String,
    /// The duty in which the tires run.
    pub duty: DutyName,
    /// Name of the road, where one was driven.
    pub road: Option<String>,
    /// The axle as it is.
    pub base: State,
    /// By what those that help are ranked.
    pub rank: RankBy,
    /// In what worth is told; none where no prices were given.
    pub money: Option<Money>,
    /// Remedies that help, by how the checks stand with them and then the best first.
    pub helping: Vec<Tried>,
    /// Remedies that were tried and do not help.
    pub idle: Vec<Tried>,
    /// Remedies that this axle cannot have, with the reason.
    pub impossible: Vec<(Remedy, WhyNot)>,
    /// Standard remedies that this axle does not need or has nothing of the kind of.
    pub not_needed: Vec<Remedy>,
}

/// By what remedies are ranked, the best first; how the checks stand with them comes before, and wear decides between equals.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RankBy {
    /// Wear of the shoulder that wears most.
    Wear,
    /// Growth of the cups that grow fastest.
    Cups,
    /// Camber under load, the least first.
    Camber,
    /// Axle mass.
    Mass,
    /// What they are worth; those without a worth last.
    Money,
}

impl RankBy {
    /// The word of options and documents.
    pub fn word(self) -> &'static str {
        match self {
            RankBy::Wear => "wear",
            RankBy::Cups => "cups",
            RankBy::Camber => "camber",
            RankBy::Mass => "mass",
            RankBy::Money => "money",
        }
    }

    /// Which of two comes first.
    pub(super) fn order(self, a: &Tried, b: &Tried) -> Ordering {
        let by = |value: fn(&Tried) -> f64| value(a).total_cmp(&value(b));
        match self {
            RankBy::Wear => by(|own| own.state.shoulder.wear),
            RankBy::Cups => by(|own| own.state.cups.map_or(f64::INFINITY, |cups| cups.rate)),
            RankBy::Camber => by(|own| own.state.camber.of_larger_magnitude().abs()),
            RankBy::Mass => by(|own| own.state.axle_mass),
            RankBy::Money => by(|own| -own.worth.unwrap_or(f64::NEG_INFINITY)),
        }
    }
}

/// In what the worth of a remedy is told.
#[derive(Debug, Clone, PartialEq)]
pub struct Money {
    /// The currency, a label.
    pub currency: String,
    /// Years that the vehicles are held.
    pub years: f64,
    /// Name of the payback study whose prices were taken.
    pub prices: String,
}

impl Money {
    pub(super) fn of(prices: &PaybackStudy) -> Self {
        Money {
            currency: prices.currency.clone(),
            years: prices.terms.fleet.years,
            prices: prices.name.clone(),
        }
    }
}

/// A remedy that was tried.
#[derive(Debug, Clone, PartialEq)]
pub struct Tried {
    /// The remedy.
    pub remedy: Remedy,
    /// What it changes in the model.
    pub changes: Vec<Change>,
    /// The axle with it.
    pub state: State,
    /// What it is worth for each axle over the years held, discounted: what tires cost less, and its mass, before anything is paid for
    /// it. Its price, downtime and inspections may cost so much; none without prices.
    pub worth: Option<f64>,
}

/// How the checks of strength and clearance stand with a remedy.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Standing {
    /// All checks hold.
    Holds,
    /// A check fails that fails without it too, and uses no more of its limit than without: it must be put right beside.
    StillFails,
    /// It must not be done: the tire meets the seat, or a check fails that holds without, or that uses more of its limit.
    Refused,
}

impl Standing {
    /// As documents write it.
    pub fn word(self) -> &'static str {
        match self {
            Standing::Holds => "holds",
            Standing::StillFails => "still-fails",
            Standing::Refused => "refused",
        }
    }
}

/// Why an axle cannot have a remedy.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum WhyNot {
    /// The model has no such key, or no such value may stand there.
    #[error("{0}")]
    Refused(ModelError),
    /// The changed model does not fit together.
    #[error("{0}")]
    Misfit(String),
    /// The changed axle cannot be solved.
    #[error("{0}")]
    Unsolved(AxleError),
    /// The ride over the road ends early.
    #[error("{0}")]
    Undriven(String),
}

impl RemediesOutcome {
    /// The best remedy with which all checks hold; where there is none, the best that no check refuses.
    pub fn best(&self) -> Option<&Tried> {
        self.allowed().next()
    }

    /// The best of them that keeps the axle as it is.
    pub fn best_on_this_axle(&self) -> Option<&Tried> {
        let keeps = |tried: &&Tried| tried.remedy.done_by() < DoneBy::AnotherAxle;
        self.allowed().find(keeps)
    }

    fn allowed(&self) -> impl Iterator<Item = &Tried> {
        self.helping.iter().filter(|tried| tried.standing(&self.base) != Standing::Refused)
    }

    /// Share of the excess of shoulder wear over upright tires that a remedy takes off; none where there is no excess.
    pub fn taken_off(&self, tried: &Tried) -> Option<f64> {
        let excess = self.base.shoulder.wear - 1.0;
        (excess > 0.0).then(|| (self.base.shoulder.wear - tried.state.shoulder.wear) / excess)
    }
}
