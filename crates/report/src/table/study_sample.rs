//! Designs that are no grid: a list or a sample, with their values.

use axlebow_study::{Row, Varied};

use super::grid::{Grid, on_one_floor, paragraph, stacked};
use super::study::{aligned, thinned};
use crate::study_words::{StudyWords, shown, varied_words};

/// Width of running text.
const WIDTH: usize = 98;
/// Columns of numbers, so that a line stays within a terminal.
const COLUMNS: usize = 10;
/// Variants that are shown.
const VARIANTS: usize = 12;

/// About twelve designs of each variant: the values of the varied keys, then what the study shows, then whether all limits
/// are met.
pub(super) fn samples(words: &StudyWords<'_>) -> String {
    let outcome = words.outcome;
    let mut text = String::new();
    for line in outcome.lines().take(VARIANTS).filter(|line| !line.is_empty()) {
        if outcome.variants.len() > 1 {
            text += &format!("\n{}", paragraph(&outcome.variants[line[0].variant], WIDTH, 2));
        } else {
            text.push('\n');
        }
        text += &sample(words, line);
    }
    text + &format!("\n{} designs in all; JSON and CSV have every one.\n", outcome.rows.len())
}

fn sample(words: &StudyWords<'_>, line: &[Row]) -> String {
    let outcome = words.outcome;
    let rows: Vec<&Row> = thinned(line.len()).map(|i| &line[i]).collect();
    let keys = outcome.varied.len().min(COLUMNS - 1);
    let mut columns: Vec<(String, Vec<String>)> = Vec::new();
    for (place, varied) in outcome.varied.iter().enumerate().take(keys) {
        columns.push((stacked(&varied_words(varied), words.unit_of(varied)), cells(words, &rows, place)));
    }
    for measure in outcome.shown.iter().take(COLUMNS - keys) {
        let cell = |row: &&Row| {
            row.value(measure).map_or("-".to_owned(), |value| words.numbers.bare(value, shown(measure)))
        };
        let heading = stacked(&words.measure(measure), words.numbers.unit(shown(measure)));
        columns.push((heading, rows.iter().map(cell).collect()));
    }
    if !outcome.limits.is_empty() {
        let cell = |row: &&Row| if outcome.meets(row) { "yes" } else { "no" }.to_owned();
        columns.push((stacked("meets limits", ""), rows.iter().map(cell).collect()));
    }
    let headings: Vec<String> = columns.iter().map(|(heading, _)| heading.clone()).collect();
    let mut grid = Grid::new(0, on_one_floor(&headings));
    for i in 0..rows.len() {
        grid.row(columns.iter().map(|(_, cells)| cells[i].clone()));
    }
    grid.text()
}

/// Values of a key in some designs, without their unit.
pub(super) fn cells(words: &StudyWords<'_>, rows: &[&Row], place: usize) -> Vec<String> {
    let varied: &Varied = &words.outcome.varied[place];
    if !varied.choices.is_empty() {
        return rows.iter().map(|row| words.value_of(varied, row.values[place])).collect();
    }
    aligned(&rows.iter().map(|row| words.scaled_of(varied, row.values[place])).collect::<Vec<_>>())
}
