//! Running text for a terminal.

/// Text broken into lines of at most `width` letters, not at the blanks inside a number, all but the first indented, without
/// control codes.
pub(crate) fn paragraph(text: &str, width: usize, indent: usize) -> String {
    let mut lines = String::new();
    let mut used = 0;
    for word in text.split_ascii_whitespace() {
        let word: String = word.chars().filter(|letter| !letter.is_control()).collect();
        let letters = word.chars().count();
        if used > 0 && used + 1 + letters > width {
            lines.push('\n');
            lines.push_str(&" ".repeat(indent));
            used = indent;
        } else if used > 0 {
            lines.push(' ');
            used += 1;
        }
        lines.push_str(&word);
        used += letters;
    }
    lines.push('\n');
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paragraphs_keep_their_width() {
        assert_eq!(paragraph("one two three", 8, 2), "one two\n  three\n");
        assert_eq!(paragraph("", 8, 2), "\n");
        assert_eq!(paragraph("of 12\u{a0}345 km", 6, 0), "of\n12\u{a0}345\nkm\n");
        assert_eq!(paragraph("a\u{1b}[31m\nb", 8, 2), "a[31m b\n");
    }
}
