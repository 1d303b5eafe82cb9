//! What a payback answers.

use axlebow_study::{PaybackInput, PaybackOutcome};

use super::first;
use super::phrases::{percent, plain, several};
use crate::ModelCard;
use crate::number::{Numbers, fixed};
use crate::words::payback::{PaybackWords, grouped, input};

/// Whether it pays and by how much, what it does to tires and mass, and how sure that is.
pub fn payback_answer(outcome: &PaybackOutcome, card: &ModelCard) -> Vec<String> {
    let words = PaybackWords { outcome, numbers: Numbers { system: card.system } };
    first([Some(verdict(&words)), Some(effect(&words)), Some(sure(&words))])
}

/// Whether it pays, in money.
pub(crate) fn verdict(words: &PaybackWords<'_>) -> String {
    let (own, fleet) = (words.outcome, &words.outcome.terms.fleet);
    let worth = own.cash_flow.net_present_value;
    let remedy = plain(&own.remedy);
    let (pays, brings) = if own.pays() { ("pays", "brings in") } else { ("does not pay", "loses") };
    let back = own.cash_flow.payback_time.filter(|_| own.pays() && own.cash_flow.outlay > 0.0);
    let back =
        back.map_or(String::new(), |years| format!(", and is paid back after {} years", fixed(years, 1)));
    format!(
        "{} {pays}: over {} years it {brings} {} on {} (net present value at {} a year){back}.",
        capital(&remedy),
        fixed(fleet.years, 1).trim_end_matches(".0"),
        words.money(worth.abs()),
        several(own.terms.all_axles() as usize, "axle"),
        percent(fleet.discount_rate)
    )
}

/// What it does to wear, tires and mass.
fn effect(words: &PaybackWords<'_>) -> String {
    let own = &words.outcome.cash_flow;
    let less = 100.0 * (1.0 - words.outcome.change.worst_ratio());
    let wear = if less < 0.0 { "adds" } else { "takes" };
    let to = if less < 0.0 { "to" } else { "off" };
    let [today, remedied] = own.tires_a_year().map(|tires| grouped(tires, 1));
    let saves = if own.tires < 0.0 { "costs" } else { "saves" };
    let mut text = format!(
        "It {wear} {} % {to} the wear of the worst rib, so that tires go from {today} to {remedied} a year, which {saves} \
         {} a year",
        fixed(less.abs(), 1),
        words.money(own.tires.abs()),
    );
    if own.mass != 0.0 {
        let saves = if own.mass < 0.0 { "saves" } else { "costs" };
        text += &format!("; its mass {saves} {} a year", words.money(own.mass.abs()));
    }
    text + "."
}

/// How sure that is: draws, break-even of the price, and what matters most.
fn sure(words: &PaybackWords<'_>) -> String {
    let own = words.outcome;
    let price = own.break_even.iter().find(|own| own.input == PaybackInput::Price);
    let price = match price.and_then(|own| own.at) {
        Some(at) => format!("a price of {} an axle breaks even", words.money(at)),
        None => "no price breaks even".to_owned(),
    };
    let most = own.swings.first().map_or(String::new(), |swing| {
        let name = input(swing.input).split(',').next().unwrap_or_default();
        format!("the {name} matters most")
    });
    match &own.draws {
        Some(draws) => {
            let count = grouped(draws.count as f64, 0);
            format!(
                "It pays in {} of {count} draws from the ranges; {price}, and {most}.",
                percent(draws.pays.value)
            )
        }
        None => format!("With all else as it is, {price}, and {most}; no input has a range to draw from."),
    }
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}
