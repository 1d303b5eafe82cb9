//! What explaining a worn axle answers.

use axlebow_study::{EvidenceWeight, ExplainOutcome, RankedCause, RankedPair, Verdict};

use super::first;
use super::phrases::{listed, percent};
use crate::ModelCard;
use crate::number::Numbers;
use crate::words::explain::{cause, how, size};

/// Entropy below which there is no doubt to settle, nats: that of one cause at 98 %.
const DOUBT: f64 = 0.1;

/// Probability above which no more than that is said.
const SURE: f64 = 0.99;

/// The most probable cause, or that none can be told; what speaks most for it; what to check next.
pub fn explain_answer(outcome: &ExplainOutcome, card: &ModelCard) -> Vec<String> {
    let n = Numbers { system: card.system };
    match outcome.two_at_once() {
        Some(pair) => first([Some(verdict(outcome, n)), Some(together(pair)), next(outcome)]),
        None => first([Some(verdict(outcome, n)), speaks(outcome), next(outcome)]),
    }
}

fn verdict(outcome: &ExplainOutcome, n: Numbers) -> String {
    let leader = outcome.leader();
    match outcome.verdict {
        Verdict::NothingFits => {
            let check =
                if outcome.two_at_once().is_some() { "" } else { "; check the readings and the axle's file" };
            format!("The readings lie far from what every single cause predicts on this axle{check}.")
        }
        Verdict::CannotTell => {
            let leaders = outcome.leaders().iter().take(4).map(named).collect::<Vec<_>>();
            format!("Cannot tell one cause; the most probable are {}.", listed(&leaders))
        }
        Verdict::Leads => {
            let size = size(leader, n).map_or(String::new(), |size| format!(", {size}"));
            format!("Most probable: {}{size}.", named(leader))
        }
    }
}

/// What two causes at once explain that one does not.
fn together(pair: &RankedPair) -> String {
    let [first, second] = pair.causes.map(cause);
    format!(
        "Two causes at once explain it better: {first} and {second} ({}), with which the readings are {} times as probable as with the \
         better one alone.",
        percent(pair.posterior),
        rounded(pair.log_gain.exp())
    )
}

/// Times to one digit, and no more than a thousand.
fn rounded(times: f64) -> String {
    if times > 1000.0 {
        return "over 1000".to_owned();
    }
    let digit = 10f64.powf(times.log10().floor());
    format!("{:.0}", (times / digit).round() * digit)
}

/// A cause with its probability, which is never said to be certain.
fn named(own: &RankedCause) -> String {
    let share = if own.posterior > SURE { "over 99 %".to_owned() } else { percent(own.posterior) };
    format!("{} ({share})", cause(own.cause))
}

/// The kinds of readings that speak most for the leader and most against it.
fn speaks(outcome: &ExplainOutcome) -> Option<String> {
    if outcome.verdict == Verdict::NothingFits {
        return None;
    }
    let leader = outcome.leader();
    let order = |a: &&EvidenceWeight, b: &&EvidenceWeight| a.log_ratio.total_cmp(&b.log_ratio);
    let most = leader.evidence.iter().max_by(order).filter(|own| own.log_ratio > 0.0)?;
    let least = leader.evidence.iter().min_by(order).filter(|own| own.log_ratio < -0.693);
    let against = least.map_or(String::new(), |own| format!("; against it: {}", own.evidence.words()));
    Some(format!("The strongest sign for {}: {}{against}.", cause(leader.cause), most.evidence.words()))
}

fn next(outcome: &ExplainOutcome) -> Option<String> {
    let check = outcome.checks.first()?;
    let share = if outcome.entropy > DOUBT { check.information / outcome.entropy } else { 0.0 };
    (share >= 0.005).then(|| {
        format!(
            "Check next: {}, expected to settle {} of the doubt. {}",
            check.evidence.words(),
            percent(share),
            how(check.evidence)
        )
    })
}
