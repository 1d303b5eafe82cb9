//! The designs of a study, best first.

use axlebow_study::{Measure, Row};

use crate::page::{Block, Column, Table};
use crate::words::study::{StudyWords, shown, varied_words};

/// Designs that are listed.
const LISTED: usize = 12;
/// Results beside that by which they are ranked.
const RESULTS: usize = 4;
/// Letters of a variant's name in a table of designs.
const NAME: usize = 30;
/// Widest table.
const WIDEST: usize = 100;

/// The designs that have most of what the study ranks by, a row each; nothing where it ranks by nothing.
pub(super) fn ranked(words: &StudyWords<'_>) -> Option<Block> {
    let outcome = words.outcome;
    let lead = outcome.ranked_by.as_ref()?;
    let ranked = outcome.ranked();
    let rows: Vec<&Row> = ranked.iter().take(LISTED).map(|(row, _)| *row).collect();
    let title = format!(
        "Ranked by {}, largest first: {} of {} designs{}.",
        words.measure(lead),
        rows.len(),
        ranked.len(),
        if outcome.limits.is_empty() { "" } else { " that meet every limit" }
    );
    Some(Block::Table(listed(words, lead, &rows).with_caption(title)))
}

/// Designs with the result by which they are chosen, and as many others as there is room for.
pub(super) fn listed(words: &StudyWords<'_>, lead: &Measure, rows: &[&Row]) -> Table {
    let others: Vec<_> =
        words.outcome.shown.iter().filter(|measure| *measure != lead).take(RESULTS).collect();
    let with = |count: usize| {
        let measures: Vec<_> = [lead].into_iter().chain(others[..count].iter().copied()).collect();
        designs(words, &measures, rows)
    };
    (1..=others.len()).rev().map(with).find(|table| table.width() <= WIDEST).unwrap_or_else(|| with(0))
}

/// Designs with some of their results.
fn designs(words: &StudyWords<'_>, measures: &[&Measure], rows: &[&Row]) -> Table {
    let outcome = words.outcome;
    let variant = several(words, "Variant").into_iter().map(Column::words);
    let keys = outcome.varied.iter().map(|varied| Column::plain(varied_words(varied)));
    let result = |measure: &&Measure| Column::shown(words.measure(measure), shown(measure), words.numbers);
    let mut table = Table::new(variant.chain(keys).chain(measures.iter().map(result)));
    for row in rows {
        let cells = measures.iter().map(|measure| {
            row.value(measure).map_or("-".to_owned(), |value| words.numbers.bare(value, shown(measure)))
        });
        table.add_row(place(words, (row.variant, &row.values), NAME).into_iter().chain(cells));
    }
    table
}

/// A text where there are several variants, or nothing but a variant, else none.
pub(super) fn several(words: &StudyWords<'_>, text: &str) -> Vec<String> {
    let needed = words.outcome.variants.len() > 1 || words.outcome.varied.is_empty();
    if needed { vec![text.to_owned()] } else { Vec::new() }
}

/// Which design it is: its variant in at most so many letters, where there are several, and what the varied keys are in it.
pub(super) fn place(
    words: &StudyWords<'_>,
    (variant, values): (usize, &[f64]),
    letters: usize,
) -> Vec<String> {
    let name = words.outcome.variants[variant].replace(char::is_control, "\u{fffd}");
    let name = match name.char_indices().nth(letters) {
        Some(_) => name.chars().take(letters - 1).chain(['…']).collect(),
        None => name,
    };
    let pairs = words.outcome.varied.iter().zip(values);
    let values = pairs.map(|(varied, value)| words.value_of(varied, *value));
    several(words, &name).into_iter().chain(values).collect()
}
