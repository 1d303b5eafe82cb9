//! Frame, title block and approval box of a sheet.
//!
//! Fields follow ISO 7200 where it names them (title, identification, revision, sheet), from memory; the layout is our own.

use std::f64::consts::TAU;

use super::letters::cut;
use super::paper::Paper;
use super::primitive::{Anchor, Layer, Place, Sheet};
use super::weld_symbol::WeldSymbols;

/// Width and height of the title block with the approval box on its left, mm.
pub(super) const BLOCK: [f64; 2] = [180.0, 38.0];
/// Width of the approval box.
const APPROVAL: f64 = 78.0;

/// What a title block says.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct TitleBlock {
    pub title: String,
    /// What must be known of the input, such as that it is invented.
    pub note: Option<String>,
    pub hash: String,
    pub revision: String,
    pub scale: String,
    pub unit: &'static str,
    pub paper: Paper,
    pub symbols: WeldSymbols,
    pub program: &'static str,
}

/// Who must sign, with room for name, date and signature.
const SIGNERS: [&str; 4] = ["Drawn", "Checked", "Licensed engineer", "Axle maker, written"];

impl TitleBlock {
    /// A sheet with frame and block; number and count of the sheet.
    pub fn sheet(&self, [number, count]: [usize; 2]) -> Sheet {
        let mut sheet = Sheet { size: self.paper.size(), figures: Vec::new() };
        let [low, high] = self.paper.frame();
        sheet.rectangle(Layer::Frame, low, high);
        let corner = [high[0] - BLOCK[0], low[1]];
        sheet.rectangle(Layer::Frame, corner, [high[0], low[1] + BLOCK[1]]);
        self.draw_approval(&mut sheet, corner);
        self.draw_title(&mut sheet, [corner[0] + APPROVAL, low[1]], [number, count]);
        sheet
    }

    fn draw_approval(&self, sheet: &mut Sheet, [left, bottom]: Place) {
        let columns = [0.0, 27.0, 45.0, 58.0, APPROVAL];
        let row = BLOCK[1] / (SIGNERS.len() + 1) as f64;
        for x in &columns[1..] {
            sheet.line(Layer::Text, [left + x, bottom], [left + x, bottom + BLOCK[1]]);
        }
        for (number, signer) in std::iter::once("To be signed").chain(SIGNERS).enumerate() {
            let level = bottom + BLOCK[1] - row * (number + 1) as f64;
            sheet.line(Layer::Text, [left, level], [left + APPROVAL, level]);
            sheet.text(Layer::Text, ([left + 1.0, level + 0.5 * row - 1.0], Anchor::Start), 2.0, signer);
        }
        let level = bottom + BLOCK[1] - 0.5 * row - 1.0;
        for (x, word) in columns[1..].iter().zip(["name", "date", "signature"]) {
            sheet.text(Layer::Text, ([left + x + 1.0, level], Anchor::Start), 2.0, word);
        }
    }

