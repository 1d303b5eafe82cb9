//! Causes of a worn axle.

use std::fmt::Write as _;

use axlebow_study::ExplainOutcome;

use super::cell;

/// A line for each cause, the most probable first, with what each kind of reading says of it.
pub fn explain(outcome: &ExplainOutcome) -> String {
    let readings = outcome.causes.first().map_or(&[][..], |own| &own.evidence);
    let mut text = "cause,prior,posterior,log_likelihood,fit,place".to_owned();
    for own in readings {
        let _ = write!(text, ",{}", cell(&format!("log_ratio of {}", own.evidence.words())));
    }
    for own in &outcome.causes {
        // A String takes every write.
        let numbers = [own.prior, own.posterior, own.log_likelihood, own.fit];
        let [prior, posterior, log_likelihood, fit] = numbers;
        let (cause, place) = (own.cause.word(), cell(&own.place.words()));
        let _ = write!(text, "\r\n{cause},{prior:?},{posterior:?},{log_likelihood:?},{fit:?},{place}");
        for reading in &own.evidence {
            let _ = write!(text, ",{:?}", reading.log_ratio);
        }
    }
    text + "\r\n"
}
