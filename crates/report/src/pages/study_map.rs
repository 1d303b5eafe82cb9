//! A result of a study over two keys, as a table of numbers.

use axlebow_study::{Measure, Row};

use super::thinned::{aligned, thinned};
use crate::page::{Block, Column, Table};
use crate::words::study::{StudyWords, shown, varied_words};

/// Width of running text.
const WIDTH: usize = 98;
/// Width of a column.
const COLUMN: usize = 8;
/// Variants that are shown.
const VARIANTS: usize = 12;

/// A table for each variant: the key that varies fastest to the right, the other one downward, about twelve values of
/// each and both ends among them.
pub(super) fn maps(words: &StudyWords<'_>, measure: &Measure) -> Vec<Block> {
    let variants = &words.outcome.variants;
    let several = variants.len() > 1;
    let mut blocks = Vec::new();
    for (variant, name) in variants.iter().enumerate().take(VARIANTS) {
        let of = if several { format!(", {name}") } else { String::new() };
        let what = words.numbers.heading(&words.measure(measure), shown(measure));
        let caption = format!("{what}{of}; {} to the right", words.axis());
        blocks.push(Block::Table(map(words, measure, variant).with_caption(caption)));
    }
    let (count, all) = (words.outcome.rows.len(), variants.len());
    let more =
        if all > VARIANTS { format!("The first {VARIANTS} of {all} variants. ") } else { String::new() };
    let all = format!("{more}{count} designs in all; JSON and CSV have every one and every result.");
    blocks.push(Block::Paragraph(all));
    blocks
}

fn map(words: &StudyWords<'_>, measure: &Measure, variant: usize) -> Table {
    let varied = &words.outcome.varied;
    let places = |key: usize| -> Vec<usize> { thinned(varied[key].values.len()).collect() };
    let names = |key: usize| {
        let factor = words.numbers.factor(varied[key].kind);
        aligned(&places(key).into_iter().map(|i| varied[key].values[i] / factor).collect::<Vec<_>>())
    };
    let fitting = (WIDTH - 16) / COLUMN;
    let step = places(1).len().div_ceil(fitting);
    let rows: Vec<&Row> = words.outcome.rows.iter().filter(|row| row.variant == variant).collect();
    let across = varied[1].values.len();
    let right: Vec<usize> = places(1).into_iter().step_by(step).collect();
    let down = Column::number(varied_words(&varied[0]), words.unit_of(&varied[0]));
    let across_names = names(1).into_iter().step_by(step).map(Column::plain);
    let mut table = Table::new([down].into_iter().chain(across_names));
    for (down, name) in places(0).into_iter().zip(names(0)) {
        let cells = right.iter().map(|j| {
            let value = rows.get(down * across + j).and_then(|row| row.value(measure));
            value.map_or("-".to_owned(), |value| words.numbers.bare(value, shown(measure)))
        });
        table.add_row([name].into_iter().chain(cells));
    }
    table
}
