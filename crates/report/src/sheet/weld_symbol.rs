//! Weld symbols of fillets, by ISO 2553 (system A) and by AWS A2.4.
//!
//! Rules that are drawn, both from memory:
//!
//! - ISO 2553:2019: the reference line is a full line with a dashed one beside it; the symbol of a weld on the arrow's side
//!   sits on the full line, one on the other side on the dashed line, which is left out where both sides are alike. The size
//!   stands before the symbol, `z` before a leg, `a` before a throat. Stitches are n x l (e): number, length, and the
//!   clear gap between them.
//! - AWS A2.4:2020: one reference line; the symbol of a weld on the arrow's side hangs below it, one on the other side stands
//!   above. The leg stands before the symbol. Stitches are length-pitch, the pitch from center to center.
//! - Both: the upright leg of the triangle is on its left, whichever way the arrow runs; a tail holds the procedure.

use super::letters::text_width;
use super::primitive::{Anchor, Layer, Place, Sheet};

/// Which standard's symbols are drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WeldSymbols {
    /// ISO 2553, system A.
    Iso,
    /// AWS A2.4.
    Aws,
}

impl WeldSymbols {
    /// The standard.
    pub fn title(self) -> &'static str {
        match self {
            WeldSymbols::Iso => "ISO 2553, system A",
            WeldSymbols::Aws => "AWS A2.4",
        }
    }
}

/// A fillet as a symbol says it; lengths in the reader's units, as text.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct FilletSymbol {
    pub leg: String,
    /// None for a weld from end to end.
    pub stitches: Option<StitchFigures>,
    /// Whether both sides of the joint are welded alike.
    pub both_sides: bool,
}

/// Stitches as a symbol says them.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct StitchFigures {
    pub number: usize,
    pub length: String,
    pub pitch: String,
    pub gap: String,
}

/// Height of figures, side of the triangle and distance of the dashed line, mm.
const FIGURES: f64 = 2.5;
const TRIANGLE: f64 = 3.5;
const DASHED: f64 = 1.3;
const TAIL: f64 = 3.0;
const SPACE: f64 = 1.0;

impl FilletSymbol {
    /// What stands before the triangle.
    pub fn size(&self, symbols: WeldSymbols) -> String {
        match symbols {
            WeldSymbols::Iso => format!("z{}", self.leg),
            WeldSymbols::Aws => self.leg.clone(),
        }
    }

    /// What stands after it; empty for a weld from end to end.
    pub fn lengths(&self, symbols: WeldSymbols) -> String {
        let Some(StitchFigures { number, length, pitch, gap }) = &self.stitches else { return String::new() };
        match symbols {
            WeldSymbols::Iso => format!("{number} \u{d7} {length} ({gap})"),
            WeldSymbols::Aws => format!("{length}-{pitch}"),
        }
    }

    /// Length of its reference line, mm.
    pub fn length(&self, symbols: WeldSymbols) -> f64 {
        let text = |text: String| text_width(&text, FIGURES);
        let words = text(self.size(symbols)) + text(self.lengths(symbols));
        (words + TRIANGLE + 6.0 * SPACE + TAIL).max(18.0) + text_width(PROCEDURE, 1.8)
    }

    /// Draws it with its arrow's tip at a place and its reference line from `elbow` to the left (-1) or the right (1).
    pub fn draw(&self, sheet: &mut Sheet, symbols: WeldSymbols, (tip, elbow, way): (Place, Place, f64)) {
        let tail = text_width(PROCEDURE, 1.8) + TAIL;
        let line = self.length(symbols) - tail;
        let (left, y) = (if way > 0.0 { elbow[0] } else { elbow[0] - line }, elbow[1]);
        sheet.line(Layer::Symbol, elbow, tip);
        let run = [tip[0] - elbow[0], tip[1] - elbow[1]];
        let far = run[0].hypot(run[1]);
        sheet.arrow_head(Layer::Symbol, tip, [run[0] / far, run[1] / far]);
        sheet.line(Layer::Symbol, [left, y], [left + line, y]);
        if symbols == WeldSymbols::Iso && !self.both_sides {
            sheet.line(Layer::Hidden, [left, y - DASHED], [left + line, y - DASHED]);
        }
        self.draw_sides(sheet, symbols, [left + SPACE, y]);
        draw_tail(sheet, ([if way > 0.0 { left + line } else { left }, y], way));
    }

    fn draw_sides(&self, sheet: &mut Sheet, symbols: WeldSymbols, at: Place) {
        // Where the symbol of the arrow's side lies: on the full line by ISO, below the line by AWS.
        let arrow_side = if symbols == WeldSymbols::Iso { 1.0 } else { -1.0 };
        self.draw_side(sheet, symbols, (at, arrow_side));
        if self.both_sides {
            self.draw_side(sheet, symbols, (at, -arrow_side));
        }
    }

