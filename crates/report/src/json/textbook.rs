//! The document of the textbook cases, `axlebow/textbook/2`.

use schemars::JsonSchema;
use serde::Serialize;

use super::{pretty, schema_of};
use crate::TextbookRow;

/// Name and version of the document.
const TEXTBOOK_SCHEMA: &str = "axlebow/textbook/2";

/// The textbook cases that axlebow is checked against.
#[derive(Serialize, JsonSchema)]
struct TextbookDocument<'a> {
    /// `axlebow/textbook/2`.
    schema: &'static str,
    /// How many cases pass.
    passed: usize,
    /// The textbook cases.
    cases: Vec<CaseEntry<'a>>,
}

/// A textbook case.
#[derive(Serialize, JsonSchema)]
struct CaseEntry<'a> {
    /// Name of the case.
    id: &'a str,
    /// What it is about.
    topic: &'a str,
    /// What is compared.
    quantity: &'a str,
    /// Formula of the reference value; "none" and why where it has none.
    formula: &'a str,
    /// What the formula and the code under test are given.
    inputs: &'a str,
    /// Unit of the source.
    unit: &'a str,
    /// The source, with "from memory" where its page was not at hand.
    source: &'a str,
    /// Where the digits of the reference value come from: "printed" in the source, "closed form recomputed",
    /// "independent computation" by another numerical method or program, or a "value from memory".
    provenance: &'a str,
    /// The computed value; null where the computation fails.
    computed: Option<f64>,
    /// The reference value.
    reference: f64,
    /// Why the computation fails; null where it does not.
    failure: Option<&'a str>,
    /// The computed value less the reference value; null where there is none.
    error: Option<f64>,
    /// The error over the size of the reference value; null where that is zero or there is no error.
    relative_error: Option<f64>,
    /// How far the computed value may be off, in the unit.
    tolerance: f64,
    /// The tolerance over the size of the reference value; null where that is zero.
    relative_tolerance: Option<f64>,
    /// Why the tolerance is more than half of the last digit; null where it is not.
    reason: Option<&'a str>,
    /// How the theory under test differs from that of the source; null where it does not.
    difference: Option<&'a str>,
    /// Whether it passes.
    passed: bool,
}

/// The textbook cases as JSON text, in the units of the sources.
pub fn textbook_document(rows: &[TextbookRow]) -> String {
    let cases = rows.iter().map(|row| {
        let (case, checked) = (&row.case, row.outcome.as_ref());
        CaseEntry {
            id: case.id,
            topic: case.topic,
            quantity: case.quantity,
            formula: case.formula,
            inputs: case.inputs,
            unit: case.unit,
            source: case.source,
            provenance: case.provenance.label(),
            computed: checked.ok().map(|checked| checked.computed),
            reference: case.reference,
            failure: checked.err().map(String::as_str),
            error: checked.ok().map(|checked| checked.error),
            relative_error: checked.ok().and_then(|checked| checked.relative_error),
            tolerance: row.tolerance(),
            relative_tolerance: case.relative_tolerance(),
            reason: case.tolerance.reason(),
            difference: case.difference,
            passed: row.passed(),
        }
    });
    let passed = rows.iter().filter(|row| row.passed()).count();
    pretty(&TextbookDocument { schema: TEXTBOOK_SCHEMA, passed, cases: cases.collect() })
}

/// The JSON Schema (2020-12) of the document of the textbook cases.
pub fn textbook_schema() -> String {
    schema_of::<TextbookDocument>(TEXTBOOK_SCHEMA)
}
