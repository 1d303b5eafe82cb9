//! The tables of a fit.

use axlebow_study::{FitOutcome, FittedUnknown, FurtherReading};

use super::notes::{JSON, SIGNS, defaults, warnings};
use crate::ModelCard;
use crate::answer::fit_answer;
use crate::number::{Numbers, Shown, fixed};
use crate::page::{Block, Column, Page, Table};
use crate::words::fit::{full, ground, shown, thing, value};

/// Unknowns with their 95 % intervals, readings beside the fitted model, correlation, further readings of largest effect,
/// what was assumed and warnings.
pub fn fit(outcome: &FitOutcome, card: &ModelCard) -> Page {
    let n = Numbers { system: card.system };
    let mut page = Page::of_model(card, fit_answer(outcome, card));
    page.add_table(unknowns(outcome, n));
    page.add(Block::Note(how(outcome)));
    page.add_table(readings(outcome, n));
    page.add(Block::note(SIGNS));
    page.extend(scatter(outcome).map(Block::Note));
    page.extend(correlation(outcome));
    page.extend(further(outcome, n));
    page.extend(defaults(card, JSON));
    page.extend(warnings(&outcome.estimate.warnings));
    page
}

fn unknowns(outcome: &FitOutcome, n: Numbers) -> Table {
    let numbers = ["fitted", "initial value", "95 % from", "to", "error as stated"].map(Column::plain);
    let mut table = Table::new([Column::words("Unknown")].into_iter().chain(numbers));
    for own in &outcome.unknowns {
        let full = |value: f64| n.full(value, Shown::Free(own.unknown.kind));
        let bare = |value: f64| full(value).split(' ').next().unwrap_or_default().to_owned();
        let maybe = |value: Option<f64>| value.map_or("not identifiable".to_owned(), bare);
        table.add_row([
            own.unknown.path.clone(),
            full(own.value),
            bare(own.unknown.start),
            maybe(own.interval.map(|[low, _]| low)),
            maybe(own.interval.map(|[_, high]| high)),
            maybe(own.stated_error),
        ]);
    }
    table
}

fn how(outcome: &FitOutcome) -> String {
    match outcome.estimate.degrees_of_freedom {
        0 => "As many readings as unknowns: nothing is left over to judge them by, and the intervals go by the stated \
              standard errors alone."
            .to_owned(),
        freedom => format!(
            "Intervals go by how the readings scatter about the fitted model (Student's t, {freedom} degree{} of freedom); \
             the last column is the standard error that the stated errors alone would make.",
            if freedom == 1 { "" } else { "s" }
        ),
    }
}

fn readings(outcome: &FitOutcome, n: Numbers) -> Table {
    let words = ["Reading", "load", "ground"].map(Column::words);
    let numbers = ["read", "at initial values", "fitted", "read less fitted", "in its errors"];
    let mut table = Table::new(words.into_iter().chain(numbers.map(Column::plain)));
    for own in &outcome.readings {
        let quantity = &own.reading.quantity;
        let bare = |value: f64| n.bare(value, shown(quantity));
        table.add_row([
            thing(quantity),
            own.reading.load.name.clone(),
            ground(own.reading.ground).to_owned(),
            value(own.reading.value, quantity, n),
            bare(own.first),
            bare(own.fitted),
            bare(own.residual()),
            fixed(own.in_standard_errors(), 2),
        ]);
    }
    table
}

fn scatter(outcome: &FitOutcome) -> Option<String> {
    let estimate = &outcome.estimate;
    let chance = estimate.chance?;
    Some(format!(
        "Chi squared for each degree of freedom: {} (about 1 where errors are stated rightly; readings with such errors \
         scatter more in {} of 100 cases).",
        fixed(estimate.chi_squared / estimate.degrees_of_freedom as f64, 2),
        fixed(100.0 * chance, 1)
    ))
}

fn correlation(outcome: &FitOutcome) -> Option<Block> {
    if outcome.unknowns.len() < 2 {
        return None;
    }
    let numbers = (1..=outcome.unknowns.len()).map(|i| Column::plain(i.to_string()));
    let mut table = Table::new([Column::words("Correlation")].into_iter().chain(numbers));
    let rows = outcome.unknowns.iter().zip(&outcome.estimate.correlation).enumerate();
    for (i, (FittedUnknown { unknown, .. }, row)) in rows {
        let cells = row.iter().map(|entry| entry.map_or("-".to_owned(), |entry| fixed(entry, 3)));
        table.add_row([format!("{} {}", i + 1, unknown.path)].into_iter().chain(cells));
    }
    Some(Block::Table(table))
}

fn further(outcome: &FitOutcome, n: Numbers) -> Vec<Block> {
    if outcome.further.is_empty() {
        return vec![Block::paragraph("No further reading of the model's load cases would tell much more.")];
    }
    let line = |own: &FurtherReading| {
        let error = value(own.reading.standard_error, &own.reading.quantity, n);
        let leaves = match own.leaves {
            0.0 => "identifies what these readings do not".to_owned(),
            leaves => format!("leaves {} % of it", fixed(100.0 * leaves, 0)),
        };
        format!("{}, to ±{error}: {leaves}.", full(&own.reading))
    };
    let title =
        "Further readings, largest effect first (they lower the worst standard error most: E-optimal)";
    vec![Block::heading(title), Block::List(outcome.further.iter().map(line).collect())]
}
