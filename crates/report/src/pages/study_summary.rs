//! The tables of a study of too many designs to list.

use axlebow_study::{Failure, Point, StudySummary};

use super::study_rank::{listed, place, several};
use crate::page::{Block, Column, Table};
use crate::words::study::{StudyWords, shown, varied_words};

/// Letters of a variant's name.
const NAME: usize = 20;
/// Letters of a variant's name where there are many keys.
const SHORT_NAME: usize = 14;
/// Keys that leave room for longer names.
const KEYS: usize = 4;

/// How many designs there are and why some have no result, the range of each result with the designs at its ends, and the
/// best designs.
pub(super) fn summary(words: &StudyWords<'_>, summary: &StudySummary) -> Vec<Block> {
    let mut blocks = failures(words, summary);
    if !summary.limits.is_empty() {
        blocks.push(Block::Paragraph(words.met(summary)));
    }
    if !summary.ranges.is_empty() {
        blocks.push(Block::Table(ranges(words, summary)));
    }
    blocks.extend(best(words, summary));
    blocks.push(Block::Paragraph(ending(words)));
    blocks
}

/// How many designs there are, and why some have no result.
pub(super) fn failures(words: &StudyWords<'_>, summary: &StudySummary) -> Vec<Block> {
    let line = |failure: &Failure| {
        let designs = if failure.designs == 1 { "design" } else { "designs" };
        let first = words.design(failure.first.variant, &failure.first.values);
        let reason = if failure.reason.is_empty() { "other reasons" } else { &failure.reason };
        format!("{} {designs}: {reason} (the first: {first})", failure.designs)
    };
    let lines: Vec<String> = summary.failures.iter().map(line).collect();
    let list = (!lines.is_empty()).then_some(Block::List(lines));
    [Block::Paragraph(count(summary))].into_iter().chain(list).collect()
}

fn count(summary: &StudySummary) -> String {
    let failed: usize = summary.failures.iter().map(|failure| failure.designs).sum();
    match failed {
        0 => format!("{} designs.", summary.designs),
        _ => format!("{} designs; {failed} of them have no result:", summary.designs),
    }
}

/// Least, mean and most of each result, one over the other; least and most go by magnitude.
fn ranges(words: &StudyWords<'_>, summary: &StudySummary) -> Table {
    let outcome = words.outcome;
    let variant = several(words, "Variant").into_iter().map(Column::plain);
    let keys = outcome.varied.iter().map(|varied| Column::plain(varied_words(varied)));
    let first = [Column::words("Result"), Column::words(""), Column::plain("value")];
    let mut table = Table::new(first.into_iter().chain(variant).chain(keys));
    let letters = if outcome.varied.len() > KEYS { SHORT_NAME } else { NAME };
    let blank = vec![String::new(); table.columns.len() - 3];
    for range in &summary.ranges {
        let value = |value: f64| words.numbers.bare(value, shown(&range.measure));
        let at = |point: &Point| place(words, (point.variant, &point.values), letters);
        let name = match words.numbers.unit(shown(&range.measure)) {
            "" => words.measure(&range.measure),
            unit => format!("{}, {unit}", words.measure(&range.measure)),
        };
        let rows = [
            (name.as_str(), "least", value(range.least.0), at(&range.least.1)),
            ("", "mean", value(range.mean), blank.clone()),
            ("", "most", value(range.most.0), at(&range.most.1)),
        ];
        for (name, which, value, places) in rows {
            table.add_row([name.to_owned(), which.to_owned(), value].into_iter().chain(places));
        }
    }
    table
}

fn best(words: &StudyWords<'_>, summary: &StudySummary) -> Option<Block> {
    let lead = summary.best_by.as_ref().filter(|_| !summary.best.is_empty())?;
    let which = if summary.best_is_most { "most" } else { "least" };
    let limited = if summary.limits.is_empty() { "" } else { " that meet every limit" };
    let title = format!("The {} designs of {which} {}{limited}:", summary.best.len(), words.measure(lead));
    let rows: Vec<_> = summary.best.iter().collect();
    Some(Block::Table(listed(words, lead, &rows).with_caption(title)))
}

fn ending(words: &StudyWords<'_>) -> String {
    format!(
        "Least and most go by magnitude. --csv FILE.csv writes every design; a picture shows {} of them, evenly spaced.",
        words.outcome.rows.len()
    )
}
