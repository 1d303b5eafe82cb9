//! What a study answers.

use axlebow_study::{Measure, StudyKind, StudyOutcome, StudySummary, name};

use super::MOST;
use crate::ModelCard;
use crate::number::Numbers;
use crate::words::seat::seat_findings;
use crate::words::study::StudyWords;
use crate::words::study_findings;

/// The first things that a study shows.
pub fn study_answer(outcome: &StudyOutcome, card: &ModelCard) -> Vec<String> {
    sentences(outcome, card).into_iter().take(MOST).collect()
}

/// What a study shows beyond its answer.
pub fn study_details(outcome: &StudyOutcome, card: &ModelCard) -> Vec<String> {
    sentences(outcome, card).into_iter().skip(MOST).collect()
}

fn sentences(outcome: &StudyOutcome, card: &ModelCard) -> Vec<String> {
    let words = StudyWords { outcome, numbers: Numbers { system: card.system } };
    let beside = matches!(outcome.kind, StudyKind::SideBySide { .. });
    let is_told = beside && seat_findings(&words).is_empty();
    let leads = if is_told { leads_beside(&words) } else { Vec::new() };
    let ranges = leads.into_iter().filter_map(|lead| words.range_of(lead));
    let summary = outcome.summary.as_ref().filter(|_| outcome.uncertainty.is_none());
    let many = summary.and_then(|summary| extremes(&words, summary));
    ranges.chain(many).chain(study_findings(outcome, card)).collect()
}

/// The results by which variants side by side are told apart.
fn leads_beside<'a>(words: &StudyWords<'a>) -> Vec<&'a Measure> {
    let leads = words.leads();
    let usual = words.outcome.standing(name::LEFT_CAMBER_CHANGE);
    if leads.is_empty() { usual.into_iter().collect() } else { leads }
}

/// Least and most of the first result of very many designs.
fn extremes(words: &StudyWords<'_>, summary: &StudySummary) -> Option<String> {
    let range = summary.ranges.first()?;
    let value = |value: f64| words.told(&range.measure, value);
    let [least, most] = [&range.least, &range.most].map(|(own, point)| {
        format!("{}, is that of {}", value(*own), words.design(point.variant, &point.values))
    });
    let name = words.measure(&range.measure);
    Some(format!("Of {} designs the least {name}, {least}; the most, {most}.", summary.designs))
}
