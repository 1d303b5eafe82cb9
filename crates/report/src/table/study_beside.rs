//! Variants of a study side by side.

use axlebow_study::{Measure, Row};

use super::grid::{Grid, on_one_floor, paragraph, stacked};
use crate::number::fixed;
use crate::study_words::{StudyWords, groups, share, shown};

/// Width of a result with its percentage.
const RESULT: usize = 16;
/// Letters of a variant's name.
const NAME: usize = 36;
/// Width of running text.
const WIDTH: usize = 98;

/// What the study shows of each variant, a row each: a group for the static load case and one for each ride; each
/// result is followed by its percentage of the baseline's.
pub(super) fn side_by_side(words: &StudyWords<'_>, baseline: usize) -> String {
    let outcome = words.outcome;
    let name = &outcome.variants[baseline];
    let mut text = String::from("\n");
    text.push_str(&paragraph(&format!("%: of the baseline, {name}, marked *."), WIDTH, 2));
    for (title, measures) in groups(words) {
        text.push('\n');
        text.push_str(&paragraph(&title, WIDTH, 2));
        let parts = measures.len().div_ceil(fitting(words));
        for part in measures.chunks(measures.len().div_ceil(parts)) {
            text.push_str(&table(words, part, &outcome.rows[baseline]));
        }
    }
    for row in &outcome.rows {
        if let Err(reason) = &row.result {
            let failed = format!("{} has no result: {reason}.", outcome.variants[row.variant]);
            text.push('\n');
            text.push_str(&paragraph(&failed, WIDTH, 2));
        }
    }
    text
}

/// How many results fit beside the names of the variants.
fn fitting(words: &StudyWords<'_>) -> usize {
    let letters = words.outcome.variants.iter().map(|name| name.chars().count().min(NAME)).max().unwrap_or(0);
    ((WIDTH - 2 - letters) / RESULT).max(1)
}

fn table(words: &StudyWords<'_>, measures: &[&Measure], baseline: &Row) -> String {
    let heading = measures
        .iter()
        .flat_map(|measure| [stacked(&measure.words, words.numbers.unit(shown(measure))), "%".to_owned()]);
    let heading: Vec<String> = ["Variant".to_owned()].into_iter().chain(heading).collect();
    let mut grid = Grid::new(1, on_one_floor(&heading));
    let dash = || "-".to_owned();
    for row in &words.outcome.rows {
        let cells = measures.iter().flat_map(|measure| {
            let own = row.value(measure);
            let percent = share(own, baseline.value(measure)).map(|share| fixed(100.0 * share, 0));
            let own = own.map(|own| words.numbers.bare(own, shown(measure)));
            [own.unwrap_or_else(dash), percent.unwrap_or_else(dash)]
        });
        grid.row([name(words, row, baseline.variant)].into_iter().chain(cells));
    }
    grid.text()
}

fn name(words: &StudyWords<'_>, row: &Row, baseline: usize) -> String {
    let mark = if row.variant == baseline { "* " } else { "  " };
    format!("{mark}{}", crate::plot::wrapped(&words.line(row), NAME, 1).concat())
}
