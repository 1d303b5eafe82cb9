//! Variants of a study side by side.

use axlebow_study::{Measure, Row};

use crate::number::fixed;
use crate::page::{Block, Column, Table};
use crate::words::study::{StudyWords, groups, share, shown};

/// Width of a result with its percentage.
const RESULT: usize = 16;
/// Letters of a variant's name in a line.
const NAME: usize = 36;
/// Width of running text.
const WIDTH: usize = 98;

/// What the study shows of each variant, a row each: a group for the static load case and one for each ride; each
/// result is followed by its percentage of the baseline's.
pub(super) fn side_by_side(words: &StudyWords<'_>, baseline: usize) -> Vec<Block> {
    let outcome = words.outcome;
    let name = &outcome.variants[baseline];
    let mut blocks = vec![Block::paragraph(format!("%: of the baseline, {name}, marked *."))];
    for (title, measures) in groups(words) {
        let parts = measures.len().div_ceil(fitting(words));
        for (i, part) in measures.chunks(measures.len().div_ceil(parts)).enumerate() {
            let table = table(words, part, &outcome.rows[baseline]);
            blocks.push(Block::Table(if i == 0 { table.with_caption(title.clone()) } else { table }));
        }
    }
    blocks.extend(outcome.rows.iter().filter_map(|row| {
        let reason = row.result.as_ref().err()?;
        Some(Block::paragraph(format!("{} has no result: {reason}.", outcome.variants[row.variant])))
    }));
    blocks
}

/// How many results fit beside the names of the variants.
fn fitting(words: &StudyWords<'_>) -> usize {
    let letters = words.outcome.variants.iter().map(|name| name.chars().count().min(NAME)).max().unwrap_or(0);
    ((WIDTH - 2 - letters) / RESULT).max(1)
}

fn table(words: &StudyWords<'_>, measures: &[&Measure], baseline: &Row) -> Table {
    let results = measures.iter().flat_map(|measure| {
        let own = Column::shown(measure.words.clone(), shown(measure), words.numbers);
        [own, Column::number("", "%")]
    });
    let mut table = Table::new([Column::words("Variant")].into_iter().chain(results));
    let dash = || "-".to_owned();
    for row in &words.outcome.rows {
        let cells = measures.iter().flat_map(|measure| {
            let own = row.value(measure);
            let percent = share(own, baseline.value(measure)).map(|share| fixed(100.0 * share, 0));
            let own = own.map(|own| words.numbers.bare(own, shown(measure)));
            [own.unwrap_or_else(dash), percent.unwrap_or_else(dash)]
        });
        table.add_row([name(words, row, baseline.variant)].into_iter().chain(cells));
    }
    table
}

fn name(words: &StudyWords<'_>, row: &Row, baseline: usize) -> String {
    let mark = if row.variant == baseline { "* " } else { "  " };
    format!("{mark}{}", crate::words::wrapped(&words.line(row), NAME, 1).concat())
}
