//! Paths such as `seat[0].width`.

use crate::faults::ModelError;

/// One step of a path: a key, and a place in its list if the key holds one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Step<'p> {
    pub key: &'p str,
    pub index: Option<usize>,
    /// Bytes of the path up to the end of this step.
    pub end: usize,
}

/// Splits a path into its steps, of which there is at least one.
pub(crate) fn steps(path: &str) -> Result<Vec<Step<'_>>, ModelError> {
    let mut steps = Vec::new();
    let mut start = 0;
    for part in path.split('.') {
        let end = start + part.len();
        let (key, index) =
            key_and_place(part).ok_or_else(|| ModelError::BadPath { path: path.to_owned() })?;
        steps.push(Step { key, index, end });
        start = end + 1;
    }
    Ok(steps)
}

fn key_and_place(part: &str) -> Option<(&str, Option<usize>)> {
    let (key, index) = match part.strip_suffix(']') {
        None => (part, None),
        Some(rest) => {
            let (key, digits) = rest.split_once('[')?;
            let index: usize = digits.parse().ok()?;
            (key, Some(index).filter(|index| index.to_string() == digits))
        }
    };
    let plain = |c: char| c.is_alphanumeric() || c == '_' || c == '-';
    let well_formed = !key.is_empty() && key.chars().all(plain) && part.ends_with(']') == index.is_some();
    well_formed.then_some((key, index))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn path_splits_into_keys_and_places() {
        let found = steps("seat[12].width").unwrap();
        assert_eq!(found[0], Step { key: "seat", index: Some(12), end: 8 });
        assert_eq!(found[1], Step { key: "width", index: None, end: 14 });
    }

    #[test]
    fn text_that_is_not_a_path_is_refused() {
        let wrong = [
            "",
            ".",
            "a.",
            "a..b",
            "a[",
            "a]",
            "a[]",
            "a[-1]",
            "a[00]",
            "[0]",
            "a[0]b",
            "a b",
            "a[99999999999999999999]",
        ];
        for path in wrong {
            assert!(steps(path).is_err(), "{path}");
        }
    }
}
