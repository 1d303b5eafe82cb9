//! What a study answers.

use axlebow_study::{StudyKind, StudyOutcome, StudySummary};

use super::MOST;
use crate::ModelCard;
use crate::number::Numbers;
use crate::study_words::{StudyWords, shown, study_findings};

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
    let lead = outcome.shown.first().or_else(|| outcome.standing("left-camber-change"));
    let range = lead.filter(|_| beside).and_then(|lead| words.range_of(lead));
    let summary = outcome.summary.as_ref().filter(|_| outcome.uncertainty.is_none());
    let many = summary.and_then(|summary| extremes(&words, summary));
    range.into_iter().chain(many).chain(study_findings(outcome, card)).collect()
}

/// Least and most of the first result of very many designs.
fn extremes(words: &StudyWords<'_>, summary: &StudySummary) -> Option<String> {
    let range = summary.ranges.first()?;
    let value = |value: f64| words.numbers.full(value, shown(&range.measure));
    let [least, most] = [&range.least, &range.most].map(|(own, point)| {
        format!("{}, is that of {}", value(*own), words.design(point.variant, &point.values))
    });
    let name = words.measure(&range.measure);
    Some(format!("Of {} designs the least {name}, {least}; the most, {most}.", summary.designs))
}
