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
    let closing = format!(
        "{passed} of {} cases met. Where a source is marked \"from memory\" its page was not at hand: the formula is from memory and the value was recomputed.",
        rows.len()
    );
    text.push_str(&paragraph(&closing, WIDTH, 0));
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
        let label = label(row, rows);
        grid.row([label.as_str(), row.case.unit, &printed, &ours, &error, &allowed, verdict]);
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

/// What is asked, and where several rows of a topic ask the same, what tells this one apart in its id.
fn label(row: &TextbookRow, rows: &[&TextbookRow]) -> String {
    let quantity = row.case.quantity;
    let alike: Vec<&'static str> =
        rows.iter().filter(|other| other.case.quantity == quantity).map(|other| other.case.id).collect();
    if alike.len() == 1 {
        return quantity.to_owned();
    }
    // An id is `<quantity>_matches_<source>_<place>_<case>`; what follows `matches` tells cases apart.
    let words = |id: &'static str| -> Vec<&str> {
        id.split('_').skip_while(|word| *word != "matches").skip(1).collect()
    };
    let own = words(row.case.id);
    let shared = |word: usize| alike.iter().all(|id| words(id).get(word) == own.get(word));
    let first = (0..own.len()).find(|word| !shared(*word)).unwrap_or(0);
    format!("{quantity}: {}", spoken(&own[first..]))
}

/// Words of an id, digits that follow one another joined by a point.
fn spoken(words: &[&str]) -> String {
    let is_number = |word: &str| word.bytes().all(|byte| byte.is_ascii_digit());
    let mut text = String::new();
    for (i, word) in words.iter().enumerate() {
        if i > 0 {
            text.push(if is_number(word) && is_number(words[i - 1]) { '.' } else { ' ' });
        }
        text.push_str(word);
    }
    text
}
