//! The designs of a study.

use std::fmt::Write as _;

use axlebow_study::{Row, StudyOutcome};

use super::cell;
use crate::columns::study_columns;

/// The designs of a study, a line each; the last column says why a design has no result, or why one by an
/// expression has no number.
///
/// A choice stands by its name. Results of a ride stand under its name; side by side, each result is followed by its share of the baseline's.
pub fn study(outcome: &StudyOutcome) -> String {
    study_heading(outcome) + &study_rows(outcome, &outcome.rows)
}

/// The heading of [`study`].
pub fn study_heading(outcome: &StudyOutcome) -> String {
    let columns = study_columns(outcome).into_iter().map(|column| cell(&column.heading));
    let all: Vec<String> =
        ["variant".to_owned()].into_iter().chain(columns).chain(["reason".to_owned()]).collect();
    all.join(",") + "\r\n"
}

/// Lines of [`study`] for some of its designs.
pub fn study_rows(outcome: &StudyOutcome, rows: &[Row]) -> String {
    let (columns, baseline) = (study_columns(outcome), outcome.baseline());
    let variants: Vec<String> = outcome.variants.iter().map(|name| cell(name)).collect();
    let mut digits = zmij::Buffer::new();
    let mut text = String::new();
    for row in rows {
        text.push_str(&variants[row.variant]);
        for column in &columns {
            text.push(',');
            if let Some(word) = column.word(row) {
                text.push_str(&cell(word));
            } else if let Some(value) = column.value(row, baseline) {
                add_number(&mut text, value, &mut digits);
            }
        }
        text.push(',');
        if let Some(reason) = outcome.reason(row) {
            text.push_str(&cell(&reason));
        }
        text.push_str("\r\n");
    }
    text
}

/// Adds the shortest digits that give the number back: with an exponent where they would be many, as the standard library has
/// it below 1e-4 and from 1e16 on, and zmij only below 1e-5.
fn add_number(text: &mut String, value: f64, digits: &mut zmij::Buffer) {
    let size = value.abs();
    if size < 1e-5 || (1e-4..1e16).contains(&size) {
        text.push_str(digits.format_finite(value));
    } else {
        let _ = write!(text, "{value:?}"); // a String takes every write
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_written_as_the_standard_library_does() {
        let numbers = [
            0.0,
            -0.0,
            1.0,
            -1.5,
            1e-4,
            9.999e-5,
            1e-5,
            9.99e-6,
            -3e-7,
            1e15,
            1e16,
            0.1 + 0.2,
            f64::MAX,
            f64::MIN_POSITIVE,
        ];
        for number in
            numbers.into_iter().chain((0..2000).map(|i| f64::from(i).sin() * f64::from(i % 40 - 20).exp2()))
        {
            let mut text = String::new();
            add_number(&mut text, number, &mut zmij::Buffer::new());
            assert_eq!(text, format!("{number:?}"));
        }
    }
}
