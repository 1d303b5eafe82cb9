//! The document of the textbook cases.

use axlebow_axle::Warning;
use axlebow_results::{Field, Own, Part, Record, Text, json, part, schema};

use super::frame::{Contents, Frame};
use crate::TextbookRow;
use crate::answer::textbook_answer;

const TEXTBOOK: Frame =
    Frame { tag: "axlebow/textbook/3", meaning: "The textbook cases that axlebow is checked against." };

/// The document of the textbook cases, in the units of the sources.
pub fn textbook_document(rows: &[TextbookRow]) -> String {
    TEXTBOOK.text::<Warning>(Contents::new(
        None,
        textbook_answer(rows),
        vec![json(&Rows(rows.to_vec()))],
        &[],
    ))
}

/// The JSON Schema of the document of the textbook cases.
pub fn textbook_schema() -> String {
    TEXTBOOK.schema::<Warning>(&[schema::<Rows>()])
}

struct Rows(Vec<TextbookRow>);

impl Record for Rows {
    const FIELDS: &'static [Field<Self>] = &[
        part(
            "passed",
            "How many cases pass.",
            &Own(|rows: &Self| rows.0.iter().filter(|row| row.passed()).count()),
        ),
        part("cases", "The textbook cases.", &Part(|rows: &Self| &rows.0)),
    ];
}

impl Record for TextbookRow {
    const FIELDS: &'static [Field<Self>] = &[
        part("id", "Name of the case.", &Text(|row: &Self| &*row.case.id)),
        part("topic", "What it is about.", &Text(|row: &Self| &*row.case.topic)),
        part("quantity", "What is compared.", &Text(|row: &Self| &*row.case.quantity)),
        part(
            "formula",
            "Formula of the reference value; \"none\" and why where it has none.",
            &Text(|row: &Self| &*row.case.formula),
        ),
        part(
            "inputs",
            "What the formula and the code under test are given.",
            &Text(|row: &Self| &*row.case.inputs),
        ),
        part("unit", "Unit of the source.", &Text(|row: &Self| row.case.unit)),
        part(
            "source",
            "The source, with \"from memory\" where its page was not at hand.",
            &Text(|row: &Self| &*row.case.source),
        ),
        part(
            "provenance",
            "Where the digits of the reference value come from: \"printed\" in the source, \"closed form recomputed\", \
             \"independent computation\" by another numerical method or program, or a \"value from memory\".",
            &Text(|row: &Self| row.case.provenance.label()),
        ),
        part(
            "computed",
            "The computed value; null where the computation fails.",
            &Own(|row: &Self| row.checked().map(|checked| checked.computed)),
        ),
        part("reference", "The reference value.", &Own(|row: &Self| row.case.reference)),
        part(
            "failure",
            "Why the computation fails; null where it does not.",
            &Own(|row: &Self| row.outcome.as_ref().err().cloned()),
        ),
        part(
            "error",
            "The computed value less the reference value; null where there is none.",
            &Own(|row: &Self| row.checked().map(|checked| checked.error)),
        ),
        part(
            "relative-error",
            "The error over the size of the reference value; null where that is zero or there is no error.",
            &Own(|row: &Self| row.checked().and_then(|checked| checked.relative_error)),
        ),
        part(
            "tolerance",
            "How far the computed value may be off, in the unit.",
            &Own(|row: &Self| row.tolerance()),
        ),
        part(
            "relative-tolerance",
            "The tolerance over the size of the reference value; null where that is zero.",
            &Own(|row: &Self| row.case.relative_tolerance()),
        ),
        part(
            "reason",
            "Why the tolerance is more than half of the last digit; null where it is not.",
            &Own(|row: &Self| row.case.reason),
        ),
        part(
            "difference",
            "How the theory under test differs from that of the source; null where it does not.",
            &Own(|row: &Self| row.case.difference),
        ),
        part("passed", "Whether it passes.", &Own(|row: &Self| row.passed())),
    ];
}
