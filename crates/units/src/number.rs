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
        let decimal = decimal_length(text);
        if decimal == 0 {
            return None;
        }
        let written = &text[..decimal];
        let own = Number { value: written.parse().unwrap_or(f64::NAN), length: decimal };
        if !written.trim_start_matches(['+', '-']).bytes().all(|byte| byte.is_ascii_digit()) {
            return Some(own);
        }
        let after = &text[decimal..];
        if let Some(over) = after.strip_prefix('/').filter(|over| digits(over) > 0) {
            let under = digits(over);
            let value = own.value / over[..under].parse::<f64>().unwrap_or(f64::NAN);
            return Some(Number { value, length: decimal + 1 + under });
        }
        let rest = after.strip_prefix('-').unwrap_or(after.trim_start());
        let part = (rest.len() < after.len()).then(|| fraction(rest)).flatten();
        Some(part.map_or(own, |part| Number {
            value: (own.value.abs() + part.value).copysign(if written.starts_with('-') { -1.0 } else { 1.0 }),
            length: text.len() - rest.len() + part.length,
        }))
    }
}

/// A fraction without a sign.
fn fraction(text: &str) -> Option<Number> {
    let above = digits(text);
    let under = text[above..].strip_prefix('/')?;
    let below = digits(under);
    let whole = |digits: &str| digits.parse::<f64>().ok();
    let value = whole(&text[..above])? / whole(&under[..below])?;
    Some(Number { value, length: above + 1 + below })
}

fn digits(text: &str) -> usize {
    text.bytes().take_while(u8::is_ascii_digit).count()
}

/// Bytes of the decimal at the start: sign, digits with at most one point, and an exponent if digits follow it.
fn decimal_length(text: &str) -> usize {
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
