//! Sheets as an ASCII DXF file, side by side.
//!
//! The entities are those that every reader knows since release 12 (AC1009): LINE, ARC, SOLID, TEXT, on layers by meaning.
//! Coordinates are millimeters of the elevation at full size: those of the sheet times its scale. The file says so in a
//! comment at its head and in a text under its first sheet.

use std::fmt::Write as _;

use super::letters::text_width;
use super::primitive::{Anchor, Figure, Layer, Letters, Sheet};

/// Room between sheets, mm on paper.
const BETWEEN: f64 = 20.0;
/// Height and distance of the text under the first sheet, mm on paper.
const UNDER: [f64; 2] = [2.5, 6.0];
/// Style of texts, and how wide its letters are for their height: that of the font that readers put for it is replaced by
/// the width that was counted on.
const STYLE: &str = "STANDARD";

/// The file of sheets whose elevation and sections have scales of 1 to so much.
pub(super) fn dxf(sheets: &[Sheet], scales: [u32; 2]) -> String {
    let mut file = Dxf { text: String::new(), scale: f64::from(scales[0]), left: 0.0 };
    let width: f64 = sheets.iter().map(|sheet| sheet.size[0] + BETWEEN).sum::<f64>() - BETWEEN;
    let height = sheets.iter().map(|sheet| sheet.size[1]).fold(0.0, f64::max);
    file.pair(999, scaled(scales));
    file.header([width, height]);
    file.tables();
    file.pairs(&[(0, "SECTION"), (2, "ENTITIES")]);
    let under =
        Letters { text: scaled(scales), at: [0.0, -UNDER[1]], height: UNDER[0], anchor: Anchor::Start };
    file.figure(Layer::Text, &Figure::Text(under));
    for sheet in sheets {
        sheet.figures.iter().for_each(|(layer, figure)| file.figure(*layer, figure));
        file.left += sheet.size[0] + BETWEEN;
    }
    file.pairs(&[(0, "ENDSEC"), (0, "EOF")]);
    file.text
}

/// How large what is drawn is.
fn scaled([elevation, sections]: [u32; 2]) -> String {
    let times = f64::from(elevation) / f64::from(sections);
    let larger = if times == 1.0 { "too".to_owned() } else { format!("{times} times as large") };
    format!(
        "Millimeters; the elevation is at full size, sections are {larger}. Plotted at 1 : {elevation}, the sheets have the size of their paper."
    )
}

struct Dxf {
    text: String,
    scale: f64,
    /// Where the sheet starts, mm on paper.
    left: f64,
}

impl Dxf {
    fn pair(&mut self, code: u16, value: impl std::fmt::Display) {
        let _ = write!(self.text, "{code:>3}\n{value}\n"); // a String takes every write
    }

    fn pairs(&mut self, pairs: &[(u16, &str)]) {
        pairs.iter().for_each(|(code, value)| self.pair(*code, value));
    }

    /// A place under two codes ten apart.
    fn place(&mut self, code: u16, [x, y]: [f64; 2]) {
        self.number(code, self.left + x);
        self.number(code + 10, y);
        self.pair(code + 20, "0.0");
    }

    /// A length on paper at full size.
    fn number(&mut self, code: u16, on_paper: f64) {
        let value = self.scale * on_paper;
        self.pair(code, format_args!("{:.6}", if value == 0.0 { 0.0 } else { value }));
    }

    fn header(&mut self, size: [f64; 2]) {
        self.pairs(&[(0, "SECTION"), (2, "HEADER"), (9, "$ACADVER"), (1, "AC1009"), (9, "$EXTMIN")]);
        self.place(10, [0.0, -UNDER[1]]);
        self.pair(9, "$EXTMAX");
        self.place(10, size);
        self.pair(9, "$LTSCALE");
        self.pair(40, self.scale.to_string());
        self.pairs(&[(0, "ENDSEC")]);
    }

