//! The drawing of an axle: how its views share the first sheet, and the sheets of words after it.

use axlebow_axle::{Axle, Preheat, StrengthOptions, preheats};

use super::elevation::{Cut, Elevation};
use super::letters::broken;
use super::notes::{sheet_count, sheets};
use super::paper::{Paper, standard_scale};
use super::primitive::{Anchor, Layer, Sheet};
use super::proposal::{Lengths, keep_outs};
use super::section_view::{SectionStyle, SectionView, clear_cut};
use super::shop_notes::ShopNotes;
use super::title_block::{BLOCK, TitleBlock};
use super::view::View;
use super::weld_symbol::WeldSymbols;
use super::{to_dxf, to_pdf, to_svg};
use crate::subject::PROGRAM;
use crate::words::questions::{Proposal, Question};
use crate::{ModelCard, ReportError, Svg};

/// Room left and right of the elevation for captions and sizes, mm.
const BESIDE: f64 = 25.0;
/// Room between views, mm.
const BETWEEN: f64 = 3.0;

/// How a drawing is made.
#[derive(Debug, Clone, PartialEq)]
pub struct DrawingOptions {
    /// Paper.
    pub paper: Paper,
    /// Weld symbols.
    pub symbols: WeldSymbols,
    /// Revision, as the shop counts them.
    pub revision: String,
}

/// A finished drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct ShopDrawing {
    sheets: Vec<Sheet>,
    title: String,
    card: ModelCard,
    /// How it was made.
    pub options: DrawingOptions,
    /// Scale of the elevation, as 1 to what.
    pub scale: u32,
    /// Scale of the sections, as 1 to what.
    pub section_scale: u32,
    /// Mass of the stiffeners, kg.
    pub stiffener_mass: f64,
    /// Mass of the bare axle, kg.
    pub mass: f64,
    /// What each steel that is welded says about preheat.
    pub preheats: Vec<Preheat>,
    /// What to ask the axle's maker.
    pub questions: Vec<Question>,
}

impl ShopDrawing {
    /// The drawing of an axle whose strength is checked by `strength`.
    ///
    /// # Errors
    /// A stiffener that does not sit on the axle, or an axle for which no standard scale leaves room on the sheet.
    pub fn of(
        (axle, strength): (&Axle, StrengthOptions),
        options: DrawingOptions,
        card: &ModelCard,
    ) -> Result<Self, ReportError> {
        let lengths = Lengths::of(card.system);
        let failed = |why: axlebow_axle::AxleError| ReportError::Drawing(why.to_string());
        let preheats = preheats(axle).map_err(failed)?;
        let questions = Proposal { axle, strength, preheats: &preheats, lengths }.questions();
        let style = SectionStyle { lengths, symbols: options.symbols };
        let layout = Layout::of(axle, style, options.paper)?;
        let notes = ShopNotes {
            axle,
            strength,
            preheats: &preheats,
            questions: &questions,
            symbols: options.symbols,
            lengths,
        }
        .notes();
        let block = TitleBlock {
            title: card.name.clone(),
            note: card.invented_note(),
            hash: card.hash.clone(),
            revision: options.revision.clone(),
            scale: format!("1 : {} (sections 1 : {})", layout.elevation.scale, layout.section_scale),
            unit: lengths.unit(),
            paper: options.paper,
            symbols: options.symbols,
            program: PROGRAM,
        };
        let all = 1 + sheet_count(&notes, options.paper);
        let first = layout.drawn(block.sheet([1, all]), axle);
        let (scale, section_scale) = (layout.elevation.scale, layout.section_scale);
        let sheets = std::iter::once(first).chain(sheets(&notes, &block, [1, all])).collect();
        let stiffener_mass = axle.stiffeners.iter().map(|own| own.mass()).sum();
        let (title, card, mass) = (format!("{}: drawing", card.name), card.clone(), axle.mass());
        Ok(ShopDrawing {
            sheets,
            title,
            card,
            options,
            scale,
            section_scale,
            stiffener_mass,
            mass,
            preheats,
            questions,
        })
    }

