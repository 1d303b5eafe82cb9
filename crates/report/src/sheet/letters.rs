//! How wide a text is, and how it is broken into lines.

/// Height of a capital over the size of the font, Helvetica (Adobe Font Metrics of the 14 core fonts, from memory).
pub(super) const CAPITAL: f64 = 0.718;

/// Widths of the letters from space to tilde in thousandths of the size, of the same source.
#[rustfmt::skip]
const WIDTHS: [u16; 95] = [
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
    556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
    1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
    667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
    333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
    556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
];

/// Width of what stands outside of that table and is not named below.
const OTHER: u16 = 800;

fn width(letter: char) -> u16 {
    match letter {
        ' '..='~' => WIDTHS[letter as usize - ' ' as usize],
        '\u{b0}' => 400,
        '\u{b1}' | '\u{d7}' => 584,
        '\u{d8}' => 778,
        _ => OTHER,
    }
}

/// Width of a text whose capitals have a height, in the unit of the height.
pub(super) fn text_width(text: &str, height: f64) -> f64 {
    let thousandths: f64 = text.chars().map(|letter| f64::from(width(letter))).sum();
    thousandths / 1000.0 * height / CAPITAL
}

/// A text broken at spaces into lines no wider than a room; a word that is wider is cut.
pub(super) fn broken(text: &str, height: f64, room: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace().flat_map(|word| pieces(word, height, room)) {
        match lines.last_mut() {
            Some(line) if text_width(&format!("{line} {word}"), height) <= room => {
                line.push(' ');
                line.push_str(&word);
            }
            _ => lines.push(word),
        }
    }
    lines
}

/// The first lines of a broken text, an ellipsis at the end of what does not fit.
pub(super) fn cut(text: &str, height: f64, (room, lines): (f64, usize)) -> Vec<String> {
    let mut all = broken(text, height, room);
    if all.len() > lines {
        all.truncate(lines);
        if let Some(last) = all.last_mut() {
            while text_width(&format!("{last}..."), height) > room && last.pop().is_some() {}
            last.push_str("...");
        }
    }
    all
}

fn pieces(word: &str, height: f64, room: f64) -> Vec<String> {
    let mut pieces = vec![String::new()];
    for letter in word.chars() {
        let last = pieces.len() - 1;
        if !pieces[last].is_empty() && text_width(&pieces[last], height) + text_width("W", height) > room {
            pieces.push(String::new());
        }
        let last = pieces.len() - 1;
        pieces[last].push(letter);
    }
    pieces
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn widths_are_those_of_the_font() {
        // By hand: A 667 and i 222 thousandths at a size of 10.
        assert!((text_width("Ai", 10.0 * CAPITAL) - 8.89).abs() < 1e-12);
        assert!((text_width("\u{d8}9\u{b0}", CAPITAL) - 1.734).abs() < 1e-12);
    }

    #[test]
    fn lines_are_no_wider_than_their_room() {
        let text = "one two three abcdefghijklmnopqrstuvwxyzabcdefghijklmnopqrstuvwxyz four";
        let lines = broken(text, 2.5, 20.0);
        assert!(lines.iter().all(|line| text_width(line, 2.5) <= 20.0), "{lines:?}");
        assert_eq!(lines.concat().replace(' ', ""), text.replace(' ', ""));
        let cut = cut(text, 2.5, (20.0, 2));
        assert!(cut.len() == 2 && cut[1].ends_with("...") && text_width(&cut[1], 2.5) <= 20.0, "{cut:?}");
    }
}