    fn tables(&mut self) {
        self.pairs(&[(0, "SECTION"), (2, "TABLES"), (0, "TABLE"), (2, "LTYPE")]);
        self.pair(70, Layer::ALL.len());
        self.line_type("CONTINUOUS", &[]);
        let dashed = Layer::ALL.iter().filter(|layer| !layer.pen().dashes.is_empty());
        dashed.for_each(|layer| self.line_type(layer.name(), layer.pen().dashes));
        self.pairs(&[(0, "ENDTAB"), (0, "TABLE"), (2, "LAYER")]);
        self.pair(70, Layer::ALL.len());
        for layer in Layer::ALL {
            self.pairs(&[(0, "LAYER"), (2, layer.name())]);
            self.pair(70, 0);
            self.pair(62, layer.pen().color_number);
            self.pair(6, if layer.pen().dashes.is_empty() { "CONTINUOUS" } else { layer.name() });
        }
        self.pairs(&[(0, "ENDTAB"), (0, "TABLE"), (2, "STYLE")]);
        self.pair(70, 1);
        self.pairs(&[(0, "STYLE"), (2, STYLE)]);
        self.pairs(&[(70, "0"), (40, "0.0"), (41, "1.0"), (50, "0.0"), (71, "0"), (42, "2.5")]);
        self.pairs(&[(3, "txt"), (4, ""), (0, "ENDTAB"), (0, "ENDSEC")]);
    }

    fn line_type(&mut self, name: &str, dashes: &[f64]) {
        self.pairs(&[(0, "LTYPE"), (2, name), (70, "0"), (3, ""), (72, "65")]);
        self.pair(73, dashes.len());
        self.pair(40, format_args!("{:.2}", dashes.iter().sum::<f64>()));
        for (number, length) in dashes.iter().enumerate() {
            let sign = if number % 2 == 0 { 1.0 } else { -1.0 };
            self.pair(49, format_args!("{:.2}", sign * length));
        }
    }

    fn figure(&mut self, layer: Layer, figure: &Figure) {
        let name = match figure {
            Figure::Line(..) => "LINE",
            Figure::Arc { .. } => "ARC",
            Figure::Wedge(_) => "SOLID",
            Figure::Text(_) => "TEXT",
        };
        self.pairs(&[(0, name), (8, layer.name())]);
        match figure {
            Figure::Line(from, to) => {
                self.place(10, *from);
                self.place(11, *to);
            }
            Figure::Arc { center, radius, from, to } => {
                self.place(10, *center);
                self.number(40, *radius);
                self.pair(50, format_args!("{:.6}", from.to_degrees()));
                self.pair(51, format_args!("{:.6}", to.to_degrees()));
            }
            Figure::Wedge([a, b, c]) => {
                for (code, corner) in [(10, a), (11, b), (12, c), (13, c)] {
                    self.place(code, *corner);
                }
            }
            Figure::Text(letters) => self.letters(letters),
        }
    }

    /// A text fitted between the ends that were counted on.
    fn letters(&mut self, letters: &Letters) {
        let start = letters.start();
        let end = [start[0] + text_width(&letters.text, letters.height), start[1]];
        self.place(10, start);
        self.number(40, letters.height);
        self.pair(1, coded(&letters.text));
        self.pair(7, STYLE);
        self.pair(72, 5);
        self.place(11, end);
    }
}

/// A text in ASCII: marks of drawings by their own codes, other letters by their numbers.
fn coded(text: &str) -> String {
    let mut coded = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '\u{d8}' => coded.push_str("%%c"),
            '\u{b0}' => coded.push_str("%%d"),
            '\u{b1}' => coded.push_str("%%p"),
            '%' => coded.push_str("%%%"),
            ' '..='~' => coded.push(letter),
            other if other.is_control() => coded.push(' '),
            other => {
                let mut units = [0; 2];
                for unit in other.encode_utf16(&mut units) {
                    let _ = write!(coded, "\\U+{unit:04X}");
                }
            }
        }
    }
    coded
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_file_says_how_large_it_is_drawn() {
        let file = dxf(&[Sheet { size: [297.0, 210.0], figures: Vec::new() }], [10, 2]);
        assert!(
            file.starts_with(
                "999\nMillimeters; the elevation is at full size, sections are 5 times as large."
            )
        );
        assert_eq!(file.matches("Plotted at 1 : 10, the sheets").count(), 2);
        assert!(scaled([10, 10]).contains("sections are too."));
    }

    #[test]
    fn texts_are_ascii() {
        assert_eq!(coded("\u{d8}92 \u{b1}1\u{b0} 5 % \u{d7}\n"), "%%c92 %%p1%%d 5 %%% \\U+00D7 ");
        assert!(coded("\u{1f6e0}").is_ascii());
    }
}
