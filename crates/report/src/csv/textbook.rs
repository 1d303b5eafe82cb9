//! Textbook cases.

use super::{add, cell};
use crate::TextbookRow;

const HEADING: &str = "id,topic,quantity,unit,computed,reference,error,relative_error,tolerance,relative_tolerance,passed,\
                       provenance,source,formula,inputs,reason,difference,failure\r\n";

/// The textbook cases, a line each, in the units of the sources.
pub fn textbook(rows: &[TextbookRow]) -> String {
    let number = |value: Option<f64>| value.map_or(String::new(), |value| format!("{value:?}"));
    let mut text = HEADING.to_owned();
    for row in rows {
        let (case, checked) = (&row.case, row.outcome.as_ref());
        text.push_str(&cell(&case.id));
        for words in [&*case.topic, &*case.quantity, case.unit] {
            add(&mut text, &cell(words));
        }
        for value in [
            checked.ok().map(|checked| checked.computed),
            Some(case.reference),
            checked.ok().map(|checked| checked.error),
            checked.ok().and_then(|checked| checked.relative_error),
            Some(row.tolerance()),
            case.relative_tolerance(),
        ] {
            add(&mut text, &number(value));
        }
        add(&mut text, if row.passed() { "true" } else { "false" });
        let failure = checked.err().map_or("", String::as_str);
        let (reason, difference) = (case.reason.unwrap_or(""), case.difference.unwrap_or(""));
        for words in [
            case.provenance.label(),
            &*case.source,
            &*case.formula,
            &*case.inputs,
            reason,
            difference,
            failure,
        ] {
            add(&mut text, &cell(words));
        }
        text.push_str("\r\n");
    }
    text
}
