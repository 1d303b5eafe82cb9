//! Which further reading would tell most.

use axlebow_axle::Side;
use axlebow_model::ReadingErrors;
use axlebow_numerics::mutual_information;
use statrs::distribution::{ContinuousCDF, Normal};

use super::likelihood::{Likelihood, OnCell};
use super::observed::{Evidence, PRESSURE_OF_THE_DAY, PredictedBy, tire_slots};
use super::parameter::Parameter;
use super::wear_cause::WearCause;

/// Parts into which the values that a reading may have are cut.
const PARTS: usize = 64;
/// Standard deviations to each side that are looked at.
const REACH: f64 = 4.0;
/// Probability of a cell below which it is left out.
const LEAST_SHARE: f64 = 1e-6;

/// A further reading with what it is expected to tell.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NextCheck {
    /// What to read.
    pub evidence: Evidence,
    /// Expected fall of the entropy of the causes, nats.
    pub information: f64,
}

/// A cell with its probability after the readings.
pub struct WeighedCell<'a> {
    pub on: &'a OnCell<'a>,
    pub cause: usize,
    pub share: f64,
}

/// What is needed to judge checks.
pub struct CheckBench<'a> {
    pub likelihood: &'a Likelihood<'a>,
    pub causes: &'a [WearCause],
    pub posterior: &'a [f64],
    pub cells: Vec<WeighedCell<'a>>,
    pub errors: ReadingErrors,
}

