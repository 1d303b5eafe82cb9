//! A straight beam, place by place.

use axlebow_beam::{BeamOutcome, Station};
use axlebow_results::Record;

use super::add;

/// A line for each place along a loaded beam; nothing but the heading for one that nothing loads.
pub fn beam(outcome: &BeamOutcome) -> String {
    let heading: Vec<String> = Station::FIELDS.iter().map(|field| field.term.key()).collect();
    let mut text = heading.join(",") + "\r\n";
    for station in outcome.bent.iter().flat_map(|bent| &bent.stations) {
        let mut line = String::new();
        for field in Station::FIELDS {
            let number = field.read.number(station).map_or(String::new(), |value| format!("{value:?}"));
            add(&mut line, &number);
        }
        text += line.strip_prefix(',').unwrap_or_default();
        text += "\r\n";
    }
    text
}
