//! What a fit answers.

use axlebow_study::{FitOutcome, FittedUnknown};

use super::first;
use super::phrases::{listed, plain};
use crate::ModelCard;
use crate::number::{Numbers, Shown, fixed};
use crate::words::fit::full;

/// Unknowns that are named with their values.
const NAMED: usize = 3;

/// The fitted values with their intervals, what is not identifiable, whether the fit is to be gone by, and the next reading.
pub fn fit_answer(outcome: &FitOutcome, card: &ModelCard) -> Vec<String> {
    let n = Numbers { system: card.system };
    let doubt = outcome.estimate.doubt().map(|why| format!("Do not go by this fit: {why}."));
    first([doubt, known(outcome, n), unknown(outcome), next(outcome)])
}

fn known(outcome: &FitOutcome, n: Numbers) -> Option<String> {
    let known = outcome.unknowns.iter().filter(|own| own.interval.is_some());
    let words: Vec<String> = known.clone().take(NAMED).map(|own| with_interval(own, n)).collect();
    let more = known.count().saturating_sub(NAMED);
    let more = if more > 0 { format!(", and {more} more") } else { String::new() };
    (!words.is_empty()).then(|| format!("The readings give {}{more}.", listed(&words)))
}

/// An unknown with its 95 % interval.
fn with_interval(own: &FittedUnknown, n: Numbers) -> String {
    let value = |value: f64| n.full(value, Shown::Free(own.unknown.kind));
    let [low, high] = own.interval.unwrap_or([f64::NAN; 2]).map(value);
    format!("{} = {} (95 %: {low} to {high})", plain(&own.unknown.path), value(own.value))
}

fn unknown(outcome: &FitOutcome) -> Option<String> {
    let none = outcome.unknowns.iter().filter(|own| own.interval.is_none());
    let names: Vec<String> = none.map(|own| plain(&own.unknown.path)).collect();
    let are = if names.len() == 1 { "is" } else { "are" };
    (!names.is_empty()).then(|| format!("{} {are} not identifiable from these readings.", listed(&names)))
}

/// The further reading of largest effect.
fn next(outcome: &FitOutcome) -> Option<String> {
    let own = outcome.further.first()?;
    let does = match own.leaves {
        0.0 => "would identify what these readings do not".to_owned(),
        leaves => format!("would leave {} % of the worst standard error", fixed(100.0 * leaves, 0)),
    };
    Some(format!("A further reading of {} {does}.", plain(&full(&own.reading))))
}
