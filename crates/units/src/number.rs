//! The number at the start of a quantity.

/// The number at the start of a text.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Number {
    pub value: f64,
    /// Bytes that it takes.
    pub length: usize,
}

impl Number {
    /// A decimal such as `-1.5e3`, a fraction such as `3/8`, or a mixed number such as `5-3/4` or `5 3/4`; the sign goes for
    /// the whole of it.
    pub fn at_start(text: &str) -> Option<Self> {
        let unsigned = text.strip_prefix(['+', '-']).unwrap_or(text);
        let own = fraction(unsigned).or_else(|| mixed(unsigned))?;
        let sign = if text.starts_with('-') { -1.0 } else { 1.0 };
        Some(Number { value: sign * own.value, length: text.len() - unsigned.len() + own.length })
    }
}

/// A decimal, with the fraction that follows where it is whole.
fn mixed(text: &str) -> Option<Number> {
    let whole = decimal(text)?;
    let after = &text[whole.length..];
    let rest = after.strip_prefix('-').unwrap_or(after.trim_start());
    let apart = rest.len() < after.len() && whole.length == digits(text);
    let part = apart.then(|| fraction(rest)).flatten();
    Some(part.map_or(whole, |part| Number {
        value: whole.value + part.value,
        length: text.len() - rest.len() + part.length,
    }))
}

fn fraction(text: &str) -> Option<Number> {
    let above = digits(text);
    let under = text[above..].strip_prefix('/')?;
    let below = digits(under);
    let whole = |digits: &str| digits.parse::<f64>().ok();
    let value = whole(&text[..above])? / whole(&under[..below])?;
    Some(Number { value, length: above + 1 + below })
}

/// Digits with at most one point, and an exponent if digits follow it.
fn decimal(text: &str) -> Option<Number> {
    let digits_at = |at: usize| text.get(at..).map_or(0, digits);
    let mut length = digits(text);
    if text[length..].starts_with('.') && length + digits_at(length + 1) > 0 {
        length += 1 + digits_at(length + 1);
    }
    if length == 0 {
        return None;
    }
    if text[length..].starts_with(['e', 'E']) {
        let from = length + 1 + usize::from(text[length + 1..].starts_with(['+', '-']));
        length = if digits_at(from) > 0 { from + digits_at(from) } else { length };
    }
    Some(Number { value: text[..length].parse().unwrap_or(f64::NAN), length })
}

fn digits(text: &str) -> usize {
    text.bytes().take_while(u8::is_ascii_digit).count()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn decimals_fractions_and_mixed_numbers_end_where_they_end() {
        for (text, value, length) in [
            ("-1.5e3 mm", -1500.0, 6),
            ("3/8 in", 0.375, 3),
            ("-3/8 in", -0.375, 4),
            ("5-3/4 in", 5.75, 5),
            ("5 3/4in", 5.75, 5),
            ("-5-3/4 in", -5.75, 6),
            ("-0 1/2 in", -0.5, 6),
            ("5 mm", 5.0, 1),
            ("5 /s", 5.0, 1),
            ("5-3 in", 5.0, 1),
            ("5.5 1/2 in", 5.5, 3),
            ("12/in", 12.0, 2),
        ] {
            assert_eq!(Number::at_start(text), Some(Number { value, length }), "{text}");
        }
        assert_eq!(Number::at_start("/8 in"), None);
        assert_eq!(Number::at_start("1/0 in").map(|number| number.value), Some(f64::INFINITY));
    }
}
