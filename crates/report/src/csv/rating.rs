//! A rating over the wheels' offset.

use axlebow_results::key;
use axlebow_study::RatingOutcome;
use axlebow_units::Kind;

use super::{add, cell};

/// A line for each offset: the rating, its limiter, and the load of each part.
pub fn rating(outcome: &RatingOutcome) -> String {
    let parts = outcome.parts();
    let mut text = key("offset", Kind::Length.si());
    add(&mut text, &key("load", Kind::Force.si()));
    ["limiter_part", "limiter", "limiter_place", "limiter_case"].iter().for_each(|head| add(&mut text, head));
    for part in &parts {
        add(&mut text, &key(&format!("{}-load", part.word().replace(' ', "-")), Kind::Force.si()));
    }
    text.push_str("\r\n");
    let number = |value: Option<f64>| value.map_or(String::new(), |value| format!("{value:?}"));
    for point in &outcome.points {
        text.push_str(&format!("{:?}", point.offset));
        add(&mut text, &number(point.load));
        let limiter = point.limiter.as_ref();
        let words = [
            limiter.map(|own| own.part.word()),
            limiter.map(|own| own.what.as_str()),
            limiter.map(|own| own.place.as_str()),
            limiter.and_then(|own| own.case.as_deref()),
        ];
        words.into_iter().for_each(|word| add(&mut text, &cell(word.unwrap_or_default())));
        parts.iter().for_each(|part| add(&mut text, &number(point.load_of(*part))));
        text.push_str("\r\n");
    }
    text
}
