//! Outcomes as comma-separated values (RFC 4180): SI units named in the heading, full precision.

mod response;
mod ride;
mod search;

pub use response::response;
pub use ride::ride;
pub use search::search;

use axlebow_study::{Measure, StudyKind, StudyOutcome};

use crate::study_words::share;

/// The designs of a study, a line each; a design without a result has its reason in the last column.
///
/// Results of a ride stand under its name; side by side, each result is followed by its share of the baseline's.
pub fn study(outcome: &StudyOutcome) -> String {
    let varied = outcome.varied.iter().map(|varied| match varied.kind.si() {
        "" => cell(&varied.path),
        unit => cell(&format!("{} ({unit})", varied.path)),
    });
    let mut text = String::from("variant");
    varied.for_each(|heading| add(&mut text, &heading));
    for measure in &outcome.measures {
        add(&mut text, &cell(&heading(outcome, measure)));
        if is_beside(outcome) {
            add(&mut text, &cell(&format!("{}_of_baseline", heading(outcome, measure))));
        }
    }
    text.push_str(",reason\r\n");
    for row in &outcome.rows {
        text.push_str(&cell(&outcome.variants[row.variant]));
        row.values.iter().for_each(|value| add(&mut text, &format!("{value:?}")));
        for measure in &outcome.measures {
            let value = row.value(measure);
            let shown = |value: Option<f64>| value.map_or(String::new(), |value| format!("{value:?}"));
            add(&mut text, &shown(value));
            if is_beside(outcome) {
                add(&mut text, &shown(share(value, outcome.baseline().and_then(|own| own.value(measure)))));
            }
        }
        add(&mut text, &row.result.as_ref().err().map_or(String::new(), |reason| cell(reason)));
        text.push_str("\r\n");
    }
    text
}

fn is_beside(outcome: &StudyOutcome) -> bool {
    matches!(outcome.kind, StudyKind::SideBySide { .. })
}

fn heading(outcome: &StudyOutcome, measure: &Measure) -> String {
    let ride = measure.ride.and_then(|ride| outcome.rides.get(ride));
    ride.map_or(measure.key(), |ride| format!("{}.{}", ride.name, measure.key()))
}

fn add(text: &mut String, cell: &str) {
    text.push(',');
    text.push_str(cell);
}

/// Text between quotes if it holds what would end a cell.
fn cell(text: &str) -> String {
    if text.contains([',', '"', '\n', '\r']) {
        format!("\"{}\"", text.replace('"', "\"\""))
    } else {
        text.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cells_are_quoted_where_they_must_be() {
        assert_eq!(cell("127 mm tube"), "127 mm tube");
        assert_eq!(cell("a, \"b\"\n"), "\"a, \"\"b\"\"\n\"");
    }
}
