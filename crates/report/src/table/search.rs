//! The tables of a search.

use axlebow_study::{Row, SearchOutcome};

use super::flex::{WIDTH, warning};
use super::flex_brief::assumed;
use super::grid::{Grid, paragraph};
use crate::ModelCard;
use crate::number::{Numbers, fixed};
use crate::search_words::SearchWords;

/// Rows of a front that are shown, about.
const ROWS: usize = 14;

/// What a search found: the best design, which limits are active and what relaxing it buys, what stands behind it, and the trade-off.
pub fn search(outcome: &SearchOutcome, card: &ModelCard) -> String {
    let words = SearchWords { outcome, numbers: Numbers { system: card.system } };
    let mut text = paragraph(&format!("{}: {}, case {}", outcome.name, card.name, outcome.case), WIDTH, 2);
    text.push_str(&card.invented_line());
    let note = outcome.note.iter().map(|note| format!("Note: {note}"));
    for sentence in note.chain([words.finding()]) {
        text += &format!("\n{}", paragraph(&sentence, WIDTH, 2));
    }
    if let Some(row) = outcome.best.as_ref().or(outcome.nearest.as_ref()) {
        text += &format!("\n{}", design(&words, row));
    }
    text += &limits(&words);
    text += &format!("\n{}", paragraph(&words.proof(), WIDTH, 2));
    text += &front(&words);
    let cautions = if outcome.stiffened { super::cautions::welding() } else { String::new() };
    let warnings: String = words.warnings().iter().map(|sentence| warning(sentence)).collect();
    text + &warnings + &assumed(card) + &cautions
}

fn design(words: &SearchWords, row: &Row) -> String {
    // Words and numbers alike to the left.

    let which = if words.outcome.best.is_some() { "Best design" } else { "Nearest design" };
    let mut grid = Grid::new(2, [which, ""]);
    if words.outcome.variants.len() > 1 {
        grid.row(["variant", &words.outcome.variants[row.variant]]);
    }
    for (varied, value) in words.outcome.varied.iter().zip(&row.values) {
        grid.row([varied.path.clone(), words.found(varied, *value)]);
    }
    for measure in words.results() {
        grid.row([measure.words.clone(), words.result(row, measure)]);
    }
    grid.text()
}

fn limits(words: &SearchWords) -> String {
    if words.outcome.limits.is_empty() {
        return String::new();
    }
    let found = words.outcome.best.is_some();
    let heading = ["Limit", "value", "margin", "", "1 % more of it\nchanges the goal by", "without it\nby"];
    let mut grid = Grid::new(1, heading.into_iter().take(if found { 6 } else { 4 }));
    for limit in &words.outcome.limits {
        let margin = format!("{} %", fixed(-100.0 * limit.missed, 1));
        let own = [
            limit.limit.words(words.numbers.system),
            words.numbers.significant(limit.value, limit.limit.kind),
            margin,
            words.status(limit).to_owned(),
        ];
        let gains = [words.gain(limit.relaxed), words.gain(limit.without)];
        grid.row(own.into_iter().chain(gains.into_iter().filter(|_| found)));
    }
    format!("\n{}", grid.text())
}

fn front(words: &SearchWords) -> String {
    let outcome = words.outcome;
    if outcome.front.is_empty() {
        return String::new();
    }
    let results: Vec<_> = std::iter::once(&outcome.goal.measure).chain(&outcome.against).collect();
    let heads = results.iter().map(|own| own.words.clone());
    let keys = outcome.varied.iter().map(|varied| varied.name.clone());
    let heading: Vec<String> = heads.chain(keys).collect();
    let mut grid = Grid::new(0, heading);
    let last = outcome.front.len() - 1;
    let steps = last.clamp(1, ROWS - 1);
    for place in (0..=last.min(steps)).map(|i| (i * last + steps / 2) / steps) {
        let row = &outcome.front[place];
        let values = results.iter().map(|own| words.result(row, own));
        let keys = outcome.varied.iter().zip(&row.values).map(|(varied, value)| words.varied(varied, *value));
        grid.row(values.chain(keys));
    }
    let shown = if last + 1 > ROWS {
        format!(", {ROWS} of {} shown; --csv has all", last + 1)
    } else {
        String::new()
    };
    let title = format!("Pareto front of the designs within the limits{shown}:");
    format!("\n{}{}", paragraph(&title, WIDTH, 2), grid.text())
}
