//! Designs of a search.

use axlebow_study::{Row, SearchOutcome};

use super::{add, cell};
use crate::columns::varied_heading;

/// The designs of the trade-off, a line each, or else the best or the nearest one.
pub fn search(outcome: &SearchOutcome) -> String {
    let mut text = String::from("variant");
    outcome.varied.iter().for_each(|varied| add(&mut text, &cell(&varied_heading(varied))));
    outcome.measures.iter().for_each(|measure| add(&mut text, &cell(&measure.key())));
    text.push_str("\r\n");
    let alone = outcome.best.iter().chain(&outcome.nearest);
    let rows: Vec<&Row> =
        if outcome.front.is_empty() { alone.collect() } else { outcome.front.iter().collect() };
    for row in rows {
        text.push_str(&cell(&outcome.variants[row.variant]));
        for (varied, value) in outcome.varied.iter().zip(&row.values) {
            let choice = varied.choices.get(*value as usize);
            add(&mut text, &choice.map_or(format!("{value:?}"), |choice| cell(&choice.name)));
        }
        for measure in &outcome.measures {
            add(&mut text, &row.value(measure).map_or(String::new(), |value| format!("{value:?}")));
        }
        text.push_str("\r\n");
    }
    text
}
