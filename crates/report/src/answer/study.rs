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
    let told = seat_findings(&words).is_empty().then(|| lead(outcome)).flatten();
    let range = told.filter(|_| beside).and_then(|lead| words.range_of(lead));
    let summary = outcome.summary.as_ref().filter(|_| outcome.uncertainty.is_none());
    let many = summary.and_then(|summary| extremes(&words, summary));
    range.into_iter().chain(many).chain(study_findings(outcome, card)).collect()
}

/// The result by which variants side by side are told apart: camber where it is shown, else what is shown first.
fn lead(outcome: &StudyOutcome) -> Option<&Measure> {
    let camber = |measure: &&Measure| measure.ride.is_none() && measure.name.ends_with(name::CAMBER_CHANGE);
    let shown = || outcome.shown.iter();
    shown().find(camber).or_else(|| shown().next()).or_else(|| outcome.standing(name::LEFT_CAMBER_CHANGE))
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
