//! Dimensions along a view, in rows above or below it.

use super::letters::text_width;
use super::primitive::{Anchor, Layer, Place, Sheet};

/// Height of figures, mm (ISO 3098, from memory).
pub(super) const FIGURES: f64 = 2.5;
/// From row to row, mm.
pub(super) const ROW: f64 = 6.0;
/// Room that a text and two arrow heads want beside them, mm.
const BESIDE_TEXT: f64 = 1.0;
const TWO_HEADS: f64 = 6.0;
/// Room between a figure and the line that is broken for it, mm.
const CLEAR: f64 = 0.4;
/// How far a figure beside its length may move on to keep clear of lines, mm.
const MOVES: f64 = 4.0;
/// Height of captions, mm.
const CAPTION: f64 = 1.8;
/// How far an arrow from outside reaches, mm.
const TAIL: f64 = 5.0;
/// Gap at the start of an extension line, and how far it runs past the dimension line, mm.
const EXTENSION: [f64; 2] = [0.8, 1.2];
/// How high a text stands over its line, mm.
const OVER_LINE: f64 = 0.7;

/// A length along the sheet.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Dimension {
    /// Where it starts and ends, mm on the sheet, the left one first.
    pub span: [f64; 2],
    /// Height at which what is measured lies, mm on the sheet.
    pub feature: f64,
    /// Its figure.
    pub text: String,
}

/// Dimensions that belong together, with what they are of.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Chain {
    pub of: &'static str,
    pub dimensions: Vec<Dimension>,
}

/// Whether rows lie above a view or below it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    Above,
    Below,
}

/// Chains laid in rows, so that no figure stands over another or in an extension line.
#[derive(Debug, Clone)]
pub(super) struct Rows {
    placed: Vec<(usize, Dimension)>,
    /// First row of each chain, with what it is of.
    captions: Vec<(usize, &'static str)>,
    count: usize,
}

impl Dimension {
    fn length(&self) -> f64 {
        self.span[1] - self.span[0]
    }

    fn text_fits(&self) -> bool {
        text_width(&self.text, FIGURES) + BESIDE_TEXT <= self.length()
    }

    fn heads_fit(&self) -> bool {
        self.length() >= TWO_HEADS
    }

    /// Lower left and upper right corner of its figure that starts at a place.
    fn figure(&self, [x, y]: Place) -> [Place; 2] {
        [[x, y], [x + text_width(&self.text, FIGURES), y + FIGURES]]
    }

    /// From where to where it takes room in its row.
    fn room(&self) -> [f64; 2] {
        let [mut from, mut to] = self.span;
        if !self.heads_fit() {
            (from, to) = (from - TAIL, to + TAIL);
        }
        if !self.text_fits() {
            to = to.max(self.span[1] + 1.0) + text_width(&self.text, FIGURES) + 1.0 + MOVES;
        }
        [from, to]
    }

    /// Where its figure starts, clear of some places where that can be: nearest to the middle, beside it where the length is
    /// too short.
    fn text_start(&self, lines: &[f64]) -> f64 {
        const STEPS: usize = 40;
        let width = text_width(&self.text, FIGURES);
        let clear = |start: &f64| lines.iter().all(|x| *x < start - 0.5 || *x > start + width + 0.5);
        let share = |step: usize| step as f64 / STEPS as f64;
        let starts: Vec<f64> = if self.text_fits() {
            let first = self.span[0] + 0.5 * BESIDE_TEXT;
            let room = self.length() - width - BESIDE_TEXT;
            let shares = (0..=STEPS).map(|step| 0.5 * share(step)).flat_map(|off| [0.5 + off, 0.5 - off]);
            shares.map(|share| first + share * room).collect()
        } else {
            let first = self.span[1] + if self.heads_fit() { 1.0 } else { TAIL };
            (0..=STEPS).map(|step| first + share(step) * MOVES).collect()
        };
        starts.iter().copied().find(clear).unwrap_or(starts[0])
    }
}

impl Rows {
    /// Each chain from the row after the last one of the chain before it.
    pub fn of(chains: Vec<Chain>) -> Self {
        let mut rows = Rows { placed: Vec::new(), captions: Vec::new(), count: 0 };
        for chain in chains.into_iter().filter(|chain| !chain.dimensions.is_empty()) {
            let first = rows.count;
            rows.captions.push((first, chain.of));
            for dimension in chain.dimensions {
                let row = rows.free_row(first, &dimension);
                rows.count = rows.count.max(row + 1);
                rows.placed.push((row, dimension));
            }
        }
        rows
    }

