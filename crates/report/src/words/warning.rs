//! Warnings in words that tables, pictures and pages share.

use axlebow_axle::Warning;
use axlebow_study::DesignWarning;

/// A warning as a sentence: what is doubtful, and what to do.
pub(crate) fn sentence(warning: &Warning) -> String {
    clauses(warning) + "."
}

/// A warning of some of so many designs as a sentence; `first` is the first of them in words.
pub(crate) fn sentence_of_designs(own: &DesignWarning, of: usize, first: &str) -> String {
    format!("{} of {of} designs: {} (the first: {first}).", own.designs, clauses(&own.warning))
}

fn clauses(warning: &Warning) -> String {
    let [text, advice] = [&warning.text, &warning.advice].map(|part| part.trim_end_matches('.'));
    format!("{text}; {advice}")
}