    fn draw_title(&self, sheet: &mut Sheet, [left, bottom]: Place, [number, count]: [usize; 2]) {
        let width = BLOCK[0] - APPROVAL;
        let top = bottom + BLOCK[1];
        for (line, words) in cut(&self.title, 2.5, (width - 2.0, 2)).into_iter().enumerate() {
            let at = [left + 1.0, top - 4.0 - 4.0 * line as f64];
            sheet.text(Layer::Text, (at, Anchor::Start), 2.5, words);
        }
        if let Some(note) = &self.note {
            for (line, words) in cut(note, 1.8, (width - 2.0, 2)).into_iter().enumerate() {
                sheet.text(
                    Layer::Text,
                    ([left + 1.0, top - 11.5 - 2.8 * line as f64], Anchor::Start),
                    1.8,
                    words,
                );
            }
        }
        let rows = [
            [
                ("model hash", self.hash.clone()),
                ("revision", self.revision.clone()),
                ("sheet", format!("{number} of {count}")),
            ],
            [
                ("scale", self.scale.clone()),
                ("lengths in", self.unit.to_owned()),
                ("paper", self.paper.name().to_owned()),
            ],
            [
                ("weld symbols", self.symbols.title().to_owned()),
                ("made by", self.program.to_owned()),
                ("projection", String::new()),
            ],
        ];
        let columns = [0.0, 48.0, 76.0, width];
        for (number, row) in rows.iter().enumerate() {
            let level = bottom + 7.0 * (2 - number) as f64;
            sheet.line(Layer::Text, [left, level + 7.0], [left + width, level + 7.0]);
            for (column, (name, value)) in row.iter().enumerate() {
                let (x, room) = (left + columns[column], columns[column + 1] - columns[column] - 2.0);
                sheet.line(Layer::Text, [x, level], [x, level + 7.0]);
                sheet.text(Layer::Text, ([x + 1.0, level + 4.6], Anchor::Start), 1.5, *name);
                for words in cut(value, 2.0, (room, 1)) {
                    sheet.text(Layer::Text, ([x + 1.0, level + 1.2], Anchor::Start), 2.0, words);
                }
            }
        }
        self.draw_projection(sheet, [left + columns[2] + 18.0, bottom + 3.5]);
    }

    /// The cone of ISO 5456-2, its small end on the left, and its view from there: beyond it, on the right, in first angle;
    /// on the side from which it is seen, the left, in third (from memory).
    fn draw_projection(&self, sheet: &mut Sheet, [x, y]: Place) {
        let [cone, rings] = match self.symbols {
            WeldSymbols::Iso => [x - 6.0, x + 3.0],
            WeldSymbols::Aws => [x - 0.5, x - 4.0],
        };
        let [small, big] = RINGS;
        let (near, far) = (cone, cone + 2.0 * big);
        let corners =
            [[near, y - small], [far, y - big], [far, y + big], [near, y + small], [near, y - small]];
        sheet.path(Layer::Text, &corners);
        RINGS.into_iter().for_each(|radius| sheet.arc(Layer::Text, ([rings, y], radius), [0.0, TAU]));
    }
}

/// Radii of the ends of the cone of the mark of projection, mm.
const RINGS: [f64; 2] = [1.2, 2.4];

#[cfg(test)]
mod tests {
    use super::super::primitive::Figure;
    use super::*;

    /// Left and right end of the small end, the large end and the rings of the mark.
    fn mark(symbols: WeldSymbols) -> [f64; 3] {
        let block = TitleBlock {
            title: String::new(),
            note: None,
            hash: String::new(),
            revision: String::new(),
            scale: String::new(),
            unit: "mm",
            paper: Paper::A4,
            symbols,
            program: "",
        };
        let mut sheet = Sheet { size: [100.0, 100.0], figures: Vec::new() };
        block.draw_projection(&mut sheet, [50.0, 50.0]);
        let upright = |length: f64| {
            sheet.figures.iter().find_map(|(_, own)| match own {
                Figure::Line(a, b) if a[0] == b[0] && ((a[1] - b[1]).abs() - length).abs() < 1e-9 => {
                    Some(a[0])
                }
                _ => None,
            })
        };
        let ring = sheet.figures.iter().find_map(|(_, own)| match own {
            Figure::Arc { center, .. } => Some(center[0]),
            _ => None,
        });
        [upright(2.0 * RINGS[0]), upright(2.0 * RINGS[1]), ring].map(Option::unwrap)
    }

    /// Both rings are full lines, so the cone is seen from its small end: in first angle that view stands past the large end,
    /// in third before the small one.
    #[test]
    fn the_mark_of_projection_is_of_first_angle_for_iso_and_of_third_for_aws() {
        let ([small, big, ring], [low, high, before]) = (mark(WeldSymbols::Iso), mark(WeldSymbols::Aws));
        assert!(small < big && big < ring - RINGS[1], "{small} {big} {ring}");
        assert!(before + RINGS[1] < low && low < high, "{before} {low} {high}");
    }
}
