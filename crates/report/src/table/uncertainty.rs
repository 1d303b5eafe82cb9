//! The tables of an uncertainty: where each result lies, whose fault its spread is, how many designs meet the limits.

use axlebow_study::{Estimated, Index, Uncertain, VariantUncertainty};

use super::grid::{Grid, on_one_floor, paragraph, stacked};
use crate::number::fixed;
use crate::study_words::{StudyWords, shown, varied_words};
use crate::uncertainty_words::{drawn, half_width, limit_shares, percent};

/// Width of running text.
const WIDTH: usize = 98;
/// Results whose indices stand beside one another.
const BESIDE: usize = 4;

/// What is varied, then for each variant its results, indices and limits.
pub(super) fn uncertainty(words: &StudyWords<'_>) -> String {
    let Some(told) = &words.outcome.uncertainty else { return String::new() };
    let mut text = format!("\n{}", inputs(words));
    for (place, variant) in told.variants.iter().enumerate() {
        if told.variants.len() > 1 {
            text += &format!("\n{}", paragraph(&words.outcome.variants[place], WIDTH, 2));
        }
        text += &format!("\n{}", results(words, variant));
        for part in
            variant.results.chunks(BESIDE).filter(|part| part.iter().any(|own| !own.indices.is_empty()))
        {
            text += &format!("\n{}", indices(words, part));
        }
        text += &limits(words, place);
        if variant.failed > 0 {
            let failed = format!(
                "{} of {} designs have no result and are left out above; they count as meeting no limit.",
                variant.failed, variant.designs
            );
            text += &format!("\n{}", paragraph(&failed, WIDTH, 2));
        }
    }
    text
}

fn inputs(words: &StudyWords<'_>) -> String {
    let mut grid = Grid::new(2, ["Varied", "drawn from"]);
    for varied in &words.outcome.varied {
        grid.row([varied_words(varied), drawn(varied, words.numbers)]);
    }
    grid.text()
}

fn results(words: &StudyWords<'_>, variant: &VariantUncertainty) -> String {
    let Some(told) = &words.outcome.uncertainty else { return String::new() };
    let percentages = told.shares.iter().map(|share| percent(*share));
    let heading = ["Result", "mean", "standard\ndeviation"].map(str::to_owned).into_iter().chain(percentages);
    let mut grid = Grid::new(1, heading);
    for own in &variant.results {
        let bare = |value: f64| words.numbers.bare(value, shown(&own.measure));
        let name = words.numbers.heading(&words.measure(&own.measure), shown(&own.measure));
        let all = || [&own.mean, &own.deviation].into_iter().chain(&own.percentiles);
        grid.row([name].into_iter().chain(all().map(|estimated| bare(estimated.value))));
        let half = |estimated: &Estimated| {
            half_width(estimated, |ends| words.numbers.half(ends, shown(&own.measure)))
        };
        grid.row([String::new()].into_iter().chain(all().map(half)));
    }
    grid.text()
}

/// Variance of some results among the varied keys.
fn indices(words: &StudyWords<'_>, results: &[Uncertain]) -> String {
    let with: Vec<&Uncertain> = results.iter().filter(|own| !own.indices.is_empty()).collect();
    let columns = with.iter().flat_map(|own| {
        let name = words.measure(&own.measure);
        [stacked(&format!("{name} first order"), ""), stacked("total effect", "")]
    });
    let heading: Vec<String> = ["Share of variance".to_owned()].into_iter().chain(columns).collect();
    let mut grid = Grid::new(1, on_one_floor(&heading));
    for (place, varied) in words.outcome.varied.iter().enumerate() {
        let both = |index: &Index| [index.first, index.total];
        let all = || with.iter().filter_map(|own| own.indices.get(place)).flat_map(both);
        let share = |value: f64| fixed(value, 3);
        grid.row([varied_words(varied)].into_iter().chain(all().map(|estimated| share(estimated.value))));
        grid.row(
            [String::new()].into_iter().chain(
                all().map(|estimated| half_width(&estimated, |[low, high]| share(0.5 * (high - low)))),
            ),
        );
    }
    grid.text()
}

fn limits(words: &StudyWords<'_>, variant: usize) -> String {
    let shares = limit_shares(words, variant);
    if shares.is_empty() {
        return String::new();
    }
    let mut grid = Grid::new(1, ["Limit", "met by", "from", "to"]);
    for (limit, share) in shares {
        let [low, high] = share.interval.unwrap_or([f64::NAN; 2]);
        grid.row([limit, fine(share.value), fine(low), fine(high)]);
    }
    format!("\n{}", grid.text())
}

/// A share with one decimal of its percentage.
fn fine(share: f64) -> String {
    format!("{} %", fixed(100.0 * share, 1))
}
