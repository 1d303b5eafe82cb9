//! The tables of an uncertainty: where each result lies, whose fault its spread is, how many designs meet the limits.

use axlebow_study::{Estimated, Index, Uncertain, VariantUncertainty};

use crate::number::fixed;
use crate::page::{Block, Column, Table};
use crate::words::study::{StudyWords, shown, varied_words};
use crate::words::uncertainty::{drawn, half_width, limit_shares, percent};

/// Results whose indices stand beside one another.
const BESIDE: usize = 4;

/// What is varied, then for each variant its results, indices and limits.
pub(super) fn uncertainty(words: &StudyWords<'_>) -> Vec<Block> {
    let Some(told) = &words.outcome.uncertainty else { return Vec::new() };
    let mut blocks = vec![Block::Table(inputs(words))];
    for (place, variant) in told.variants.iter().enumerate() {
        if told.variants.len() > 1 {
            blocks.push(Block::heading(words.outcome.variants[place].clone()));
        }
        blocks.push(Block::Table(results(words, variant)));
        let parts = variant.results.chunks(BESIDE);
        let told = parts.filter(|part| part.iter().any(|own| !own.indices.is_empty()));
        blocks.extend(told.map(|part| Block::Table(indices(words, part))));
        blocks.extend(limits(words, place));
        blocks.extend(failed(variant));
    }
    blocks
}

fn failed(variant: &VariantUncertainty) -> Option<Block> {
    let failed = format!(
        "{} of {} designs have no result and are left out above; they count as meeting no limit.",
        variant.failed, variant.designs
    );
    (variant.failed > 0).then_some(Block::Paragraph(failed))
}

fn inputs(words: &StudyWords<'_>) -> Table {
    let mut table = Table::new(["Varied", "drawn from"].map(Column::words));
    for varied in &words.outcome.varied {
        table.add_row([varied_words(varied), drawn(varied, words.numbers)]);
    }
    table
}

fn results(words: &StudyWords<'_>, variant: &VariantUncertainty) -> Table {
    let shares = words.outcome.uncertainty.iter().flat_map(|told| &told.shares);
    let percentages = shares.map(|share| Column::plain(percent(*share)));
    let first = [Column::words("Result"), Column::plain("mean"), Column::plain("standard deviation")];
    let mut table = Table::new(first.into_iter().chain(percentages));
    for own in &variant.results {
        let bare = |value: f64| words.numbers.bare(value, shown(&own.measure));
        let name = words.numbers.heading(&words.measure(&own.measure), shown(&own.measure));
        let all = || [&own.mean, &own.deviation].into_iter().chain(&own.percentiles);
        table.add_row([name].into_iter().chain(all().map(|estimated| bare(estimated.value))));
        let half = |estimated: &Estimated| {
            half_width(estimated, |ends| words.numbers.half(ends, shown(&own.measure)))
        };
        table.add_row([String::new()].into_iter().chain(all().map(half)));
    }
    table
}

/// Variance of some results among the varied keys.
fn indices(words: &StudyWords<'_>, results: &[Uncertain]) -> Table {
    let with: Vec<&Uncertain> = results.iter().filter(|own| !own.indices.is_empty()).collect();
    let columns = with.iter().flat_map(|own| {
        let name = words.measure(&own.measure);
        [Column::plain(format!("{name} first order")), Column::plain("total effect")]
    });
    let mut table = Table::new([Column::words("Share of variance")].into_iter().chain(columns));
    for (place, varied) in words.outcome.varied.iter().enumerate() {
        let both = |index: &Index| [index.first, index.total];
        let all = || with.iter().filter_map(|own| own.indices.get(place)).flat_map(both);
        let share = |value: f64| fixed(value, 3);
        table
            .add_row([varied_words(varied)].into_iter().chain(all().map(|estimated| share(estimated.value))));
        table.add_row(
            [String::new()].into_iter().chain(
                all().map(|estimated| half_width(&estimated, |[low, high]| share(0.5 * (high - low)))),
            ),
        );
    }
    table
}

fn limits(words: &StudyWords<'_>, variant: usize) -> Option<Block> {
    let shares = limit_shares(words, variant);
    if shares.is_empty() {
        return None;
    }
    let numbers = ["met by", "from", "to"].map(Column::plain);
    let mut table = Table::new([Column::words("Limit")].into_iter().chain(numbers));
    for (limit, share) in shares {
        let [low, high] = share.interval.unwrap_or([f64::NAN; 2]);
        table.add_row([limit, fine(share.value), fine(low), fine(high)]);
    }
    Some(Block::Table(table))
}

/// A share with one decimal of its percentage.
fn fine(share: f64) -> String {
    format!("{} %", fixed(100.0 * share, 1))
}
