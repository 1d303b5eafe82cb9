//! The designs of a study, best first.

use axlebow_study::Row;

use super::grid::{Grid, on_one_floor, paragraph, stacked};
use crate::study_words::{StudyWords, shown, varied_words};

/// Designs that are listed.
const LISTED: usize = 12;
/// Results beside that by which they are ranked.
const RESULTS: usize = 4;
/// Width of running text.
const WIDTH: usize = 98;

/// The designs that have most of what the study ranks by, a row each; nothing where it ranks by nothing.
pub(super) fn ranked(words: &StudyWords<'_>) -> String {
    let outcome = words.outcome;
    let Some(lead) = &outcome.ranked_by else { return String::new() };
    let ranked = outcome.ranked();
    let others = outcome.shown.iter().filter(|measure| *measure != lead).take(RESULTS);
    let measures: Vec<_> = [lead].into_iter().chain(others).collect();
    let keys = outcome.varied.iter().map(|varied| stacked(&varied_words(varied), ""));
    let results =
        measures.iter().map(|measure| stacked(&words.measure(measure), words.numbers.unit(shown(measure))));
    let several = outcome.variants.len() > 1 || outcome.varied.is_empty();
    let variant = several.then(|| "Variant".to_owned());
    let heading: Vec<String> = variant.into_iter().chain(keys).chain(results).collect();
    let mut grid = Grid::new(usize::from(several), on_one_floor(&heading));
    for (row, _) in ranked.iter().take(LISTED) {
        let cells = measures.iter().map(|measure| {
            row.value(measure).map_or("-".to_owned(), |value| words.numbers.bare(value, shown(measure)))
        });
        let name = outcome.variants[row.variant].replace(char::is_control, "\u{fffd}");
        grid.row(several.then_some(name).into_iter().chain(values(words, row)).chain(cells));
    }
    let title = format!(
        "Ranked by {}, largest first: {} of {} designs{}.",
        words.measure(lead),
        ranked.len().min(LISTED),
        ranked.len(),
        if outcome.limits.is_empty() { "" } else { " that meet every limit" }
    );
    format!("\n{}{}", paragraph(&title, WIDTH, 2), grid.text())
}

/// What the varied keys are in a design.
fn values(words: &StudyWords<'_>, row: &Row) -> Vec<String> {
    let pairs = words.outcome.varied.iter().zip(&row.values);
    pairs.map(|(varied, value)| words.value_of(varied, *value)).collect()
}
