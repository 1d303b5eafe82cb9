//! What a search answers.

use axlebow_study::{FoundLimit, Proof, Row, SearchOutcome};

use super::first;
use super::phrases::{listed, plain};
use crate::ModelCard;
use crate::number::Numbers;
use crate::words::search::SearchWords;

/// What was found and in which design, which limits are active, and what stands behind it.
pub fn search_answer(outcome: &SearchOutcome, card: &ModelCard) -> Vec<String> {
    let words = SearchWords { outcome, numbers: Numbers { system: card.system } };
    let best = outcome.best.as_ref();
    let design = best.or(outcome.nearest.as_ref()).and_then(|row| design(&words, row));
    first([Some(finding(&words, design)), best.and_then(|_| active(outcome, &words)), sure(outcome)])
}

/// What was found, and the design that has it.
fn finding(words: &SearchWords<'_>, design: Option<String>) -> String {
    let finding = words.finding();
    match design {
        Some(design) => format!("{}, with {design}.", finding.trim_end_matches('.')),
        None => finding,
    }
}

fn design(words: &SearchWords<'_>, row: &Row) -> Option<String> {
    let outcome = words.outcome;
    let variant = (outcome.variants.len() > 1).then(|| plain(&outcome.variants[row.variant]));
    let keys = outcome.varied.iter().zip(&row.values);
    let keys =
        keys.map(|(varied, value)| format!("{} {}", varied.path, plain(&words.varied(varied, *value))));
    let all: Vec<String> = variant.into_iter().chain(keys).collect();
    (!all.is_empty()).then(|| listed(&all))
}

/// The limits that stand in the way.
fn active(outcome: &SearchOutcome, words: &SearchWords<'_>) -> Option<String> {
    if outcome.limits.is_empty() {
        return None;
    }
    let name = |own: &FoundLimit| own.limit.words(words.numbers.system);
    let active: Vec<String> = outcome.limits.iter().filter(|own| own.active).map(name).collect();
    Some(match active.len() {
        0 => "No limit is active: the goal is at the end of what was searched.".to_owned(),
        1 => format!("One limit is active, {}.", active[0]),
        _ => format!("Active limits are {}.", listed(&active)),
    })
}

fn sure(outcome: &SearchOutcome) -> Option<String> {
    outcome.best.as_ref()?;
    Some(match outcome.proof {
        Proof::Every { .. } => "All combinations were solved, so that none is better.".to_owned(),
        Proof::Starts { starts, agreed, .. } => {
            format!("{agreed} of {starts} starts came to it; that is likely, not proven, to be the best.")
        }
    })
}
