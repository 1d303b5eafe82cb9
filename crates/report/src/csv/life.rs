//! Years to a crack.

use axlebow_axle::LifeOutcome;
use axlebow_results::key;
use axlebow_units::Kind;

use super::{add, cell};

/// A line for each detail, then one for each bearing.
pub fn life(outcome: &LifeOutcome) -> String {
    let mut text = "name".to_owned();
    add(&mut text, &key("y", Kind::Length.si()));
    add(&mut text, "detail");
    add(&mut text, &key("category", Kind::Stress.si()));
    add(&mut text, &key("greatest-range", Kind::Stress.si()));
    add(&mut text, &key("mean-load", Kind::Force.si()));
    ["years_5_percent", "years_median", "years_95_percent", "years_bearing"]
        .iter()
        .for_each(|head| add(&mut text, head));
    text.push_str("\r\n");
    let number = |value: f64| if value.is_finite() { format!("{value:?}") } else { String::new() };
    for own in &outcome.details {
        let numbers = [own.detail.category, own.greatest_range].map(number);
        let years = own.years.map(number);
        let [category, range] = numbers;
        let [fifth, half, most] = years;
        let cells =
            [number(own.y), own.detail.name.to_owned(), category, range, String::new(), fifth, half, most];
        text.push_str(&cell(&own.name));
        cells.iter().for_each(|own| add(&mut text, own));
        text.push_str(",\r\n");
    }
    for own in &outcome.bearings {
        let none = String::new;
        let cells = [number(own.y), none(), none(), none(), number(own.mean_load), none(), none(), none()];
        text.push_str(&cell(&own.place));
        cells.iter().for_each(|own| add(&mut text, own));
        add(&mut text, &number(own.years));
        text.push_str("\r\n");
    }
    text
}
