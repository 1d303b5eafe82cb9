//! The tables of a study of too many designs to list.

use axlebow_study::{Point, StudySummary};

use super::grid::{Grid, on_one_floor, paragraph, stacked};
use super::study_rank::{listed, place, several};
use crate::study_words::{StudyWords, shown, varied_words};

/// Width of running text.
const WIDTH: usize = 98;
/// Letters of a result's name in a line, and of a variant's.
const NAME: usize = 20;
/// Letters of a variant's name where there are many keys.
const SHORT_NAME: usize = 14;
/// Keys that leave room for longer names.
const KEYS: usize = 4;

/// How many designs there are and why some have no result, the range of each result with the designs at its ends, and the
/// best designs.
pub(super) fn summary(words: &StudyWords<'_>, summary: &StudySummary) -> String {
    let mut text = failures(words, summary);
    if !summary.limits.is_empty() {
        text.push_str(&format!("\n{}", paragraph(&words.met(summary), WIDTH, 2)));
    }
    if !summary.ranges.is_empty() {
        text.push_str(&format!("\n{}", ranges(words, summary)));
    }
    text + &best(words, summary) + &ending(words)
}

/// How many designs there are, and why some have no result.
pub(super) fn failures(words: &StudyWords<'_>, summary: &StudySummary) -> String {
    let mut text = format!("\n{}", paragraph(&count(summary), WIDTH, 2));
    for failure in &summary.failures {
        let designs = if failure.designs == 1 { "design" } else { "designs" };
        let first = words.design(failure.first.variant, &failure.first.values);
        let reason = if failure.reason.is_empty() { "other reasons" } else { &failure.reason };
        let line = format!("- {} {designs}: {reason} (the first: {first})", failure.designs);
        text.push_str(&paragraph(&line, WIDTH, 2));
    }
    text
}

fn count(summary: &StudySummary) -> String {
    let failed: usize = summary.failures.iter().map(|failure| failure.designs).sum();
    match failed {
        0 => format!("{} designs.", summary.designs),
        _ => format!("{} designs; {failed} of them have no result:", summary.designs),
    }
}

/// Least, mean and most of each result, one over the other; least and most go by magnitude.
fn ranges(words: &StudyWords<'_>, summary: &StudySummary) -> String {
    let outcome = words.outcome;
    let keys = outcome.varied.iter().map(|varied| stacked(&varied_words(varied), ""));
    let heading = ["Result", "", ""].map(str::to_owned).into_iter();
    let heading: Vec<String> = heading.chain(several(words, "Variant")).chain(keys).collect();
    let mut grid = Grid::new(2, on_one_floor(&heading));
    let letters = if outcome.varied.len() > KEYS { SHORT_NAME } else { NAME };
    for range in &summary.ranges {
        let value = |value: f64| words.numbers.bare(value, shown(&range.measure));
        let at = |point: &Point| place(words, (point.variant, &point.values), letters);
        let name = match words.numbers.unit(shown(&range.measure)) {
            "" => words.measure(&range.measure),
            unit => format!("{}, {unit}", words.measure(&range.measure)),
        };
        let name = paragraph(&name, NAME, 0).trim_end().to_owned();
        let values = [value(range.least.0), value(range.mean), value(range.most.0)].join("\n");
        let places = at(&range.least.1).into_iter().zip(at(&range.most.1));
        let places = places.map(|(least, most)| format!("{least}\n\n{most}"));
        grid.row([name, "least\nmean\nmost".to_owned(), values].into_iter().chain(places));
    }
    grid.text()
}

fn best(words: &StudyWords<'_>, summary: &StudySummary) -> String {
    let Some(lead) = summary.best_by.as_ref().filter(|_| !summary.best.is_empty()) else {
        return String::new();
    };
    let which = if summary.best_is_most { "most" } else { "least" };
    let limited = if summary.limits.is_empty() { "" } else { " that meet every limit" };
    let title = format!("The {} designs of {which} {}{limited}:", summary.best.len(), words.measure(lead));
    let rows: Vec<_> = summary.best.iter().collect();
    format!("\n{}{}", paragraph(&title, WIDTH, 2), listed(words, lead, &rows))
}

fn ending(words: &StudyWords<'_>) -> String {
    let text = format!(
        "Least and most go by magnitude. --csv FILE.csv writes every design; a picture shows {} of them, evenly spaced.",
        words.outcome.rows.len()
    );
    format!("\n{}", paragraph(&text, WIDTH, 2))
}
