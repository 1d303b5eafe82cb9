//! What explaining a worn axle answers.

use axlebow_study::{EvidenceWeight, ExplainOutcome, RankedCause, Verdict};

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
    first([Some(verdict(outcome, n)), speaks(outcome), next(outcome)])
}

fn verdict(outcome: &ExplainOutcome, n: Numbers) -> String {
    let leader = outcome.leader();
    match outcome.verdict {
        Verdict::NothingFits => {
            "Cannot tell: the readings lie far from what every cause predicts on this axle; check the readings, the axle's file and \
             whether two causes act at once."
                .to_owned()
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