    fn free_row(&self, first: usize, new: &Dimension) -> usize {
        let [from, to] = new.room();
        let taken = |row: usize| {
            self.placed.iter().any(|(other, own)| {
                let [left, right] = own.room();
                *other == row && left < to - 0.01 && from < right - 0.01
            })
        };
        (first..).find(|row| !taken(*row)).unwrap_or(first)
    }

    /// Height that they take, mm.
    pub fn height(&self) -> f64 {
        ROW * self.count as f64
    }

    /// How far to the left and right of the view's origin they reach with their captions, mm.
    pub fn breadth(&self) -> [f64; 2] {
        let right = self.placed.iter().map(|(_, own)| own.room()[1]).fold(0.0, f64::max);
        let left = |row: usize| {
            let own = self.placed.iter().filter(|(other, _)| *other == row).map(|(_, own)| own.room()[0]);
            let passing = self.placed.iter().filter(|(other, _)| *other > row).map(|(_, own)| own.span[0]);
            -own.chain(passing).fold(0.0, f64::min)
        };
        let captions = self.captions.iter().map(|(row, of)| left(*row) + text_width(of, CAPTION) + 2.0);
        let rows = (0..self.count).map(left);
        [captions.chain(rows).fold(0.0, f64::max), right]
    }

    /// Where the extension lines of later rows pass through a row.
    fn passing(&self, row: usize) -> Vec<f64> {
        self.placed.iter().filter(|(other, _)| *other > row).flat_map(|(_, own)| own.span).collect()
    }

    /// Draws them from a height (mm) on; captions start at `caption`.
    pub fn draw(&self, sheet: &mut Sheet, (side, start): (Side, f64), caption: f64) {
        let level = |row: usize| match side {
            Side::Above => start + ROW * (row as f64 + 0.3),
            Side::Below => start - ROW * (row as f64 + 0.8),
        };
        let starts: Vec<f64> =
            self.placed.iter().map(|(row, own)| own.text_start(&self.passing(*row))).collect();
        let figures: Vec<[Place; 2]> = (self.placed.iter().zip(&starts))
            .map(|((row, own), start)| own.figure([*start, level(*row) + OVER_LINE]))
            .collect();
        for ((row, dimension), start) in self.placed.iter().zip(starts) {
            draw_extensions(sheet, dimension, (level(*row), side), &figures);
            draw(sheet, dimension, (level(*row), start));
        }
        for (row, of) in &self.captions {
            let at = [caption, level(*row) + OVER_LINE];
            sheet.text(Layer::Text, (at, Anchor::Start), CAPTION, *of);
        }
    }
}

/// Extension lines, broken where a figure stands in their way.
fn draw_extensions(sheet: &mut Sheet, own: &Dimension, (level, side): (f64, Side), figures: &[[Place; 2]]) {
    let out = if side == Side::Above { 1.0 } else { -1.0 };
    let mut ends = [own.feature + out * EXTENSION[0], level + out * EXTENSION[1]];
    ends.sort_by(f64::total_cmp);
    for x in own.span {
        let mut gaps: Vec<[f64; 2]> = figures
            .iter()
            .filter(|[low, high]| low[0] - CLEAR < x && x < high[0] + CLEAR)
            .map(|[low, high]| [low[1] - CLEAR, high[1] + CLEAR])
            .filter(|[low, high]| ends[0] < *high && *low < ends[1])
            .collect();
        gaps.sort_by(|a, b| a[0].total_cmp(&b[0]));
        let mut from = ends[0];
        for [low, high] in gaps {
            if from < low {
                sheet.line(Layer::Dimension, [x, from], [x, low]);
            }
            from = from.max(high);
        }
        if from < ends[1] {
            sheet.line(Layer::Dimension, [x, from], [x, ends[1]]);
        }
    }
}

fn draw(sheet: &mut Sheet, own: &Dimension, (level, start): (f64, f64)) {
    let [from, to] = own.span;
    let inward = if own.heads_fit() { -1.0 } else { 1.0 };
    if !own.heads_fit() {
        for (x, way) in [(from, -1.0), (to, 1.0)] {
            sheet.line(Layer::Dimension, [x + way * TAIL, level], [x, level]);
        }
    }
    sheet.arrow_head(Layer::Dimension, [from, level], [inward, 0.0]);
    sheet.arrow_head(Layer::Dimension, [to, level], [-inward, 0.0]);
    // The line of a dimension comes right before its figure: readers of the DXF file go by it.
    sheet.line(Layer::Dimension, [from, level], [to, level]);
    let at: Place = [start, level + OVER_LINE];
    sheet.text(Layer::Dimension, (at, Anchor::Start), FIGURES, own.text.clone());
}

#[cfg(test)]
mod tests {
    use super::*;

