//! What trying remedies answers.

use axlebow_results::within_a_sentence;
use axlebow_study::{Money, RemediesOutcome, Standing, State, Tried};
use axlebow_units::Kind;

use super::first;
use super::phrases::{percent, plain, reads_alike, times, tops};
use crate::ModelCard;
use crate::number::{Numbers, fixed};
use crate::words::payback::bare_money;
use crate::words::remedies::{added_mass, doing, shoulder, uses};
use crate::words::tire::duty_words;

/// How the tires wear today, what the best remedy takes off, and the best that adds no mass and no weld.
pub fn remedies_answer(outcome: &RemediesOutcome, card: &ModelCard) -> Vec<String> {
    let n = Numbers { system: card.system };
    let best = outcome.best();
    let kept = outcome.best_on_this_axle().filter(|kept| best.is_none_or(|best| best.remedy != kept.remedy));
    let best = best.map_or(none(outcome), |best| takes_off(outcome, best, n));
    let best = match outcome.base.failing() {
        Some(binding) => {
            format!("The axle fails as it is ({}): {}", uses(binding), within_a_sentence(&best))
        }
        None => best,
    };
    let kept = kept.map(|kept| {
        format!("With this axle kept the best is: {}", within_a_sentence(&takes_off(outcome, kept, n)))
    });
    let worth = outcome.money.as_ref().map(|money| worth(outcome, money));
    first([Some(today(outcome, n)), Some(best), worth.or(kept)])
}

/// Which allowed remedy is worth most, and how much it may cost.
fn worth(outcome: &RemediesOutcome, money: &Money) -> String {
    let allowed = outcome.helping.iter().filter(|tried| tried.standing(&outcome.base) != Standing::Refused);
    let worthiest = allowed.max_by(|a, b| a.worth.unwrap_or(0.0).total_cmp(&b.worth.unwrap_or(0.0)));
    match worthiest.and_then(|tried| Some((tried, tried.worth.filter(|worth| *worth > 0.0)?))) {
        Some((tried, worth)) => format!(
            "By the prices of {} {} is worth most: it pays while price, downtime and inspections of an axle stay below {} {} over {} years.",
            money.prices,
            within_a_sentence(&doing(&tried.remedy)),
            bare_money(worth),
            money.currency,
            fixed(money.years, 0)
        ),
        None => format!("By the prices of {} no remedy pays, even for nothing.", money.prices),
    }
}

fn today(outcome: &RemediesOutcome, n: Numbers) -> String {
    let base = &outcome.base;
    let alike = reads_alike(base.camber.left, base.camber.right, n);
    let over = match &outcome.road {
        Some(road) => format!(", and over {} ", plain(road)),
        None => ", and ".to_owned(),
    };
    let pace = if base.shoulder.wear > 1.005 {
        format!("{} as fast as upright", times(base.shoulder.wear))
    } else {
        "no faster than upright".to_owned()
    };
    let tops = tops(&base.camber, n);
    format!(
        "{tops} in case {}{over}{} wears {pace} {}.",
        outcome.case,
        shoulder(&base.shoulder, alike),
        duty_words(outcome.duty)
    )
}

fn takes_off(outcome: &RemediesOutcome, tried: &Tried, n: Numbers) -> String {
    let share = outcome.taken_off(tried).map_or(0.0, |share| share.min(1.0));
    let then = match (outcome.base.failing().is_some(), tried.standing(&outcome.base)) {
        (true, Standing::Holds) => " and makes every check hold",
        (true, _) => ", but a check still fails, which comes first",
        (false, _) => "",
    };
    format!(
        "{} takes off {} of that excess for {}{then}.",
        doing(&tried.remedy),
        percent(share),
        price(outcome, &tried.state, n)
    )
}

/// What it weighs.
fn price(outcome: &RemediesOutcome, state: &State, n: Numbers) -> String {
    added_mass(outcome, state)
        .map_or("no mass".to_owned(), |added| format!("{} more mass", n.full(added, Kind::Mass)))
}

fn none(outcome: &RemediesOutcome) -> String {
    let tried = outcome.helping.len() + outcome.idle.len();
    format!(
        "Of {tried} remedies tried none lowers that wear without failing a check; more is in what follows."
    )
}
