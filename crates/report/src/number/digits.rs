//! Numbers with so many decimals or significant digits.

/// A number with a fixed number of decimals and never a negative zero.
pub(crate) fn fixed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    match text.strip_prefix('-') {
        Some(rest) if rest.bytes().all(|byte| byte == b'0' || byte == b'.') => rest.to_owned(),
        _ => text,
    }
}

/// A number with so many significant digits, as a plain decimal from 0.0001 up to a million.
pub(crate) fn significant(value: f64, digits: usize) -> String {
    let size = value.abs();
    if value == 0.0 || !value.is_finite() {
        return fixed(value, 0);
    }
    if !(1e-4..1e6).contains(&size) {
        return format!("{value:.*e}", digits - 1);
    }
    let before = size.log10().floor() as i32 + 1;
    fixed(value, (digits as i32 - before).max(0) as usize)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn zero_has_no_sign() {
        assert_eq!(fixed(-0.0004, 3), "0.000");
        assert_eq!(fixed(-0.0006, 3), "-0.001");
    }

    #[test]
    fn significant_digits_are_kept() {
        assert_eq!(significant(4418.7, 4), "4419");
        assert_eq!(significant(0.53214, 4), "0.5321");
        assert_eq!(significant(-12.3456, 4), "-12.35");
        assert_eq!(significant(1.0726e7, 4), "1.073e7");
        assert_eq!(significant(0.0, 4), "0");
    }
}
