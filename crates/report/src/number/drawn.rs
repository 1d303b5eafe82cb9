//! Numbers as pictures write them.

use super::fixed;

/// A tick of an axis: as short as its value allows.
pub(crate) fn tick(value: f64) -> String {
    if value.abs() >= 1e7 || (value != 0.0 && value.abs() < 1e-4) {
        // Steps along an axis miss round values by round-off.
        let short: f64 = format!("{value:.6e}").parse().unwrap_or(value);
        return with_power(&format!("{short:e}"));
    }
    let text = fixed(value, 6);
    typographic(text.trim_end_matches('0').trim_end_matches('.'))
}

/// Text for a picture: a true minus sign in place of the hyphen.
pub(crate) fn typographic(number: &str) -> String {
    number.replace('-', "\u{2212}")
}

/// Text for a picture: `1.073e7 mm` becomes 1.073×10⁷ mm, with a true minus sign.
pub(crate) fn with_power(number: &str) -> String {
    let Some((digits, rest)) =
        number.split_once('e').filter(|(digits, _)| digits.ends_with(char::is_numeric))
    else {
        return typographic(number);
    };
    let (power, unit) =
        rest.split_once(' ').map_or((rest, String::new()), |(p, unit)| (p, format!(" {unit}")));
    let raised = |letter: char| match letter {
        '-' => '\u{207b}',
        '1' => '\u{b9}',
        '2' => '\u{b2}',
        '3' => '\u{b3}',
        digit => digit.to_digit(10).and_then(|d| char::from_u32(0x2070 + d)).unwrap_or(digit),
    };
    let power: String = power.chars().map(raised).collect();
    format!("{}\u{d7}10{power}{unit}", typographic(digits))
}

/// Text for a picture with its sign always written.
pub(crate) fn with_sign(number: &str) -> String {
    let zero = number.bytes().take_while(|byte| *byte != b' ').all(|byte| byte == b'0' || byte == b'.');
    let plus = if zero || number.starts_with('-') { "" } else { "+" };
    typographic(&format!("{plus}{number}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn zero_is_given_no_sign() {
        assert_eq!(with_sign("0.000 deg"), "0.000 deg");
    }

    #[test]
    fn ticks_are_short_and_carry_a_true_minus() {
        assert_eq!(tick(-0.5), "\u{2212}0.5");
        assert_eq!(tick(20.0), "20");
        assert_eq!(tick(0.1 + 0.2), "0.3");
        assert_eq!(tick(-0.0), "0");
    }

    #[test]
    fn powers_are_raised_in_pictures() {
        assert_eq!(with_power("-1.073e7 mm"), "\u{2212}1.073\u{d7}10\u{2077} mm");
        assert_eq!(with_power("2.5e-12"), "2.5\u{d7}10\u{207b}\u{b9}\u{b2}");
        assert_eq!(with_power("4.2 deg"), "4.2 deg");
    }
}
