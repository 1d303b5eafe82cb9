//! The designs of a study, best first.

use axlebow_study::{Measure, Row};

use super::grid::{Grid, on_one_floor, paragraph, stacked};
use crate::study_words::{StudyWords, shown, varied_words};

/// Designs that are listed.
const LISTED: usize = 12;
/// Results beside that by which they are ranked.
const RESULTS: usize = 4;
/// Width of running text.
const WIDTH: usize = 98;
/// Letters of a variant's name in a table of designs.
const NAME: usize = 30;
/// Widest table.
const WIDEST: usize = 100;

/// The designs that have most of what the study ranks by, a row each; nothing where it ranks by nothing.
pub(super) fn ranked(words: &StudyWords<'_>) -> String {
    let outcome = words.outcome;
    let Some(lead) = &outcome.ranked_by else { return String::new() };
    let ranked = outcome.ranked();
    let rows: Vec<&Row> = ranked.iter().take(LISTED).map(|(row, _)| *row).collect();
    let title = format!(
        "Ranked by {}, largest first: {} of {} designs{}.",
        words.measure(lead),
        rows.len(),
        ranked.len(),
        if outcome.limits.is_empty() { "" } else { " that meet every limit" }
    );
    format!("\n{}{}", paragraph(&title, WIDTH, 2), listed(words, lead, &rows))
}

/// Designs with the result by which they are chosen, and as many others as there is room for.
pub(super) fn listed(words: &StudyWords<'_>, lead: &Measure, rows: &[&Row]) -> String {
    let others: Vec<_> =
        words.outcome.shown.iter().filter(|measure| *measure != lead).take(RESULTS).collect();
    let with = |count: usize| {
        let measures: Vec<_> = [lead].into_iter().chain(others[..count].iter().copied()).collect();
        designs(words, &measures, rows)
    };
    let fits = |text: &String| text.lines().all(|line| line.chars().count() <= WIDEST);
    (1..=others.len()).rev().map(with).find(fits).unwrap_or_else(|| with(0))
}

/// Designs with some of their results.
fn designs(words: &StudyWords<'_>, measures: &[&Measure], rows: &[&Row]) -> String {
    let outcome = words.outcome;
    let keys = outcome.varied.iter().map(|varied| stacked(&varied_words(varied), ""));
    let results =
        measures.iter().map(|measure| stacked(&words.measure(measure), words.numbers.unit(shown(measure))));
    let variant = several(words, "Variant");
    let heading: Vec<String> = variant.iter().cloned().chain(keys).chain(results).collect();
    let mut grid = Grid::new(variant.len(), on_one_floor(&heading));
    for row in rows {
        let cells = measures.iter().map(|measure| {
            row.value(measure).map_or("-".to_owned(), |value| words.numbers.bare(value, shown(measure)))
        });
        grid.row(place(words, (row.variant, &row.values), NAME).into_iter().chain(cells));
    }
    grid.text()
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