impl CheckBench<'_> {
    /// Every check that the sheet does not have yet, what tells most first.
    pub fn checks(&self) -> Vec<NextCheck> {
        let has = self.likelihood.observed.evidence();
        let numbers = self.numbers().into_iter().filter(|(evidence, ..)| !has.contains(evidence));
        let mut all: Vec<NextCheck> = Vec::new();
        for (evidence, error, of) in numbers {
            let information = self.of_number(error, of);
            match all.iter_mut().find(|own| own.evidence == evidence) {
                Some(own) => own.information = own.information.max(information),
                None => all.push(NextCheck { evidence, information }),
            }
        }
        let words = [Evidence::Feathering, Evidence::Cups, Evidence::Damper];
        let words = words.into_iter().filter(|evidence| !has.contains(evidence));
        all.extend(words.map(|evidence| NextCheck { evidence, information: self.of_words(evidence) }));
        all.sort_by(|a, b| b.information.total_cmp(&a.information));
        all
    }

    /// Numbers that can be read: kind, standard error, parameters that sum to them.
    fn numbers(&self) -> Vec<(Evidence, f64, Vec<Parameter>)> {
        let errors = self.errors;
        let wall = errors.wall / self.wall();
        let inflation = errors.inflation / self.likelihood.worn.axle().wheels.left.tread().inflation;
        let mut all = vec![
            (Evidence::Load, errors.load, vec![Parameter::Load]),
            (Evidence::Offset, errors.offset, vec![Parameter::Outset]),
            (Evidence::Skew, errors.angle, vec![Parameter::Skew]),
            (Evidence::Wall, wall, vec![Parameter::Wall]),
        ];
        for side in Side::BOTH {
            all.push((Evidence::Endplay, errors.endplay, vec![Parameter::Endplay(side)]));
            all.push((Evidence::Runout, errors.runout, vec![Parameter::Runout(side)]));
            all.push((Evidence::Camber, errors.angle, vec![Parameter::Camber(side)]));
            all.push((Evidence::Toe, errors.angle, vec![Parameter::Toe(side)]));
            let unequal = Parameter::OuterLessInner(side);
            if self.likelihood.worn.place(unequal).is_some() {
                all.push((Evidence::Circumference, errors.circumference * 0.225, vec![unequal]));
            }
        }
        for (side, slot) in tire_slots(self.likelihood.worn) {
            let of = vec![Parameter::Inflation, Parameter::TireInflation(side, slot)];
            all.push((Evidence::Inflation, inflation.hypot(PRESSURE_OF_THE_DAY), of));
        }
        all
    }

    /// Thickness of the wall, m; a usual one where the axle has none by name.
    fn wall(&self) -> f64 {
        const USUAL: f64 = 12e-3;
        self.likelihood.worn.wall().unwrap_or(USUAL)
    }

    /// What a number would tell.
    fn of_number(&self, error: f64, of: Vec<Parameter>) -> f64 {
        let by = PredictedBy::Parameters { base: 0.0, of };
        let places = self.likelihood.places(None);
        let of_cell = |own: &WeighedCell<'_>| {
            let row = self.likelihood.row(own.on.cell, &by);
            let before = (row.mean, row.variance(own.on.cell));
            let (values, joint) = (own.on.values(&places), own.on.joint(&places));
            let (mean, variance) =
                joint.map_or(before, |joint| joint.regressed(&values, before, &row.covariances(own.on)));
            (mean, (variance + error * error).sqrt())
        };
        let normals: Vec<(f64, f64)> = self.cells.iter().map(of_cell).collect();
        let ends = |sign: f64| normals.iter().map(move |(mean, deviation)| mean + sign * REACH * deviation);
        let low = ends(-1.0).fold(f64::INFINITY, f64::min);
        let high = ends(1.0).fold(f64::NEG_INFINITY, f64::max);
        let edge = |part: usize| low + (high - low) * part as f64 / PARTS as f64;
        self.told(PARTS, |place| {
            let (mean, deviation) = normals[place];
            let below = |part: usize| Normal::standard().cdf((edge(part) - mean) / deviation);
            (0..PARTS).map(|part| below(part + 1) - below(part)).collect()
        })
    }

    /// What a word would tell; feathering by that of the tire that tells most.
    fn of_words(&self, evidence: Evidence) -> f64 {
        let cause = |place: usize| self.cells[place].on.cell.variant.cause;
        match evidence {
            Evidence::Cups => self.told(3, |place| cause(place).cup_shares().to_vec()),
            Evidence::Damper => self.told(3, |place| cause(place).damper_shares().to_vec()),
            _ => {
                let of_tire = |tire: usize| {
                    self.told(3, |place| {
                        self.likelihood.feather_shares(self.cells[place].on.cell, tire).to_vec()
                    })
                };
                (0..tire_slots(self.likelihood.worn).len()).map(of_tire).fold(0.0, f64::max)
            }
        }
    }

    /// Information of a reading whose outcomes have these shares in each cell.
    fn told(&self, outcomes: usize, of_cell: impl Fn(usize) -> Vec<f64>) -> f64 {
        let mut predicted = vec![vec![0.0; outcomes]; self.causes.len()];
        for (place, own) in self.cells.iter().enumerate() {
            for (sum, share) in predicted[own.cause].iter_mut().zip(of_cell(place)) {
                *sum += own.share * share;
            }
        }
        mutual_information(self.posterior, &predicted)
    }
}

/// Cells with the probability that each has within its cause; those of next to none are left out.
pub fn weighed<'a>(
    likelihood: &'a Likelihood<'a>,
    causes: &[WearCause],
    posterior: &[f64],
) -> Vec<WeighedCell<'a>> {
    let of_cause = |(cause, own): (usize, &WearCause)| {
        let cells: Vec<&OnCell<'_>> = likelihood.cells_of(*own).collect();
        let logs: Vec<f64> = cells.iter().map(|on| on.log_weight).collect();
        let shares = axlebow_numerics::posterior(&logs);
        let kept = move |(on, share): (&'a OnCell<'a>, f64)| WeighedCell { on, cause, share };
        cells.into_iter().zip(shares).map(kept).collect::<Vec<_>>()
    };
    let all = causes.iter().enumerate().flat_map(of_cause);
    all.filter(|own| own.share * posterior[own.cause] > LEAST_SHARE).collect()
}