    fn draw_side(&self, sheet: &mut Sheet, symbols: WeldSymbols, ([x, y], up): (Place, f64)) {
        let base = if up > 0.0 { y + 0.7 } else { y - 0.7 - FIGURES };
        let size = self.size(symbols);
        let upright = x + text_width(&size, FIGURES) + SPACE;
        sheet.text(Layer::Symbol, ([x, base], Anchor::Start), FIGURES, size);
        let top = y + up * TRIANGLE;
        sheet.path(Layer::Symbol, &[[upright, y], [upright, top], [upright + TRIANGLE, y]]);
        let after = [upright + TRIANGLE + SPACE, base];
        let lengths = self.lengths(symbols);
        if !lengths.is_empty() {
            sheet.text(Layer::Symbol, (after, Anchor::Start), FIGURES, lengths);
        }
    }
}

/// What the tail asks for.
const PROCEDURE: &str = "WPS";

fn draw_tail(sheet: &mut Sheet, ([x, y], way): (Place, f64)) {
    for up in [TAIL, -TAIL] {
        sheet.line(Layer::Symbol, [x, y], [x + 0.7 * way * TAIL, y + 0.7 * up]);
    }
    let anchor = if way > 0.0 { Anchor::Start } else { Anchor::End };
    sheet.text(Layer::Symbol, ([x + 0.7 * way * TAIL, y - 0.9], anchor), 1.8, PROCEDURE);
}

#[cfg(test)]
mod tests {
    use super::super::primitive::Figure;
    use super::*;

    fn symbol(both_sides: bool) -> FilletSymbol {
        let text = |own: &str| own.to_owned();
        let stitches = StitchFigures { number: 5, length: text("60"), pitch: text("200"), gap: text("140") };
        FilletSymbol { leg: text("6"), stitches: Some(stitches), both_sides }
    }

    fn drawn(symbols: WeldSymbols, both_sides: bool, way: f64) -> Vec<(Layer, Figure)> {
        let mut sheet = Sheet { size: [100.0, 100.0], figures: Vec::new() };
        symbol(both_sides).draw(&mut sheet, symbols, ([10.0, 10.0], [50.0, 50.0], way));
        sheet.figures
    }

    /// Upright lines and the heights to which they rise over the reference line, with the line that slopes down from them.
    fn triangles(figures: &[(Layer, Figure)]) -> Vec<[f64; 2]> {
        let line = |figure: &(Layer, Figure)| match figure.1 {
            Figure::Line(from, to) if from[0] == to[0] && (to[1] - from[1]).abs() == TRIANGLE => {
                Some([from[0], to[1] - from[1]])
            }
            _ => None,
        };
        figures.iter().filter_map(line).collect()
    }

    /// ISO 2553, n x l (e) with the gap; AWS A2.4, length-pitch from center to center (both from memory).
    #[test]
    fn stitches_are_given_by_their_gap_in_iso_and_by_their_pitch_in_aws() {
        let own = symbol(false);
        assert_eq!((own.size(WeldSymbols::Iso), own.size(WeldSymbols::Aws)), ("z6".into(), "6".into()));
        assert_eq!(own.lengths(WeldSymbols::Iso), "5 \u{d7} 60 (140)");
        assert_eq!(own.lengths(WeldSymbols::Aws), "60-200");
        assert_eq!(FilletSymbol { stitches: None, ..own }.lengths(WeldSymbols::Iso), "");
    }

    #[test]
    fn the_arrows_side_is_on_the_full_line_in_iso_and_below_the_line_in_aws() {
        assert!(triangles(&drawn(WeldSymbols::Iso, false, 1.0)).iter().all(|own| own[1] > 0.0));
        assert!(triangles(&drawn(WeldSymbols::Aws, false, 1.0)).iter().all(|own| own[1] < 0.0));
        for symbols in [WeldSymbols::Iso, WeldSymbols::Aws] {
            assert_eq!(triangles(&drawn(symbols, false, 1.0)).len(), 1);
            assert_eq!(triangles(&drawn(symbols, true, -1.0)).len(), 2);
        }
    }

    #[test]
    fn the_dashed_line_is_of_iso_alone_and_not_where_both_sides_are_alike() {
        let dashed = |symbols, both| {
            drawn(symbols, both, 1.0).iter().filter(|(layer, _)| *layer == Layer::Hidden).count()
        };
        let counts = [
            dashed(WeldSymbols::Iso, false),
            dashed(WeldSymbols::Iso, true),
            dashed(WeldSymbols::Aws, false),
            dashed(WeldSymbols::Aws, true),
        ];
        assert_eq!(counts, [1, 0, 0, 0]);
    }

    /// Whichever way the reference line runs, the triangle falls off to the right of its upright leg, and the size stands
    /// left of it.
    #[test]
    fn the_upright_leg_is_on_the_left() {
        for way in [-1.0, 1.0] {
            let figures = drawn(WeldSymbols::Aws, false, way);
            let [upright, _] = triangles(&figures)[0];
            let slopes = |figure: &&(Layer, Figure)| match figure.1 {
                Figure::Line(from, to) => from[0] == upright && to[0] == upright + TRIANGLE,
                _ => false,
            };
            assert_eq!(figures.iter().filter(slopes).count(), 1);
            let size = figures.iter().find_map(|(_, figure)| match figure {
                Figure::Text(own) if own.text == "6" => Some(own.at[0] + own.width()),
                _ => None,
            });
            assert!(size.unwrap() < upright);
        }
    }
}
