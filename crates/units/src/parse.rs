//! Text to SI value.

use std::ops::Range;

use crate::error::{Fault, UnitError};
use crate::expression::{Expression, Found, unit_expression};
use crate::number::Number;
use crate::{Kind, UnitSystem};

/// A quantity read from text.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Parsed {
    /// Value in SI.
    pub value: f64,
    /// System of the first unit that belongs to one; `None` for neutral units such as `deg`, `Hz`, `s`.
    pub system: Option<UnitSystem>,
}

/// Reads a quantity such as `152.4 mm`, `5-3/4 in` or `5' 3-1/2"`.
///
/// Arguments: `text`, a number and a unit expression as the [crate] describes; `kind`, what it must measure.
///
/// Returns the value in SI and the unit system.
///
/// # Errors
/// No number, no unit, an unknown unit, a unit of another kind, text that is not a unit expression, or a
/// value that is not finite; each with the bytes it covers.
///
/// ```
/// use axlebow_units::{Kind, parse};
/// assert_eq!(parse("152.4 mm", Kind::Length)?.value, 0.1524);
/// assert_eq!(parse("20 kg", Kind::Length).unwrap_err().message(), "`kg` measures mass; length is wanted");
/// # Ok::<(), axlebow_units::UnitError>(())
/// ```
pub fn parse(text: &str, kind: Kind) -> Result<Parsed, UnitError> {
    let start = text.len() - text.trim_start().len();
    let trimmed = text.trim();
    let shift = |(fault, range): (Fault, Range<usize>)| UnitError {
        fault,
        wanted: kind,
        range: range.start + start..range.end + start,
    };
    parse_trimmed(trimmed, kind).map_err(shift)
}

fn parse_trimmed(text: &str, kind: Kind) -> Found<Parsed> {
    let all = 0..text.len();
    let Some(Number { value: number, length }) = Number::at_start(text) else {
        return Err((no_number(text), all));
    };
    let (digits, rest) = text.split_at(length);
    let written = rest.trim_start();
    if written.is_empty() && kind != Kind::Ratio {
        return Err((Fault::MissingUnit { number: digits.to_owned(), wanted: kind }, all));
    }
    if kind == Kind::Length && written.starts_with(FOOT_MARKS) {
        return feet_and_inches(number, written).ok_or_else(|| wrong_mark(text, written));
    }
    let unit_start = text.len() - written.len();
    let shift =
        |(fault, range): (Fault, Range<usize>)| (fault, range.start + unit_start..range.end + unit_start);
    let unit = if kind == Kind::Length && is_one_of(written, INCH_MARKS) { "in" } else { written };
    let expression = if unit.is_empty() { Expression::ONE } else { unit_expression(unit).map_err(shift)? };
    if expression.dimension != kind.dimension() {
        return Err((wrong_kind(written, &expression, kind), unit_start..text.len()));
    }
    let value = expression.factor.apply(number);
    if !value.is_finite() {
        return Err((Fault::NotFinite { text: text.to_owned() }, all));
    }
    Ok(Parsed { value, system: expression.system })
}

/// Marks of feet and of inches, as typed and as printed.
const FOOT_MARKS: [char; 2] = ['\'', '\u{2032}'];
const INCH_MARKS: [char; 2] = ['"', '\u{2033}'];

fn is_one_of(text: &str, marks: [char; 2]) -> bool {
    text.strip_prefix(marks).is_some_and(str::is_empty)
}

/// Feet, whose mark comes next, and the inches after it, if any: `5'`, `5' 3-1/2"`.
fn feet_and_inches(feet: f64, written: &str) -> Option<Parsed> {
    let rest = written.strip_prefix(FOOT_MARKS)?.trim_start();
    let inches = match Number::at_start(rest) {
        _ if rest.is_empty() => 0.0,
        Some(inches) if is_one_of(rest[inches.length..].trim_start(), INCH_MARKS) => inches.value,
        _ => return None,
    };
    let value = (feet.abs() * 12.0 + inches).copysign(feet) * 254.0 / 1e4;
    (inches >= 0.0 && value.is_finite()).then_some(Parsed { value, system: Some(UnitSystem::Us) })
}

fn wrong_mark(text: &str, written: &str) -> (Fault, Range<usize>) {
    let at = text.len() - written.len();
    (Fault::Unexpected { found: format!("`{}`", written.escape_debug()) }, at..text.len())
}

/// The fault of a text that has no number: a spelt infinity is not finite, all else has none.
fn no_number(text: &str) -> Fault {
    let word = text.trim_start_matches(['+', '-']).split_whitespace().next().unwrap_or_default();
    let spelt = ["inf", "infinity", "nan"].iter().any(|name| word.eq_ignore_ascii_case(name));
    let text = text.to_owned();
    if spelt { Fault::NotFinite { text } } else { Fault::MissingNumber { text } }
}

fn wrong_kind(written: &str, expression: &Expression, wanted: Kind) -> Fault {
    Fault::WrongKind {
        written: written.to_owned(),
        measures: Kind::of(expression.dimension),
        wanted,
        likely: force_for_mass(written, wanted),
    }
}

/// The same unit with a mass read as the weight of that mass, or a gram as gravity, if that is what is wanted.
fn force_for_mass(written: &str, wanted: Kind) -> Option<String> {
    [("lb", "lbf"), ("kg", "kgf"), ("g", "gn")].into_iter().find_map(|(mass, weight)| {
        let swapped = replace_word(written, mass, weight);
        unit_expression(&swapped).ok().filter(|e| e.dimension == wanted.dimension()).map(|_| swapped)
    })
}

fn replace_word(text: &str, word: &str, by: &str) -> String {
    let pieces = text.split_inclusive(|c: char| !c.is_alphabetic());
    pieces
        .map(|piece| {
            let end = piece.trim_end_matches(|c: char| !c.is_alphabetic()).len();
            if &piece[..end] == word { format!("{by}{}", &piece[end..]) } else { piece.to_owned() }
        })
        .collect()
}

/// Reads a quantity as [`parse`] does, and a zero without a unit, which is the same in each of them.
///
/// For what a user types on a command line or in a study; a model file writes its units out.
///
/// # Errors
/// Those of [`parse`].
pub fn parse_or_zero(text: &str, kind: Kind) -> Result<Parsed, UnitError> {
    if is_bare_zero(text) { Ok(Parsed { value: 0.0, system: None }) } else { parse(text, kind) }
}

/// Whether a text is a zero without a unit.
pub fn is_bare_zero(text: &str) -> bool {
    let text = text.trim();
    Number::at_start(text).is_some_and(|number| number.value == 0.0 && number.length == text.len())
}