    fn dimension(from: f64, to: f64, text: &str) -> Dimension {
        Dimension { span: [from, to], feature: 0.0, text: text.to_owned() }
    }

    #[test]
    fn a_chain_shares_a_row_and_what_has_no_room_goes_to_the_next() {
        let chain =
            vec![dimension(0.0, 20.0, "200"), dimension(20.0, 40.0, "200"), dimension(0.0, 40.0, "400")];
        let rows = Rows::of(vec![Chain { of: "one", dimensions: chain }]);
        let placed: Vec<usize> = rows.placed.iter().map(|(row, _)| *row).collect();
        assert_eq!((placed, rows.height()), (vec![0, 0, 1], 2.0 * ROW));
    }

    #[test]
    fn a_figure_gives_way_to_extension_lines() {
        let own = dimension(0.0, 40.0, "400");
        let width = text_width("400", FIGURES);
        assert!((own.text_start(&[]) + 0.5 * width - 20.0).abs() < 1e-9);
        let start = own.text_start(&[20.0]);
        assert!(start > 20.0 || start + width < 20.0, "{start}");
        assert!(own.text_start(&[]) > 0.0);
    }

    /// A stretch of 5 mm has no place for its figure beside the line that passes through its middle: the line is broken.
    #[test]
    fn an_extension_line_is_broken_for_a_figure_that_cannot_give_way() {
        let chains = [(vec![dimension(0.0, 6.5, "60")], "one"), (vec![dimension(3.0, 40.0, "370")], "other")];
        let rows = Rows::of(chains.into_iter().map(|(dimensions, of)| Chain { of, dimensions }).collect());
        let mut sheet = Sheet { size: [100.0, 100.0], figures: Vec::new() };
        rows.draw(&mut sheet, (Side::Above, 10.0), -50.0);
        assert_eq!(sheet.crossed_texts(), [""; 0]);
        let upright = |x: f64| {
            let line = |own: &(Layer, super::super::primitive::Figure)| match own.1 {
                super::super::primitive::Figure::Line(a, b) if a[0] == x && b[0] == x => {
                    Some((b[1] - a[1]).abs())
                }
                _ => None,
            };
            sheet.figures.iter().filter_map(line).collect::<Vec<_>>()
        };
        assert_eq!((upright(3.0).len(), upright(40.0).len()), (2, 1));
        let gap = upright(40.0)[0] - upright(3.0).iter().sum::<f64>();
        assert!((gap - FIGURES - 2.0 * CLEAR).abs() < 1e-9, "{gap}");
    }

    /// A caption stands left of all that its row and later ones reach, also where an arrow comes from outside.
    #[test]
    fn rows_are_as_broad_as_their_captions_arrows_and_figures() {
        let chain = |of, from, to, text| Chain { of, dimensions: vec![dimension(from, to, text)] };
        let caption = |of| text_width(of, CAPTION) + 2.0;
        let rows = Rows::of(vec![chain("one", -20.0, 0.0, "200"), chain("another", -40.0, 40.0, "800")]);
        assert_eq!(rows.breadth(), [40.0 + caption("another"), 40.0]);
        let rows = Rows::of(vec![chain("one", -3.0, 0.0, "30")]);
        let figure = text_width("30", FIGURES) + 1.0 + MOVES;
        assert_eq!(rows.breadth(), [3.0 + TAIL + caption("one"), TAIL + figure]);
        let rows = Rows::of(vec![chain("a long caption", -20.0, 0.0, "200"), chain("b", -40.0, 40.0, "800")]);
        assert_eq!(rows.breadth()[0], 40.0 + caption("a long caption"));
    }

    #[test]
    fn a_figure_too_wide_for_its_length_stands_beside_it() {
        let own = dimension(10.0, 13.0, "1234");
        assert!(own.text_start(&[]) >= 13.0 + TAIL);
        assert!(
            own.room()[0] <= 10.0 - TAIL && own.room()[1] > own.text_start(&[]) + text_width("1234", FIGURES)
        );
    }
}
