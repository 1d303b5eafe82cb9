//! What a rating answers.

use axlebow_study::{Limiter, RatingOutcome, RatingPoint};
use axlebow_units::Kind;

use super::first;
use super::phrases::{percent, plain, several, value};
use crate::ModelCard;
use crate::number::{Numbers, Shown};

/// What the axle may carry as it is and what limits it, what the outermost and innermost wheels leave of that, and what was
/// not checked.
pub fn rating_answer(outcome: &RatingOutcome, card: &ModelCard) -> Vec<String> {
    let n = Numbers { system: card.system };
    first([outcome.own().map(|own| as_it_is(outcome, own, n)), ends(outcome, n), not_made(outcome)])
}

fn as_it_is(outcome: &RatingOutcome, own: &RatingPoint, n: Numbers) -> String {
    let at = offset_words(own.offset, n);
    let Some(load) = own.load else {
        let limiter =
            own.limiter.as_ref().map_or(String::new(), |limiter| format!(": the {}", check(limiter)));
        let reason = own.reason.as_deref().unwrap_or("nothing could be checked");
        return format!("The axle has no rating with its wheels {at}: {reason}{limiter}.");
    };
    let limiter =
        own.limiter.as_ref().map_or(String::new(), |limiter| format!("; the {} limits it", check(limiter)));
    let stated = value(outcome.stated_load, Kind::Force, n);
    format!(
        "With its wheels {at} the axle may carry {}, {} of the stated {stated}{limiter}.",
        value(load, Kind::Force, n),
        percent(load / outcome.stated_load)
    )
}

/// What the ends of the curve leave of the model's own rating.
fn ends(outcome: &RatingOutcome, n: Numbers) -> Option<String> {
    let own = outcome.own()?.load?;
    let other = |point: &RatingPoint| {
        let load = point.load.filter(|_| point.offset != outcome.own_offset)?;
        let limiter =
            point.limiter.as_ref().map_or(String::new(), |limiter| format!(" ({})", limiter.part.word()));
        let at = offset_words(point.offset, n);
        Some(format!("{at} {}, {} of that{limiter}", value(load, Kind::Force, n), percent(load / own)))
    };
    let points = [outcome.points.last(), outcome.points.first()];
    let words: Vec<String> = points.into_iter().flatten().filter_map(other).collect();
    (!words.is_empty()).then(|| format!("With them {}.", words.join("; ")))
}

fn not_made(outcome: &RatingOutcome) -> Option<String> {
    let count = outcome.not_made.len();
    let were = if count == 1 { "was" } else { "were" };
    (count > 0).then(|| format!("{} {were} not made and could bind sooner.", several(count, "check")))
}

/// A check with its place and case.
fn check(limiter: &Limiter) -> String {
    let case = limiter.case.as_ref().map_or(String::new(), |case| format!(" in case {}", plain(case)));
    format!("{} at {}{case}", limiter.what, plain(&limiter.place))
}

/// Where wheels sit, such as "51.0 mm outset".
pub(crate) fn offset_words(offset: f64, n: Numbers) -> String {
    let size = n.full(offset.abs(), Shown::Place);
    match offset {
        0.0 => "zeroset".to_owned(),
        offset if offset > 0.0 => format!("{size} outset"),
        _ => format!("{size} inset"),
    }
}
