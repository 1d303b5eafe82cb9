//! Designs that are no grid: a list or a sample, with their values.

use axlebow_study::{Row, Varied};

use super::thinned::{aligned, thinned};
use crate::page::{Block, Column, Table};
use crate::words::study::{StudyWords, shown, varied_words};

/// Columns of numbers, so that a line stays within a terminal.
const COLUMNS: usize = 10;
/// Variants that are shown.
const VARIANTS: usize = 12;

/// About twelve designs of each variant: the values of the varied keys, then what the study shows, then whether all limits
/// are met.
pub(super) fn samples(words: &StudyWords<'_>) -> Vec<Block> {
    let outcome = words.outcome;
    let mut blocks = Vec::new();
    for line in outcome.lines().take(VARIANTS).filter(|line| !line.is_empty()) {
        let table = sample(words, line);
        blocks.push(Block::Table(match outcome.variants.len() {
            1 => table,
            _ => table.with_caption(outcome.variants[line[0].variant].clone()),
        }));
    }
    let all = format!("{} designs in all; JSON and CSV have every one.", outcome.rows.len());
    blocks.push(Block::Paragraph(all));
    blocks
}

fn sample(words: &StudyWords<'_>, line: &[Row]) -> Table {
    let outcome = words.outcome;
    let rows: Vec<&Row> = thinned(line.len()).map(|i| &line[i]).collect();
    let keys = outcome.varied.len().min(COLUMNS - 1);
    let mut columns: Vec<(Column, Vec<String>)> = Vec::new();
    for (place, varied) in outcome.varied.iter().enumerate().take(keys) {
        let heading = Column::number(varied_words(varied), words.unit_of(varied));
        columns.push((heading, cells(words, &rows, place)));
    }
    for measure in outcome.shown.iter().take(COLUMNS - keys) {
        let cell = |row: &&Row| {
            row.value(measure).map_or("-".to_owned(), |value| words.numbers.bare(value, shown(measure)))
        };
        let heading = Column::shown(words.measure(measure), shown(measure), words.numbers);
        columns.push((heading, rows.iter().map(cell).collect()));
    }
    if !outcome.limits.is_empty() {
        let cell = |row: &&Row| if outcome.meets(row) { "yes" } else { "no" }.to_owned();
        columns.push((Column::plain("meets limits"), rows.iter().map(cell).collect()));
    }
    let mut table = Table::new(columns.iter().map(|(heading, _)| heading.clone()));
    for i in 0..rows.len() {
        table.add_row(columns.iter().map(|(_, cells)| cells[i].clone()));
    }
    table
}

/// Values of a key in some designs, without their unit.
pub(super) fn cells(words: &StudyWords<'_>, rows: &[&Row], place: usize) -> Vec<String> {
    let varied: &Varied = &words.outcome.varied[place];
    if !varied.choices.is_empty() {
        return rows.iter().map(|row| words.value_of(varied, row.values[place])).collect();
    }
    aligned(&rows.iter().map(|row| words.scaled_of(varied, row.values[place])).collect::<Vec<_>>())
}
