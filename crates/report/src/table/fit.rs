//! The tables of a fit.

use axlebow_study::{FitOutcome, FittedUnknown};

use super::flex::{WIDTH, warnings};
use super::flex_brief::assumed;
use super::grid::{Grid, paragraph};
use crate::ModelCard;
use crate::fit_words::{full, ground, shown, thing, value};
use crate::number::{Numbers, fixed};

/// Unknowns with their 95 % intervals, readings beside the fitted model, correlation, further readings that would tell most,
/// what was assumed and warnings.
pub fn fit(outcome: &FitOutcome, card: &ModelCard) -> String {
    let n = Numbers { system: card.system };
    let invented = &card.invented_line();
    let mut text = paragraph(&card.name, WIDTH, 0) + invented;
    text += &format!("\n{}", unknowns(outcome, n));
    text += &paragraph(&how(outcome), WIDTH, 2);
    text += &format!("\n{}", readings(outcome, n));
    text += &paragraph(&scatter(outcome), WIDTH, 2);
    text += &correlation(outcome);
    text += &further(outcome, n);
    text += &(assumed(card) + &warnings(&outcome.estimate.warnings));
    text
}

fn unknowns(outcome: &FitOutcome, n: Numbers) -> String {
    let heading = ["Unknown", "fitted", "first\nguess", "95 %\nfrom", "to", "error as\nstated"];
    let mut grid = Grid::new(1, heading);
    for own in &outcome.unknowns {
        let full = |value: f64| n.significant(value, own.unknown.kind);
        let bare = |value: f64| full(value).split(' ').next().unwrap_or_default().to_owned();
        let maybe = |value: Option<f64>| value.map_or("not identifiable".to_owned(), bare);
        grid.row([
            own.unknown.path.clone(),
            full(own.value),
            bare(own.unknown.start),
            maybe(own.interval.map(|[low, _]| low)),
            maybe(own.interval.map(|[_, high]| high)),
            maybe(own.stated_error),
        ]);
    }
    grid.text()
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

fn readings(outcome: &FitOutcome, n: Numbers) -> String {
    let heading = [
        "Reading",
        "load",
        "ground",
        "read",
        "first\nguess",
        "fitted",
        "read less\nfitted",
        "in its\nerrors",
    ];
    let mut grid = Grid::new(3, heading);
    for own in &outcome.readings {
        let quantity = &own.reading.quantity;
        let bare = |value: f64| n.bare(value, shown(quantity));
        grid.row([
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
    grid.text()
}

fn scatter(outcome: &FitOutcome) -> String {
    let estimate = &outcome.estimate;
    let Some(chance) = estimate.chance else { return String::new() };
    format!(
        "Chi squared for each degree of freedom: {} (about 1 where errors are stated rightly; readings with such errors \
         scatter more in {} of 100 cases).",
        fixed(estimate.chi_squared / estimate.degrees_of_freedom as f64, 2),
        fixed(100.0 * chance, 1)
    )
}

fn correlation(outcome: &FitOutcome) -> String {
    if outcome.unknowns.len() < 2 {
        return String::new();
    }
    let numbers: Vec<String> = (1..=outcome.unknowns.len()).map(|i| i.to_string()).collect();
    let mut grid = Grid::new(1, ["Correlation".to_owned()].into_iter().chain(numbers));
    let rows = outcome.unknowns.iter().zip(&outcome.estimate.correlation).enumerate();
    for (i, (FittedUnknown { unknown, .. }, row)) in rows {
        let cells = row.iter().map(|entry| entry.map_or("-".to_owned(), |entry| fixed(entry, 3)));
        grid.row([format!("{} {}", i + 1, unknown.path)].into_iter().chain(cells));
    }
    format!("\n{}", grid.text())
}

fn further(outcome: &FitOutcome, n: Numbers) -> String {
    if outcome.further.is_empty() {
        return "\nNo further reading of the model's load cases would tell much more.\n".to_owned();
    }
    let mut text =
        "\nFurther readings that would tell most (they lower the worst standard error most: E-optimal)\n"
            .to_owned();
    for own in &outcome.further {
        let error = value(own.reading.standard_error, &own.reading.quantity, n);
        let leaves = match own.leaves {
            0.0 => "identifies what these readings do not".to_owned(),
            leaves => format!("leaves {} % of it", fixed(100.0 * leaves, 0)),
        };
        text += &paragraph(&format!("- {}, to ±{error}: {leaves}.", full(&own.reading)), WIDTH, 2);
    }
    text
}
