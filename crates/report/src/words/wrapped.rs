//! Text broken into lines.

/// Text broken at spaces, not at those inside a number, into lines of at most `width` letters; an ellipsis ends what does not fit.
pub(crate) fn wrapped(text: &str, width: usize, lines: usize) -> Vec<String> {
    let mut result: Vec<String> = vec![String::new()];
    for word in text.split_ascii_whitespace() {
        let last = result.len() - 1;
        let line = &mut result[last];
        if line.is_empty() {
            line.push_str(word);
        } else if line.chars().count() + 1 + word.chars().count() <= width {
            line.push(' ');
            line.push_str(word);
        } else {
            result.push(word.to_owned());
        }
    }
    let cut = result.len() > lines;
    result.truncate(lines);
    let last = result.len().saturating_sub(1);
    for (i, line) in result.iter_mut().enumerate() {
        if line.chars().count() > width || (cut && i == last) {
            *line = line.chars().take(width.saturating_sub(1)).chain(['\u{2026}']).collect();
        }
    }
    result
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_text_is_wrapped_and_cut() {
        assert_eq!(wrapped("one two three four", 9, 3), ["one two", "three", "four"]);
        assert_eq!(wrapped("one two three four", 9, 2), ["one two", "three\u{2026}"]);
        assert_eq!(wrapped("abcdefghijkl", 5, 1), ["abcd\u{2026}"]);
        assert_eq!(wrapped("", 5, 1), [""]);
    }
}
