//! The drawing of an axle: its sheets of views, and the sheets of words after them.

use axlebow_axle::{Axle, Preheat, StrengthOptions, preheats};

use super::layout::Layout;
use super::notes::{sheet_count, sheets};
use super::paper::Paper;
use super::primitive::{Layer, Sheet};
use super::proposal::Lengths;
use super::questions::{Proposal, Question};
use super::section_view::SectionStyle;
use super::shop_notes::ShopNotes;
use super::title_block::TitleBlock;
use super::weld_symbol::WeldSymbols;
use super::{to_dxf, to_pdf, to_svg};
use crate::subject::PROGRAM;
use crate::{ModelCard, ReportError, Svg};

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
        let views = if layout.apart { 2 } else { 1 };
        let all = views + sheet_count(&notes, options.paper);
        let drawn = layout.drawn((&block, all), axle);
        let (scale, section_scale) = (layout.elevation.scale, layout.section_scale);
        let sheets = drawn.into_iter().chain(sheets(&notes, &block, [views, all])).collect();
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
        to_dxf::dxf(&self.sheets, [self.scale, self.section_scale])
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

    /// Texts that a line runs through, sheet by sheet; center lines and hatches may.
    #[doc(hidden)]
    pub fn crossed_texts(&self) -> Vec<String> {
        self.sheets.iter().flat_map(Sheet::crossed_texts).collect()
    }
}
