//! What the textbook cases answer.

use crate::TextbookRow;
use crate::number::fixed;

/// How many cases are met, and which is nearest to or farthest past its tolerance.
pub fn textbook_answer(rows: &[TextbookRow]) -> Vec<String> {
    if rows.is_empty() {
        return vec!["No case was run.".to_owned()];
    }
    let passed = rows.iter().filter(|row| row.passed()).count();
    let counted = format!("{passed} of {} cases met.", rows.len());
    [Some(counted), unsolved(rows), worst(rows)].into_iter().flatten().collect()
}

/// The error over the tolerance; none where nothing came out or no error is allowed.
fn used(row: &TextbookRow) -> Option<f64> {
    let checked = row.outcome.as_ref().ok()?;
    (row.tolerance() > 0.0).then(|| checked.error.abs() / row.tolerance())
}

fn unsolved(rows: &[TextbookRow]) -> Option<String> {
    let none = rows.iter().filter(|row| row.outcome.is_err());
    let names: Vec<&str> = none.map(|row| &*row.case.quantity).collect();
    (!names.is_empty()).then(|| format!("Without a result: {}.", names.join(", ")))
}

fn worst(rows: &[TextbookRow]) -> Option<String> {
    let all = rows.iter().filter_map(|row| Some((row, used(row)?)));
    let (row, used) = all.max_by(|a, b| a.1.total_cmp(&b.1))?;
    let percent = fixed(100.0 * used, 0);
    Some(format!(
        "The largest error for its tolerance is that of {} ({}), {percent} % of it.",
        row.case.quantity, row.case.topic
    ))
}
