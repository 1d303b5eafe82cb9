//! From a sheet to ranked causes.

use axlebow_axle::tread::Duty;
use axlebow_axle::{Axle, AxleError};
use axlebow_model::CaseSheet;
use axlebow_numerics::{entropy, log_sum_exp, posterior};

use super::library::Library;
use super::likelihood::{Discrepancy, Likelihood, OnCell};
use super::next_check::{CheckBench, weighed};
use super::observed::{Evidence, Observed, PredictedBy, tire_slots};
use super::outcome::{EvidenceWeight, ExplainOutcome, FITS, LEADS, RankedCause, SeenRib, Size, Verdict};
use super::pairs::{Single, ranked_pairs};
use super::wear_cause::WearCause;
use super::worn_axle::WornAxle;

/// Causes of a worn axle, ranked by their probability after what was seen, with what speaks for and against each and what to
/// check next.
///
/// Each cause is a mixture over where and how large it is ([`Library`]); readings scatter by their errors, by what differs
/// between sound axles and tires, and by what the tire face leaves out ([`Discrepancy`]). One cause is taken to be at work,
/// all others as on a sound axle; two at once are tried beside.
///
/// # Errors
/// As [`axlebow_axle::tires`] for the axle as its file says, or with a cause that it can have.
pub fn explain(sheet: &CaseSheet) -> Result<ExplainOutcome, AxleError> {
    let axle = axle_in_duty(sheet);
    let worn = WornAxle::of(&axle, &sheet.document);
    let library = Library::of(&worn)?;
    explain_with(sheet, (&worn, &library), Discrepancy::ESTIMATED)
}

/// The sheet's axle in the duty that the sheet says.
fn axle_in_duty(sheet: &CaseSheet) -> Axle {
    let axle = &sheet.model.axle;
    sheet.duty.and_then(Duty::usual).map_or_else(|| axle.clone(), |duty| axle.in_duty(duty))
}

