//! The document of the published cases, `axlebow/textbook/1`.

use serde::Serialize;

use super::pretty;
use crate::TextbookRow;

#[derive(Serialize)]
struct TextbookDocument<'a> {
    schema: &'static str,
    passed: usize,
    cases: Vec<CaseEntry<'a>>,
}

#[derive(Serialize)]
struct CaseEntry<'a> {
    id: &'a str,
    topic: &'a str,
    quantity: &'a str,
    unit: &'a str,
    source: &'a str,
    printed: f64,
    ours: Option<f64>,
    failure: Option<&'a str>,
    error: Option<f64>,
    allowed: f64,
    reason: Option<&'a str>,
    difference: Option<&'a str>,
    passed: bool,
}

/// The published cases as JSON text, in the units that the sources print.
pub fn textbook_document(rows: &[TextbookRow]) -> String {
    let cases = rows.iter().map(|row| {
        let (case, checked) = (&row.case, row.outcome.as_ref());
        CaseEntry {
            id: case.id,
            topic: case.topic,
            quantity: case.quantity,
            unit: case.unit,
            source: case.source,
            printed: case.printed,
            ours: checked.ok().map(|checked| checked.ours),
            failure: checked.err().map(String::as_str),
            error: checked.ok().map(|checked| checked.error),
            allowed: row.allowed(),
            reason: case.tolerance.reason(),
            difference: case.difference,
            passed: row.passed(),
        }
    });
    let passed = rows.iter().filter(|row| row.passed()).count();
    pretty(&TextbookDocument { schema: "axlebow/textbook/1", passed, cases: cases.collect() })
}