    /// How many sheets it has.
    pub fn sheet_count(&self) -> usize {
        self.sheets.len()
    }

    /// The sheets below one another, in true millimeters.
    pub fn svg(&self) -> Svg {
        let description = format!("Elevation at 1 : {}, sections at 1 : {}", self.scale, self.section_scale);
        to_svg::svg(&self.sheets, &self.title, &description).with_provenance(&self.card)
    }

    /// The sheets side by side; the elevation at full size in millimeters.
    pub fn dxf(&self) -> String {
        to_dxf::dxf(&self.sheets, self.scale)
    }

    /// The sheets, a page each.
    pub fn pdf(&self) -> Vec<u8> {
        to_pdf::pdf(&self.sheets, &self.title)
    }

    /// Every text with its box (left, bottom, right, top, mm), sheet by sheet; for whoever looks whether they overlap.
    #[doc(hidden)]
    pub fn text_boxes(&self) -> Vec<Vec<(String, [f64; 4])>> {
        let of = |sheet: &Sheet| {
            let boxed = |(_, figure): &(Layer, super::primitive::Figure)| match figure {
                super::primitive::Figure::Text(own) => {
                    let [x, y] = own.start();
                    Some((own.text.clone(), [x, y, x + own.width(), y + own.height]))
                }
                _ => None,
            };
            sheet.figures.iter().filter_map(boxed).collect()
        };
        self.sheets.iter().map(of).collect()
    }
}

/// Where the views of the first sheet lie.
struct Layout<'a> {
    elevation: Elevation<'a>,
    sections: Vec<SectionView<'a>>,
    section_scale: u32,
    paper: Paper,
}

impl<'a> Layout<'a> {
    /// The elevation as large as the sheet's width lets it, the sections as large as what is left.
    fn of(axle: &'a Axle, style: SectionStyle, paper: Paper) -> Result<Self, ReportError> {
        let [[left, bottom], [right, top]] = paper.frame();
        let [width, height] = [right - left, top - bottom - BLOCK[1]];
        let no_room = || {
            ReportError::Drawing(format!("the axle has no room on {} at any standard scale", paper.name()))
        };
        let long = [2.0 * axle.body.spindle_end(), 0.0];
        let smallest = standard_scale(long, [width - 2.0 * BESIDE, height]).ok_or_else(no_room)?;
        let scales = [smallest, 2 * smallest, 5 * smallest];
        let tried = scales.into_iter().find_map(|scale| {
            let elevation = Elevation { axle, lengths: style.lengths, scale, cuts: cuts(axle, scale) };
            let sections = elevation.cuts.iter().map(|cut| SectionView::at(axle, *cut, style));
            let sections: Vec<SectionView<'_>> = sections.collect::<Result<_, _>>().ok()?;
            let left_over = height - elevation.height()[0] - 3.0 * BETWEEN;
            let section_scale = section_scale(&sections, [width - 2.0 * BETWEEN, left_over])?;
            Some(Layout { elevation, sections, section_scale, paper })
        });
        tried.ok_or_else(no_room)
    }

    fn drawn(&self, mut sheet: Sheet, axle: &Axle) -> Sheet {
        let [[left, bottom], [right, top]] = self.paper.frame();
        let [whole, under] = self.elevation.height();
        let foot = top - BETWEEN - whole;
        self.elevation.draw(&mut sheet, [0.5 * (left + right), foot + under], left + 1.5);
        let each = 1e3 / f64::from(self.section_scale);
        let widths: Vec<f64> =
            self.sections.iter().map(|own| own.beside()[0] + each * own.size()[0]).collect();
        let spare = (right - left - widths.iter().sum::<f64>()) / (widths.len() + 1) as f64;
        let mut x = left + spare;
        for (section, width) in self.sections.iter().zip(widths) {
            section.draw(&mut sheet, ([x, foot - BETWEEN], width), self.section_scale);
            x += width + spare;
        }
        self.draw_cautions(&mut sheet, axle, ([left, bottom], right - left - BLOCK[0]));
        sheet
    }

