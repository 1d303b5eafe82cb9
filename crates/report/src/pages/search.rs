//! The tables of a search.

use axlebow_study::{Row, SearchOutcome};

use super::notes::{CAMBER_SIGN, JSON, defaults};
use crate::ModelCard;
use crate::answer::search_answer;
use crate::number::{Numbers, Shown, fixed};
use crate::page::{Block, Column, Page, Table};
use crate::words::search::SearchWords;

/// Rows of a front that are shown, about.
const ROWS: usize = 14;

/// What a search found: the best design, which limits are active and what relaxing it buys, what stands behind it, and the trade-off.
pub fn search(outcome: &SearchOutcome, card: &ModelCard) -> Page {
    let words = SearchWords { outcome, numbers: Numbers { system: card.system } };
    let title = format!("{}: {}, case {}", outcome.name, card.name, outcome.case);
    let mut page = Page::titled(title, card, search_answer(outcome, card));
    page.extend(outcome.note.iter().map(|note| Block::paragraph(format!("Note: {note}"))));
    let found = outcome.best.as_ref().or(outcome.nearest.as_ref());
    page.extend(found.map(|row| Block::Table(design(&words, row))));
    page.add(Block::note(CAMBER_SIGN));
    page.extend(limits(&words));
    page.add(Block::Paragraph(words.proof()));
    page.extend(front(&words));
    page.extend(words.warnings().into_iter().map(Block::Warning));
    page.extend(defaults(card, JSON));
    page.extend(outcome.stiffened.then(super::cautions::welding));
    page
}

fn design(words: &SearchWords, row: &Row) -> Table {
    // Words and numbers alike to the left.
    let which = if words.outcome.best.is_some() { "Best design" } else { "Nearest design" };
    let mut table = Table::new([which, ""].map(Column::words));
    if words.outcome.variants.len() > 1 {
        table.add_row(["variant", &words.outcome.variants[row.variant]]);
    }
    for (varied, value) in words.outcome.varied.iter().zip(&row.values) {
        table.add_row([varied.path.clone(), words.found(varied, *value)]);
    }
    for measure in words.results() {
        table.add_row([measure.words.clone(), words.result(row, measure)]);
    }
    table
}

fn limits(words: &SearchWords) -> Option<Block> {
    if words.outcome.limits.is_empty() {
        return None;
    }
    let found = words.outcome.best.is_some();
    let numbers = ["value", "margin", "", "1 % more of it changes the goal by", "without it by"];
    let numbers = numbers.into_iter().take(if found { 5 } else { 3 }).map(Column::plain);
    let mut table = Table::new([Column::words("Limit")].into_iter().chain(numbers));
    for limit in &words.outcome.limits {
        let margin = format!("{} %", fixed(-100.0 * limit.missed, 1));
        let own = [
            limit.limit.words(words.numbers.system),
            words.numbers.full(limit.value, Shown::Free(limit.limit.kind)),
            margin,
            words.status(limit).to_owned(),
        ];
        let gains = [words.gain(limit.relaxed), words.gain(limit.without)];
        table.add_row(own.into_iter().chain(gains.into_iter().filter(|_| found)));
    }
    Some(Block::Table(table))
}

fn front(words: &SearchWords) -> Option<Block> {
    let outcome = words.outcome;
    if outcome.front.is_empty() {
        return None;
    }
    let results: Vec<_> = std::iter::once(&outcome.goal.measure).chain(&outcome.against).collect();
    let heads = results.iter().map(|own| own.words.clone());
    let keys = outcome.varied.iter().map(|varied| varied.name.clone());
    let mut table = Table::new(heads.chain(keys).map(Column::plain));
    let last = outcome.front.len() - 1;
    let steps = last.clamp(1, ROWS - 1);
    for place in (0..=last.min(steps)).map(|i| (i * last + steps / 2) / steps) {
        let row = &outcome.front[place];
        let values = results.iter().map(|own| words.result(row, own));
        let keys = outcome.varied.iter().zip(&row.values).map(|(varied, value)| words.varied(varied, *value));
        table.add_row(values.chain(keys));
    }
    let shown = if last + 1 > ROWS {
        format!(", {ROWS} of {} shown; --csv has all", last + 1)
    } else {
        String::new()
    };
    let title = format!("Pareto front of the designs within the limits{shown}:");
    Some(Block::Table(table.with_caption(title)))
}
