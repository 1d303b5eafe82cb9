//! Table of the published cases.

use super::grid::{Grid, paragraph};
use crate::TextbookRow;
use crate::number::significant;

/// Width of running text.
const WIDTH: usize = 98;

/// The published cases by topic: ours, printed, error and what is allowed, with the sources under each topic.
pub fn textbook(rows: &[TextbookRow]) -> String {
    let mut topics: Vec<&str> = rows.iter().map(|row| row.case.topic).collect();
    topics.dedup();
    let mut text = String::new();
    for topic in topics {
        let own: Vec<&TextbookRow> = rows.iter().filter(|row| row.case.topic == topic).collect();
        text.push_str(&one_topic(topic, &own));
        text.push('\n');
    }
    let passed = rows.iter().filter(|row| row.passed()).count();
    text.push_str(&format!("{passed} of {} published cases met.\n", rows.len()));
    text
}

fn one_topic(topic: &str, rows: &[&TextbookRow]) -> String {
    let heading = [topic, "unit", "printed", "ours", "error", "allowed", ""];
    let mut grid = Grid::new(2, heading);
    for row in rows {
        let (ours, error) = match &row.outcome {
            Ok(checked) => (significant(checked.ours, 9), format!("{:+.1e}", checked.error)),
            Err(_) => ("none".to_owned(), "-".to_owned()),
        };
        let printed = significant(row.case.printed, 9);
        let verdict = if row.passed() { "met" } else { "MISSED" };
        let allowed = format!("{:.1e}", row.allowed());
        grid.row([row.case.quantity, row.case.unit, &printed, &ours, &error, &allowed, verdict]);
    }
    let mut text = grid.text();
    let mut notes: Vec<String> = Vec::new();
    for row in rows {
        let case = &row.case;
        notes.push(format!("Source: {}", case.source));
        notes.extend(case.tolerance.reason().map(|reason| format!("Allowed because: {reason}")));
        notes.extend(case.difference.map(|difference| format!("Difference: {difference}")));
        notes.extend(row.outcome.as_ref().err().map(|why| format!("{}: {why}", case.quantity)));
    }
    let mut seen = std::collections::BTreeSet::new();
    for note in notes.iter().filter(|note| seen.insert(note.as_str())) {
        text.push_str("  ");
        text.push_str(&paragraph(note, WIDTH - 2, 4));
    }
    text
}