    /// The shortest words beside the title block, where there is room: the rest is on the next sheet.
    fn draw_cautions(&self, sheet: &mut Sheet, axle: &Axle, ([left, bottom], width): ([f64; 2], f64)) {
        let words = if axle.stiffeners.is_empty() { PLAIN } else { WELDED };
        let lines = words.iter().flat_map(|own| broken(own, 1.8, width - 4.0));
        for (number, line) in lines.enumerate() {
            let at = [left + 2.0, bottom + BLOCK[1] - 4.0 - 2.9 * number as f64];
            sheet.text(Layer::Text, (at, Anchor::Start), 1.8, line);
        }
    }
}

const PLAIN: &[&str] = &[
    "Axle without stiffeners; left and right ends are alike unless dimensioned apart.",
    "Weld nothing to an axle without its maker's written approval.",
];

const WELDED: &[&str] = &[
    "Not for making before it is signed: the axle maker's written approval, a qualified weld procedure and local codes come first.",
    "No weld in the red zones, near spindles or on a loaded axle; no current through bearings or seals.",
    "Welding can void the rating and start cracks. Numbers support, and do not replace, a licensed engineer's judgment.",
];

/// The largest standard scale at which all sections have room side by side.
fn section_scale(sections: &[SectionView<'_>], [width, height]: [f64; 2]) -> Option<u32> {
    let beside = sections.iter().map(|own| own.beside()[0]).sum::<f64>();
    let across = sections.iter().map(|own| own.size()[0]).sum();
    let scale = |own: &SectionView<'_>| {
        standard_scale([across, own.size()[1]], [width - beside, height - own.beside()[1]])
    };
    sections.iter().map(scale).collect::<Option<Vec<_>>>()?.into_iter().max()
}

/// Where the axle is cut: through each stiffener that no earlier cut meets, through the middle without any; and a seat.
fn cuts(axle: &Axle, scale: u32) -> Vec<Cut> {
    let view = View::at([0.0, 0.0], scale).mirrored();
    let x = |y: &f64| view.place([*y, 0.0])[0];
    let stiffeners = || axle.stiffeners.iter();
    let seat = &axle.seats.left;
    let seats = [seat.at, seat.inner_edge(), seat.outer_edge()].into_iter().flat_map(|y| [y, -y]);
    let ends = stiffeners().flat_map(|own| {
        let run_out = own.end.length();
        let runs = own.weld_runs().into_iter().flatten();
        [own.from, own.to, own.from + run_out, own.to - run_out].into_iter().chain(runs)
    });
    let zones = keep_outs(axle, axlebow_axle::Side::Left).into_iter().flatten().flat_map(|y| [y, -y]);
    let pieces = axle.body.pieces().iter().flat_map(|piece| [piece.to, -piece.to]);
    let all: Vec<f64> = ends.chain(seats).chain(zones).chain(pieces).chain([0.0]).collect();
    let lines: Vec<f64> = all.iter().map(x).collect();
    let mut cuts: Vec<f64> = Vec::new();
    for own in stiffeners() {
        let run_out = own.end.length();
        let [from, to] = [own.from + run_out, own.to - run_out];
        if !cuts.iter().any(|cut| from < *cut && *cut < to) {
            cuts.push(clear_cut([from, to], (view, &lines)));
        }
    }
    if cuts.is_empty() {
        cuts.push(clear_cut([0.0, seat.inner_edge()], (view, &lines)));
    }
    cuts.push(clear_cut([seat.inner_edge(), seat.outer_edge()], (view, &lines)));
    cuts.into_iter().zip('A'..='Z').collect()
}
