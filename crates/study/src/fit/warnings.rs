//! Doubts about a fit, each with what to do.

use axlebow_axle::outcome::Warning;
use axlebow_numerics::Precision;

use super::estimated::{Estimate, NO_ACCIDENT};
use super::unknown::Unknown;

/// Correlation above which two unknowns are hard to tell apart.
const HARD_TO_TELL: f64 = 0.95;

pub(crate) fn warnings(
    unknowns: &[Unknown],
    estimate: &Estimate,
    (precision, at_end): (&Precision, &[usize]),
) -> Vec<Warning> {
    let mut found = undetermined(unknowns, precision);
    found.extend(correlated(unknowns, estimate));
    for unknown in at_end.iter().map(|i| &unknowns[*i]) {
        found.push(warning(
            format!("{} is at the end of its range", unknown.path),
            "no interval means anything there: check signs and load cases of the readings, and what else is wrong in the model, \
             or leave it out of the unknowns",
        ));
    }
    found.extend(scatter(estimate));
    if !estimate.converged && at_end.is_empty() {
        found.push(warning(
            format!("the search did not end in {} steps", estimate.steps),
            "start from a better initial value, or fit fewer unknowns; until it does, no interval means anything",
        ));
    }
    found
}

fn warning(text: String, advice: &str) -> Warning {
    Warning { text, advice: advice.to_owned() }
}

/// Unknowns that the readings cannot tell apart, or do not feel at all.
fn undetermined<'a>(unknowns: &'a [Unknown], precision: &'a Precision) -> Vec<Warning> {
    let name = |i: &usize| unknowns[*i].path.as_str();
    let of_direction = |parts: &Vec<usize>| match &parts[..] {
        [] => None,
        [alone] => Some(warning(
            format!("the readings do not depend on {}", name(alone)),
            "leave it out of the unknowns, or take one of the further readings",
        )),
        [first, second, others @ ..] => {
            let others: Vec<&str> = others.iter().map(name).collect();
            let also =
                if others.is_empty() { String::new() } else { format!(" (nor {})", others.join(", ")) };
            Some(warning(
                format!("the readings cannot tell {} and {} apart{also}", name(first), name(second)),
                "only what they do together is fitted: fix one of them from another source, or take one of the further readings",
            ))
        }
    };
    precision.unfelt.iter().filter_map(of_direction).collect()
}

fn correlated<'a>(unknowns: &'a [Unknown], estimate: &'a Estimate) -> impl Iterator<Item = Warning> + 'a {
    let pairs = (0..unknowns.len()).flat_map(|i| (0..i).map(move |j| (j, i)));
    pairs.filter_map(|(one, other)| {
        let correlation = estimate.correlation[one][other]?;
        (correlation.abs() > HARD_TO_TELL).then(|| {
            let (one, other) = (&unknowns[one].path, &unknowns[other].path);
            warning(
                format!("the readings hardly tell {one} and {other} apart: their correlation is {correlation:.3}"),
                "an error of one is made good by the other: take one of the further readings, or fix one of them",
            )
        })
    })
}

/// Scatter that the stated errors do not explain.
fn scatter(estimate: &Estimate) -> Option<Warning> {
    let chance = estimate.chance?;
    if chance < NO_ACCIDENT {
        return Some(warning(
            "the readings differ from the fitted model by more than their standard errors let expect"
                .to_owned(),
            "look for a slip in the reading with the largest residual, for errors that are stated too small, or for what the \
             model does not have",
        ));
    }
    (chance > 1.0 - NO_ACCIDENT).then(|| {
        warning(
            "the readings agree with the fitted model better than their standard errors let expect".to_owned(),
            "errors may be stated too large; with few readings it may be luck. The intervals go by the stated errors",
        )
    })
}
