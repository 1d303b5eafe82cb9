//! What a life answers.

use axlebow_axle::{DamageShares, DetailLife, LifeOutcome};

use super::first;
use super::phrases::{percent, plain, several};
use crate::ModelCard;
use crate::number::fixed;

/// Years beyond which a number would only pretend to know.
const LONG: f64 = 1000.0;

/// Where the first crack is to be expected and when, what does most of the damage, and which bearing wears out first.
pub fn life_answer(outcome: &LifeOutcome, _card: &ModelCard) -> Vec<String> {
    first([Some(crack(outcome)), bearing(outcome), not_made(outcome)])
}

fn crack(outcome: &LifeOutcome) -> String {
    let Some(worst) = outcome.first_to_crack() else {
        return match outcome.details.is_empty() {
            true => "No detail has a category, so that nothing is said about cracks.".to_owned(),
            false => "No detail that was checked is expected to crack under this duty.".to_owned(),
        };
    };
    let DetailLife { name, years, .. } = worst;
    format!(
        "The first crack is to be expected at the {}: half of such details have one after {}, 5 % after {}; {}.",
        plain(name),
        years_words(years[1]),
        years_words(years[0]),
        largest(&worst.shares)
    )
}

/// What does most of a damage.
fn largest(shares: &DamageShares) -> String {
    let all = [
        (shares.roads, "the roughness of the roads does"),
        (shares.bumps, "bumps and holes do"),
        (shares.events, "braking and turns do"),
        (shares.loadings, "loading and unloading does"),
    ];
    let (share, words) = all.into_iter().max_by(|a, b| a.0.total_cmp(&b.0)).unwrap_or(all[0]);
    format!("{words} {} of the damage", percent(share))
}

fn bearing(outcome: &LifeOutcome) -> Option<String> {
    let worst = outcome.bearings.first()?;
    Some(format!(
        "Of the wheel bearings the {} wears out first: {} of such bearings last {}.",
        worst.place.replace('-', " "),
        outcome.reliability.word(),
        years_words(worst.years)
    ))
}

fn not_made(outcome: &LifeOutcome) -> Option<String> {
    let count = outcome.not_made.len();
    let were = if count == 1 { "was" } else { "were" };
    (count > 0).then(|| format!("{} {were} not made, which is no pass.", several(count, "check")))
}

/// Years below which a number would only pretend to know.
const SHORT: f64 = 0.1;

/// Years to two digits and one decimal at most, such as "14 years".
pub(crate) fn years_words(years: f64) -> String {
    match years {
        years if years > LONG => format!("more than {LONG:.0} years"),
        years if years >= 100.0 => format!("{:.0} years", (years / 10.0).round() * 10.0),
        years if years >= 10.0 => format!("{} years", fixed(years, 0)),
        years if years >= SHORT => format!("{} years", fixed(years, 1)),
        _ => format!("less than {SHORT} years"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn years_have_no_more_digits_than_they_deserve() {
        assert_eq!(years_words(f64::INFINITY), "more than 1000 years");
        assert_eq!(years_words(437.0), "440 years");
        assert_eq!(years_words(14.4), "14 years");
        assert_eq!(years_words(9.96), "10.0 years");
        assert_eq!(years_words(0.62), "0.6 years");
        assert_eq!(years_words(0.04), "less than 0.1 years");
    }
}
