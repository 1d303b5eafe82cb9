//! Text to SI value.

use std::ops::Range;

use crate::error::{Fault, UnitError};
use crate::expression::{Expression, Found, unit_expression};
use crate::{Kind, UnitSystem};

/// A quantity read from text.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Parsed {
    /// Value in SI.
    pub value: f64,
    /// System of the first unit that belongs to one; `None` for neutral units such as `deg`, `Hz`, `s`.
    pub system: Option<UnitSystem>,
}

/// Reads a quantity such as `152.4 mm`.
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
    let (number, rest) = text.split_at(number_length(text));
    if number.is_empty() {
        return Err((no_number(text), all));
    }
    let written = rest.trim_start();
    if written.is_empty() && kind != Kind::Ratio {
        return Err((Fault::MissingUnit { number: number.to_owned(), wanted: kind }, all));
    }
    let unit_start = text.len() - written.len();
    let shift =
        |(fault, range): (Fault, Range<usize>)| (fault, range.start + unit_start..range.end + unit_start);
    let expression =
        if written.is_empty() { Expression::ONE } else { unit_expression(written).map_err(shift)? };
    if expression.dimension != kind.dimension() {
        return Err((wrong_kind(written, &expression, kind), unit_start..text.len()));
    }
    let value = expression.factor.apply(number.parse().unwrap_or(f64::NAN));
    if !value.is_finite() {
        return Err((Fault::NotFinite { text: text.to_owned() }, all));
    }
    Ok(Parsed { value, system: expression.system })
}

/// Bytes of the number at the start: sign, digits with at most one point, and an exponent if digits follow it.
fn number_length(text: &str) -> usize {
    let bytes = text.as_bytes();
    let digits = |at: usize| bytes.iter().skip(at).take_while(|b| b.is_ascii_digit()).count();
    let sign = |at: usize| usize::from(matches!(bytes.get(at), Some(b'+' | b'-')));
    let start = sign(0);
    let whole = digits(start);
    let mut end = start + whole;
    let mut count = whole;
    if bytes.get(end) == Some(&b'.') {
        let decimals = digits(end + 1);
        count += decimals;
        end += if count > 0 { 1 + decimals } else { 0 };
    }
    if count == 0 {
        return 0;
    }
    if matches!(bytes.get(end), Some(b'e' | b'E')) {
        let from = end + 1 + sign(end + 1);
        end = if digits(from) > 0 { from + digits(from) } else { end };
    }
    end
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
