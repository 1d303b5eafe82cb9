//! What strength checks answer.

use axlebow_axle::{Governing, PlacedCheck, StrengthOutcome};
use axlebow_strength::Verdict;

use super::first;
use super::phrases::{percent, plain, several};
use crate::ModelCard;

/// Whether all checks hold, which one is the worst, what to do where one fails, and what to watch.
pub fn strength_answer(outcome: &StrengthOutcome, _card: &ModelCard) -> Vec<String> {
    let all = outcome.checks().count();
    if all == 0 {
        return vec!["Nothing could be checked, so that nothing is said about strength.".to_owned()];
    }
    first([Some(verdict(outcome, all)), advice(outcome), watched(outcome), not_made(outcome)])
}

/// How many checks could not be made.
fn not_made(outcome: &StrengthOutcome) -> Option<String> {
    let count = outcome.not_made.len();
    let were = if count == 1 { "was" } else { "were" };
    (count > 0).then(|| format!("{} {were} not made, which is no pass.", several(count, "check")))
}

fn verdict(outcome: &StrengthOutcome, all: usize) -> String {
    let failing = count(outcome, Verdict::Fails);
    let worst = outcome.governing();
    let (words, place) = worst.map_or((String::new(), ""), |worst| (described(&worst), avoided(&worst)));
    match (failing, worst.is_some()) {
        (0, true) if all == 1 => format!("The one check holds: the {words}."),
        (0, true) => format!("{}; the worst is the {words}.", held(outcome, all)),
        (0, false) => format!("{}; none of them is binding.", held(outcome, all)),
        (1, _) => format!("One check of {all} fails: the {words}; {place}."),
        (failing, _) => format!("{failing} checks of {all} fail, most of all the {words}; {place}."),
    }
}

/// How many checks hold; those that only advise may be past their limits.
fn held(outcome: &StrengthOutcome, all: usize) -> String {
    match count(outcome, Verdict::Watch) {
        0 => format!("All {all} checks hold"),
        _ => format!("No check of {all} fails"),
    }
}

fn avoided(worst: &Governing<'_>) -> &'static str {
    if worst.case.is_some() { "the axle should not be loaded so" } else { "the axle should not be used so" }
}

/// A check with its place, its use and its case.
fn described(Governing { placed, case }: &Governing<'_>) -> String {
    let case = case.map_or(String::new(), |case| format!(" in case {}", case.name));
    format!("{}{case}", with_use(placed))
}

fn with_use(placed: &PlacedCheck) -> String {
    let used = percent(placed.check.utilization());
    format!("{} at {}, {used} of its limit", placed.check.what, plain(&placed.place))
}

fn count(outcome: &StrengthOutcome, verdict: Verdict) -> usize {
    outcome.checks().filter(|placed| placed.check.verdict() == verdict).count()
}

/// What to do about the worst check that fails.
fn advice(outcome: &StrengthOutcome) -> Option<String> {
    let check = &outcome.governing()?.placed.check;
    let text = check.advice.trim_end_matches('.');
    (!check.passed() && !text.is_empty()).then(|| format!("What to do: {text}."))
}

/// The checks that advise and are past their limits.
fn watched(outcome: &StrengthOutcome) -> Option<String> {
    let past = || outcome.checks().filter(|placed| placed.check.verdict() == Verdict::Watch);
    let used = |placed: &&PlacedCheck| placed.check.utilization();
    let most = past().max_by(|a, b| used(a).total_cmp(&used(b)))?;
    let count = several(past().count(), "check");
    Some(format!("To watch: {count} past a limit that only advises, most of all the {}.", with_use(most)))
}
