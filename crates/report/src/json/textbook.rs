//! The document of the published cases, `axlebow/textbook/1`.

use schemars::JsonSchema;
use serde::Serialize;

use super::{pretty, schema_of};
use crate::TextbookRow;

/// Name and version of the document.
const TEXTBOOK_SCHEMA: &str = "axlebow/textbook/1";

/// The published cases that axlebow is checked against.
#[derive(Serialize, JsonSchema)]
struct TextbookDocument<'a> {
    /// `axlebow/textbook/1`.
    schema: &'static str,
    /// How many cases pass.
    passed: usize,
    /// The published cases.
    cases: Vec<CaseEntry<'a>>,
}

/// A published case.
#[derive(Serialize, JsonSchema)]
struct CaseEntry<'a> {
    /// Name of the case.
    id: &'a str,
    /// What it is about.
    topic: &'a str,
    /// What is compared.
    quantity: &'a str,
    /// Unit of the source.
    unit: &'a str,
    /// Where the value is printed.
    source: &'a str,
    /// The printed value.
    printed: f64,
    /// The computed value; null where the computation fails.
    ours: Option<f64>,
    /// Why it fails; null where it does not.
    failure: Option<&'a str>,
    /// How far the computed value is off; null where there is none.
    error: Option<f64>,
    /// How far it may be off.
    allowed: f64,
    /// Why more than half of the last digit is allowed; null where it is not.
    reason: Option<&'a str>,
    /// How our theory differs from that of the source; null where it does not.
    difference: Option<&'a str>,
    /// Whether it passes.
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
    pretty(&TextbookDocument { schema: TEXTBOOK_SCHEMA, passed, cases: cases.collect() })
}

/// The JSON Schema (2020-12) of the document of the published cases.
pub fn textbook_schema() -> String {
    schema_of::<TextbookDocument>(TEXTBOOK_SCHEMA)
}
