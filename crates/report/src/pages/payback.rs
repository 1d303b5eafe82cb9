//! The tables of a payback.

use axlebow_study::PaybackOutcome;

use super::notes::{JSON, defaults, warnings};
use crate::ModelCard;
use crate::answer::payback_answer;
use crate::number::{Numbers, fixed};
use crate::page::{Block, Column, Page, Table};
use crate::words::payback::{PaybackWords, bare_money, grouped, input};

const WEAR: &str = "Relative numbers of the model turned into distances by the fleet's own removals; no promise of mileage. Only \
                    removals that shoulder wear decides move, and no tire gets farther than even wear of its tread would take it.";
const FLOWS: &str = "Savings come at the end of each year; taxes, and what the remedy is worth when the vehicle is sold, are left \
                     out.";

/// Whether a remedy pays: money, tires by position, the break-even and the swing of each input, draws from the ranges.
pub fn payback(outcome: &PaybackOutcome, card: &ModelCard) -> Page {
    let words = PaybackWords { outcome, numbers: Numbers { system: card.system } };
    let title = format!("{}: {}, case {}", outcome.name, card.name, outcome.case);
    let mut page = Page::titled(title, card, payback_answer(outcome, card));
    page.extend(outcome.note.iter().map(|note| Block::paragraph(format!("Note: {note}"))));
    page.add_table(money(&words));
    page.add(Block::note(FLOWS));
    page.add_table(positions(&words));
    page.add(Block::note(WEAR));
    page.add_table(break_even(&words));
    page.add_table(swings(&words));
    page.add(Block::note("Low and high: the 5 % and 95 % points of the range, or a tenth less and more."));
    page.extend(draws(&words));
    page.extend(warnings(&outcome.warnings));
    page.extend(defaults(card, JSON));
    page.extend(outcome.stiffened.then(super::cautions::welding));
    page
}

fn money(words: &PaybackWords<'_>) -> Table {
    let own = &words.outcome.cash_flow;
    let [today, remedied] = own.cost_per_1000_km;
    let mut table = Table::new([Column::words("All axles"), Column::number("", &words.outcome.currency)]);
    for (what, amount) in [
        ("spent today", own.outlay),
        ("less for tires, a year", own.tires),
        ("more for mass, a year", own.mass),
        ("more for inspections, a year", own.inspections),
        ("saved, a year", own.saving()),
        ("net present value", own.net_present_value),
        ("tires of a vehicle's axles, 1000 km today", today),
        ("the same with the remedy, all its costs in", remedied),
    ] {
        table.add_row([what.to_owned(), bare_money(amount)]);
    }
    for (what, years) in
        [("paid back after", own.payback_time), ("the same, discounted", own.discounted_payback_time)]
    {
        table.add_row([what.to_owned(), PaybackWords::years(years)]);
    }
    table
}

fn positions(words: &PaybackWords<'_>) -> Table {
    let (unit, each) = words.distance_unit();
    let distances = ["comes off after", "with the remedy"].map(|heading| Column::number(heading, unit));
    let tires = ["tires a year", "with the remedy"].map(Column::plain);
    let head = [Column::words("Tire"), Column::number("worst rib's wear", "%")];
    let mut table = Table::new(head.into_iter().chain(distances).chain(tires));
    for (own, wear) in words.outcome.cash_flow.positions.iter().zip(&words.outcome.change.wear) {
        let change = 100.0 * (wear.remedied / wear.today - 1.0);
        let distances = own.distance.map(|meters| grouped(meters / each, 0));
        let tires = own.tires_a_year.map(|tires| grouped(tires, 1));
        let cells = [PaybackWords::position(own.position), format!("{change:+.1}")];
        table.add_row(cells.into_iter().chain(distances).chain(tires));
    }
    table
}

fn break_even(words: &PaybackWords<'_>) -> Table {
    let mut table =
        Table::new([Column::words("Alone"), Column::plain("in the file"), Column::plain("breaks even at")]);
    for own in &words.outcome.break_even {
        let at = own.at.map_or("no value".to_owned(), |at| words.value(own.input, at));
        table.add_row([input(own.input).to_owned(), words.value(own.input, own.value), at]);
    }
    table
}

fn swings(words: &PaybackWords<'_>) -> Table {
    let currency = &words.outcome.currency;
    let worth = ["worth at low", "worth at high"].map(|heading| Column::number(heading, currency));
    let head = [Column::words("Alone"), Column::plain("low"), Column::plain("high")];
    let mut table = Table::new(head.into_iter().chain(worth).chain([Column::words("by")]));
    for own in &words.outcome.swings {
        let ends = own.ends.map(|end| words.value(own.input, end));
        let by = if own.has_range { "range" } else { "a tenth" };
        let worth = own.worth.map(bare_money);
        table.add_row(
            [input(own.input).to_owned()].into_iter().chain(ends).chain(worth).chain([by.to_owned()]),
        );
    }
    table
}

fn draws(words: &PaybackWords<'_>) -> Vec<Block> {
    let Some(own) = &words.outcome.draws else { return Vec::new() };
    let shares = own.percentiles.iter().map(|(share, _)| format!("{} %", fixed(100.0 * share, 0)));
    let mut table = Table::new([Column::words("Draws below")].into_iter().chain(shares.map(Column::plain)));
    let values = own.percentiles.iter().map(|(_, value)| bare_money(*value));
    let head = format!("net present value, {}", words.outcome.currency);
    table.add_row([head].into_iter().chain(values));
    let interval = |[low, high]: [f64; 2], shown: &dyn Fn(f64) -> String| {
        format!(" ({} to {})", shown(low), shown(high))
    };
    let share = |share: f64| fixed(100.0 * share, 1);
    let pays = own.pays.interval.map_or(String::new(), |ends| interval(ends, &share));
    let mean = own.mean.interval.map_or(String::new(), |ends| interval(ends, &bare_money));
    let text = format!(
        "Of {} draws {} %{pays} pay; the mean is {}{mean}. Intervals of 95 %; inputs are drawn independently of one another.",
        grouped(own.count as f64, 0),
        share(own.pays.value),
        words.money(own.mean.value),
    );
    vec![Block::Table(table), Block::Note(text)]
}
