//! How the views of an axle share the sheets before those of words.

use axlebow_axle::Axle;

use super::elevation::{Cut, Elevation};
use super::letters::broken;
use super::paper::{Paper, SCALES, standard_scale};
use super::primitive::{Anchor, Layer, Sheet};
use super::proposal::keep_outs;
use super::section_view::{SectionStyle, SectionView, clear_cut};
use super::title_block::{BLOCK, TitleBlock};
use super::view::View;
use crate::ReportError;

/// Room between views, mm.
const BETWEEN: f64 = 3.0;
/// Scale of sections, as 1 to what, from which on they may share the first sheet: smaller, they are not read in a shop.
const LEGIBLE: u32 = 5;
/// Room between the frame and captions of dimensions, mm.
const EDGE: f64 = 1.5;

/// How the views share the sheets before those of words.
pub(super) struct Layout<'a> {
    pub elevation: Elevation<'a>,
    sections: Vec<SectionView<'a>>,
    pub section_scale: u32,
    /// Whether sections have a sheet of their own.
    pub apart: bool,
    paper: Paper,
}

impl<'a> Layout<'a> {
    /// The elevation as large as the sheet lets it; the sections under it where that leaves them legible, otherwise on a
    /// sheet of their own.
    pub fn of(axle: &'a Axle, style: SectionStyle, paper: Paper) -> Result<Self, ReportError> {
        let [width, height] = room(paper);
        let no_room = || {
            ReportError::Drawing(format!("the axle has no room on {} at any standard scale", paper.name()))
        };
        let elevation =
            |scale: u32| Elevation { axle, lengths: style.lengths, scale, cuts: cuts(axle, scale) };
        let fits = |own: &Elevation<'_>| {
            own.breadth().iter().sum::<f64>() + EDGE <= width && own.height()[0] + 2.0 * BETWEEN <= height
        };
        let elevation = SCALES.into_iter().map(elevation).find(fits).ok_or_else(no_room)?;
        let sections = elevation.cuts.iter().map(|cut| SectionView::at(axle, *cut, style));
        let sections: Vec<SectionView<'_>> =
            sections.collect::<Result<_, _>>().map_err(|why| ReportError::Drawing(why.to_string()))?;
        let scale =
            |taken: f64| section_scale(&sections, [width - 2.0 * BETWEEN, height - 2.0 * BETWEEN - taken]);
        let (under, own) = (scale(elevation.height()[0] + BETWEEN), scale(0.0).ok_or_else(no_room)?);
        let shared = under.filter(|under| *under <= LEGIBLE.max(own));
        Ok(Layout {
            elevation,
            section_scale: shared.unwrap_or(own),
            apart: shared.is_none(),
            sections,
            paper,
        })
    }

    /// The sheets of views, of all sheets.
    pub fn drawn(&self, (block, all): (&TitleBlock, usize), axle: &Axle) -> Vec<Sheet> {
        let [[left, _], [_, top]] = self.paper.frame();
        let [width, height] = room(self.paper);
        let mut first = block.sheet([1, all]);
        let [whole, under] = self.elevation.height();
        let spare = if self.apart { 0.5 * (height - whole) } else { BETWEEN };
        let foot = top - spare - whole;
        let [before, after] = self.elevation.breadth();
        let middle = (left + 0.5 * width).min(left + width - after).max(left + EDGE + before);
        self.elevation.draw(&mut first, [middle, foot + under], left + EDGE);
        self.draw_cautions(&mut first, axle);
        if !self.apart {
            self.draw_sections(&mut first, foot - BETWEEN);
            return vec![first];
        }
        let mut second = block.sheet([2, all]);
        let deepest = self.sections.iter().map(|own| self.taken(own)[1]).fold(0.0, f64::max);
        self.draw_sections(&mut second, top - 0.5 * (height - deepest));
        self.draw_cautions(&mut second, axle);
        vec![first, second]
    }

    /// Width and height that a section takes, mm.
    fn taken(&self, own: &SectionView<'_>) -> [f64; 2] {
        let each = 1e3 / f64::from(self.section_scale);
        [0, 1].map(|axis| own.beside()[axis] + each * own.size()[axis])
    }

    /// The sections side by side under a level.
    fn draw_sections(&self, sheet: &mut Sheet, top: f64) {
        let [[left, _], [right, _]] = self.paper.frame();
        let widths: Vec<f64> = self.sections.iter().map(|own| self.taken(own)[0]).collect();
        let spare = (right - left - widths.iter().sum::<f64>()) / (widths.len() + 1) as f64;
        let mut x = left + spare;
        for (section, width) in self.sections.iter().zip(widths) {
            section.draw(sheet, ([x, top], width), self.section_scale);
            x += width + spare;
        }
    }

    /// The shortest words beside the title block, where there is room: the rest is on the next sheet.
    fn draw_cautions(&self, sheet: &mut Sheet, axle: &Axle) {
        let [[left, bottom], [right, _]] = self.paper.frame();
        let width = right - left - BLOCK[0];
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

/// Width and height inside the frame over the title block, mm.
fn room(paper: Paper) -> [f64; 2] {
    let [[left, bottom], [right, top]] = paper.frame();
    [right - left, top - bottom - BLOCK[1]]
}

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