/// As [`explain`], with an axle that is solved already.
///
/// # Errors
/// An axle that cannot stand empty, where camber or toe was read.
pub fn explain_with(
    sheet: &CaseSheet,
    (worn, library): (&WornAxle<'_>, &Library),
    discrepancy: Discrepancy,
) -> Result<ExplainOutcome, AxleError> {
    let observed = Observed::of(sheet, worn, &library.usual)?;
    let likelihood = Likelihood::new(worn, library, &observed, discrepancy);
    let ranking = Ranking::of(sheet, &likelihood);
    Ok(ranking.outcome(sheet))
}

/// Probabilities of causes, without what speaks for them.
#[derive(Debug, Clone, PartialEq)]
pub struct CauseOdds {
    /// Each cause that the axle can have, with its probability after the readings.
    pub causes: Vec<(WearCause, f64)>,
    /// Probability that readings lie as far from the nearest prediction as these.
    pub fit: f64,
}

/// Probability of each cause of an axle after the readings of a sheet: the short way, without what speaks for it.
///
/// # Errors
/// As [`explain_with`].
pub fn probabilities(
    sheet: &CaseSheet,
    (worn, library): (&WornAxle<'_>, &Library),
    discrepancy: Discrepancy,
) -> Result<CauseOdds, AxleError> {
    let observed = Observed::of(sheet, worn, &library.usual)?;
    let likelihood = Likelihood::new(worn, library, &observed, discrepancy);
    let ranking = Ranking::of(sheet, &likelihood);
    let cells = ranking.causes.iter().flat_map(|cause| likelihood.cells_of(*cause));
    let fit = cells.map(|on| likelihood.fit(on)).fold(0.0, f64::max);
    Ok(CauseOdds { causes: ranking.causes.into_iter().zip(ranking.posterior).collect(), fit })
}

/// Causes with their probabilities.
struct Ranking<'a> {
    likelihood: &'a Likelihood<'a>,
    causes: Vec<WearCause>,
    log_priors: Vec<f64>,
    log_likelihoods: Vec<f64>,
    posterior: Vec<f64>,
}

impl<'a> Ranking<'a> {
    fn of(sheet: &CaseSheet, likelihood: &'a Likelihood<'a>) -> Self {
        let causes = likelihood.library.causes();
        let weight = |cause: &WearCause| {
            let stated = sheet.priors.iter().find(|own| own.cause == cause.word());
            stated.map_or(cause.usual_weight(), |own| own.weight)
        };
        let weights: Vec<f64> = causes.iter().map(|cause| weight(cause).ln()).collect();
        let total = log_sum_exp(&weights);
        let log_priors: Vec<f64> = weights.iter().map(|weight| weight - total).collect();
        let log_likelihoods: Vec<f64> =
            causes.iter().map(|cause| likelihood.of_cause(*cause, None)).collect();
        let posterior = posterior(&sums(&log_priors, &log_likelihoods));
        Ranking { likelihood, causes, log_priors, log_likelihoods, posterior }
    }

    fn outcome(&self, sheet: &CaseSheet) -> ExplainOutcome {
        let cells = weighed(self.likelihood, &self.causes, &self.posterior);
        let without: Vec<(Evidence, Vec<f64>)> = self.without_each();
        let likeliest = self.log_likelihoods.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let ranked = |(number, cause): (usize, &WearCause)| {
            let (place, size, fit) = self.best(*cause);
            RankedCause {
                cause: *cause,
                prior: self.log_priors[number].exp(),
                posterior: self.posterior[number],
                log_likelihood: self.log_likelihoods[number] - likeliest,
                fit,
                place,
                size,
                evidence: without.iter().map(|(kind, logs)| self.weight(number, *kind, logs)).collect(),
            }
        };
        let mut causes: Vec<RankedCause> = self.causes.iter().enumerate().map(ranked).collect();
        causes.sort_by(|a, b| b.posterior.total_cmp(&a.posterior));
        let fits = causes.iter().filter(|own| own.prior > 0.0).map(|own| own.fit).fold(0.0, f64::max);
        let verdict = match (fits < FITS, causes[0].posterior < LEADS) {
            (true, _) => Verdict::NothingFits,
            (_, true) => Verdict::CannotTell,
            _ => Verdict::Leads,
        };
        let bench = CheckBench {
            likelihood: self.likelihood,
            causes: &self.causes,
            posterior: &self.posterior,
            cells,
            errors: sheet.errors,
        };
        ExplainOutcome {
            case: sheet.name.clone(),
            position: sheet.position.clone(),
            ribs: self.ribs(causes[0].cause),
            pairs: ranked_pairs(self.likelihood, &self.singles()),
            checks: bench.checks(),
            entropy: entropy(&self.posterior),
            discrepancy: self.likelihood.discrepancy,
            verdict,
            causes,
        }
    }

    /// The causes that may have worn the axle, the most probable first.
    fn singles(&self) -> Vec<Single> {
        let mut places: Vec<usize> =
            (0..self.causes.len()).filter(|place| self.log_priors[*place].is_finite()).collect();
        places.sort_by(|a, b| self.posterior[*b].total_cmp(&self.posterior[*a]));
        let single = |place: usize| Single {
            cause: self.causes[place],
            log_prior: self.log_priors[place],
            log_likelihood: self.log_likelihoods[place],
        };
        places.into_iter().map(single).collect()
    }

    /// Logarithms of the likelihoods without each kind of reading.
    fn without_each(&self) -> Vec<(Evidence, Vec<f64>)> {
        let kinds = self.likelihood.observed.evidence();
        let of = |kind: Evidence| {
            let logs = self.causes.iter().map(|cause| self.likelihood.of_cause(*cause, Some(kind)));
            (kind, logs.collect())
        };
        kinds.into_iter().map(of).collect()
    }

    /// What a kind of reading says of a cause: how probable it is with it over how probable with the others, as these are after
    /// all other readings.
    fn weight(&self, number: usize, evidence: Evidence, without: &[f64]) -> EvidenceWeight {
        let told = |cause: usize| self.log_likelihoods[cause] - without[cause];
        let others: Vec<usize> = (0..self.causes.len()).filter(|other| *other != number).collect();
        let before: Vec<f64> = others.iter().map(|other| self.log_priors[*other] + without[*other]).collect();
        let after: Vec<f64> =
            others.iter().zip(&before).map(|(other, before)| before + told(*other)).collect();
        EvidenceWeight { evidence, log_ratio: told(number) - (log_sum_exp(&after) - log_sum_exp(&before)) }
    }

    /// The most probable way of a cause: where, how large, and how well its best size fits.
    fn best(&self, cause: WearCause) -> (super::variant::Whereabouts, Size, f64) {
        let cells: Vec<&OnCell<'_>> = self.likelihood.cells_of(cause).collect();
        let fit = cells.iter().map(|on| self.likelihood.fit(on)).fold(0.0, f64::max);
        let more = |a: &&&OnCell<'_>, b: &&&OnCell<'_>| a.log_weight.total_cmp(&b.log_weight);
        let best = cells.iter().max_by(more).unwrap_or(&cells[0]);
        let same: Vec<&&OnCell<'_>> =
            cells.iter().filter(|on| on.cell.variant == best.cell.variant).collect();
        let shares = posterior(&same.iter().map(|on| on.log_weight).collect::<Vec<_>>());
        let sizes: Vec<(f64, f64)> = same.iter().map(|on| self.size(on)).collect();
        let mean: f64 = sizes.iter().zip(&shares).map(|(own, share)| share * own.0).sum();
        let square: f64 =
            sizes.iter().zip(&shares).map(|(own, s)| s * (own.1 + (own.0 - mean).powi(2))).sum();
        let of = best.cell.variant.size_of;
        (best.cell.variant.place, Size { of, mean, deviation: square.sqrt() }, fit)
    }

    /// Mean and variance of the size in a cell after the readings.
    fn size(&self, on: &OnCell<'_>) -> (f64, f64) {
        let places = self.likelihood.places(None);
        let before = (on.cell.size, on.cell.size_variance);
        let covariances = &on.per_size * on.cell.size_variance;
        let joint = on.joint(&places);
        joint.map_or(before, |joint| joint.regressed(&on.values(&places), before, &covariances))
    }

    /// Ribs that were measured, with what the best cell of a cause predicts.
    fn ribs(&self, cause: WearCause) -> Vec<SeenRib> {
        let more = |a: &(&OnCell<'_>, f64), b: &(&OnCell<'_>, f64)| a.1.total_cmp(&b.1);
        let cells = self.likelihood.cells_of(cause).map(|on| (on, self.likelihood.of_cell(on, None)));
        let Some((best, _)) = cells.max_by(more) else { return Vec::new() };
        let places = self.likelihood.places(None);
        let (observed, values) = (self.likelihood.observed, best.values(&places));
        let Some(joint) = best.joint(&places) else { return Vec::new() };
        let slots = tire_slots(self.likelihood.worn);
        let rib = |place: usize| {
            let read = &observed.numbers[place];
            let PredictedBy::Rib { rib, tire } = read.predicted_by else { return None };
            let error = read.error / best.read.log_units[place].exp();
            let own = error.powi(2) + self.likelihood.discrepancy.rib.powi(2);
            let mut covariances = best.covariance.column(place).into_owned();
            covariances[place] -= own;
            let before = (best.mean[place], best.covariance[(place, place)] - own);
            let (log_worn, _) = joint.regressed(&values, before, &covariances);
            let (side, slot) = slots[tire];
            let ribs = self.likelihood.worn.axle().wheels.of(side).tread().ribs;
            let (new, _) = observed.new_depth;
            let predicted = new - log_worn.exp();
            Some(SeenRib { side, slot, rib: rib % ribs + 1, seen: new - read.value, predicted })
        };
        places.iter().filter_map(|place| rib(*place)).collect()
    }
}

fn sums(a: &[f64], b: &[f64]) -> Vec<f64> {
    a.iter().zip(b).map(|(a, b)| a + b).collect()
}
