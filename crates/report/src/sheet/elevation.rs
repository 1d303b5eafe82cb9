//! The axle seen from the rear, with its dimensions.

use axlebow_axle::{Axle, Part, Piece, Side};

use super::dimension::{Chain, Dimension, Rows, Side as RowSide};
use super::primitive::{Anchor, Layer, Place, Sheet};
use super::proposal::{Lengths, keep_outs};
use super::silhouette::{Silhouette, profile_at};
use super::view::{View, hatch};

/// Room between the view and its first row of dimensions, for section letters, mm.
const LETTERS: f64 = 7.0;
/// How far the center line runs past the ends of the axle, mm.
const END: f64 = 3.0;
/// How far a seat is drawn above and below the axle, mm.
const SEAT: f64 = 2.5;

/// Where a section is cut, m from the center, left positive, and its letter.
pub(super) type Cut = (f64, char);

/// The axle from the rear, left to the left.
pub(super) struct Elevation<'a> {
    pub axle: &'a Axle,
    pub lengths: Lengths,
    pub scale: u32,
    pub cuts: Vec<Cut>,
}

impl Elevation<'_> {
    fn silhouettes(&self) -> Vec<Silhouette> {
        self.axle.stiffeners.iter().filter_map(|own| Silhouette::of(self.axle, own)).collect()
    }

    /// Lowest and highest of all that is drawn, m.
    fn reach(&self) -> [f64; 2] {
        let pieces = self.axle.body.pieces().iter();
        let half = pieces.flat_map(|piece| [piece.inboard, piece.outboard]).map(|own| 0.5 * own.height());
        let half = half.fold(0.0, f64::max);
        self.silhouettes()
            .iter()
            .fold([-half, half], |[low, high], own| [low.min(own.low), high.max(own.high)])
    }

    fn rows(&self, view: View) -> [Rows; 2] {
        [Rows::of(self.chains_above(view)), Rows::of(self.chains_below(view))]
    }

    /// The view with the middle of the center line at the origin.
    fn view(&self) -> View {
        View::at([0.0, 0.0], self.scale).mirrored()
    }

    /// Room to the left and right of the center that the whole takes, dimensions, captions and sizes included, mm.
    pub fn breadth(&self) -> [f64; 2] {
        let view = self.view();
        let end = -view.across * self.axle.body.spindle_end() + END;
        let rows = self.rows(view).map(|rows| rows.breadth());
        let widest =
            rows.into_iter().fold([end, end], |[left, right], own| [left.max(own[0]), right.max(own[1])]);
        let sizes = self.sizes(view).into_iter().map(|(line, _)| line[0][0] + 1.0);
        [widest[0], sizes.fold(widest[1], f64::max)]
    }

    /// Height of the whole, dimensions included, and of what lies below the axle's line, mm.
    pub fn height(&self) -> [f64; 2] {
        let view = self.view();
        let [low, high] = self.reach().map(|z| view.up * z);
        let [above, below] = self.rows(view).map(|rows| rows.height());
        let under = below + LETTERS - low;
        let sizes = self.sizes(view).into_iter().map(|([_, head], _)| head[1] + 1.0);
        [under + sizes.fold(high + LETTERS + above, f64::max), under]
    }

    /// Draws it with its center line's middle at a place; captions of rows start at `caption`.
    pub fn draw(&self, sheet: &mut Sheet, origin: Place, caption: f64) {
        let view = View::at(origin, self.scale).mirrored();
        self.draw_keep_outs(sheet, view);
        self.axle.body.pieces().iter().for_each(|piece| self.draw_piece(sheet, view, piece));
        let end = self.axle.body.spindle_end() + END / view.up;
        view.path(sheet, Layer::Center, &[[end, 0.0], [-end, 0.0]]);
        Side::BOTH.into_iter().for_each(|side| self.draw_seat(sheet, view, side));
        self.silhouettes().iter().for_each(|own| draw_stiffener(sheet, view, own));
        self.draw_sizes(sheet, view);
        let [low, high] = self.reach().map(|z| view.place([0.0, z])[1]);
        let [above, below] = self.rows(view);
        above.draw(sheet, (RowSide::Above, high + LETTERS), caption);
        below.draw(sheet, (RowSide::Below, low - LETTERS), caption);
        for cut in &self.cuts {
            draw_cut(sheet, view, (*cut, [low, high]));
        }
    }

    /// One piece on both sides of the center line; its edge is hidden under what covers it.
    fn draw_piece(&self, sheet: &mut Sheet, view: View, piece: &Piece) {
        let half = |distance: f64| 0.5 * piece.profile_at(distance).height();
        for side in [1.0, -1.0] {
            for edge in [1.0, -1.0] {
                for [from, to, covered] in self.edge_parts(piece, side, edge) {
                    let layer = if covered > 0.0 { Layer::Hidden } else { Layer::Axle };
                    view.path(
                        sheet,
                        layer,
                        &[[side * from, edge * half(from)], [side * to, edge * half(to)]],
                    );
                }
            }
            let end = half(piece.to);
            view.path(sheet, Layer::Axle, &[[side * piece.to, end], [side * piece.to, -end]]);
            draw_bore(sheet, view, (piece, side));
        }
    }

    /// Stretches of an edge, 1 where a stiffener covers them and 0 where none does.
    fn edge_parts(&self, piece: &Piece, side: f64, edge: f64) -> Vec<[f64; 3]> {
        let half = 0.5 * piece.inboard.height();
        let covers =
            |own: &&Silhouette| !own.hidden && own.low < edge * half - 1e-6 && edge * half + 1e-6 < own.high;
        let silhouettes = self.silhouettes();
        let spans: Vec<[f64; 2]> = silhouettes
            .iter()
            .filter(covers)
            .map(|own| if side > 0.0 { [own.own.from, own.own.to] } else { [-own.own.to, -own.own.from] })
            .collect();
        let inside = spans.iter().flatten().copied().filter(|y| piece.from < *y && *y < piece.to);
        let mut ends: Vec<f64> = [piece.from, piece.to].into_iter().chain(inside).collect();
        ends.sort_by(f64::total_cmp);
        let covered = |y: f64| spans.iter().any(|[from, to]| *from < y && y < *to);
        let part = |pair: &[f64]| [pair[0], pair[1], f64::from(covered(0.5 * (pair[0] + pair[1])))];
        ends.windows(2).map(part).collect()
    }

    fn draw_seat(&self, sheet: &mut Sheet, view: View, side: Side) {
        let seat = self.axle.seats.of(side);
        let half = 0.5 * profile_at(self.axle, seat.at).height();
        let ends = [seat.inner_edge(), seat.outer_edge()].map(|y| side.sign() * y);
        let [a, b] = [view.place([ends[0], half]), view.place([ends[1], -half])];
        sheet.rectangle(Layer::Seat, [a[0], a[1] + SEAT], [b[0], b[1] - SEAT]);
    }

    fn draw_keep_outs(&self, sheet: &mut Sheet, view: View) {
        for side in Side::BOTH {
            for [from, to] in keep_outs(self.axle, side) {
                let half = 0.5 * profile_at(self.axle, from).height();
                let [a, b] = [view.place([side.sign() * from, half]), view.place([side.sign() * to, -half])];
                let corners = vec![[a[0], a[1]], [b[0], a[1]], [b[0], b[1]], [a[0], b[1]]];
                hatch(sheet, &[corners], (Layer::KeepOut, true));
                sheet.rectangle(Layer::KeepOut, a, b);
            }
        }
    }

    /// Sizes of the steps of the spindle over its right end, both ends being alike: each one's leader and words, the outer
    /// ones higher, so that their words pass over the leaders of the inner ones.
    fn sizes(&self, view: View) -> Vec<([Place; 2], String)> {
        let steps = self.axle.body.pieces().iter().filter(|piece| piece.from >= self.axle.body.tube_end());
        let top = view.place([0.0, 0.5 * profile_at(self.axle, self.axle.body.tube_end()).height()])[1];
        let size = |(number, piece): (usize, &Piece)| {
            let fillet =
                piece.fillet.map_or(String::new(), |radius| format!(" R{}", self.lengths.bare(radius)));
            let foot = view.place([-0.5 * (piece.from + piece.to), 0.5 * piece.inboard.height()]);
            let head = [foot[0], top + 5.0 + 4.0 * number as f64];
            ([foot, head], format!("{}{fillet}", self.lengths.profile(&piece.outboard)))
        };
        steps.enumerate().map(size).collect()
    }

    fn draw_sizes(&self, sheet: &mut Sheet, view: View) {
        for ([foot, head], words) in self.sizes(view) {
            sheet.line(Layer::Dimension, foot, head);
            sheet.text(Layer::Text, ([head[0] - 0.8, head[1] - 2.0], Anchor::End), 2.0, words);
        }
    }

    /// A dimension between two positions, left positive, whose feature lies at a height (m).
    fn dimension(&self, view: View, [from, to]: [f64; 2], height: f64) -> Dimension {
        let (a, b) = (view.place([from.max(to), height]), view.place([from.min(to), height]));
        Dimension { span: [a[0], b[0]], feature: a[1], text: self.lengths.bare((to - from).abs()) }
    }

    fn chains_above(&self, view: View) -> Vec<Chain> {
        let chain = |of, spans: Vec<[f64; 2]>, height: f64| Chain {
            of,
            dimensions: spans.into_iter().map(|span| self.dimension(view, span, height)).collect(),
        };
        let each = |own: &Silhouette| {
            let (stiffener, high) = (&own.own, own.high);
            let (from, to, run_out) = (stiffener.from, stiffener.to, stiffener.end.length());
            let ends =
                if run_out > 0.0 { vec![[to, to - run_out], [from + run_out, from]] } else { Vec::new() };
            let (foot, high) = (own.foot, high.max(0.0));
            let runs = stiffener.weld_runs();
            let stitches = stitch_spans(&runs);
            [
                chain("run-outs", ends, foot),
                chain("stitch, gap, pitch", stitches, foot),
                chain("stiffener", vec![[to, 0.0], [0.0, from]], high),
                chain("stiffener, whole", vec![[to, from]], high),
            ]
        };
        self.silhouettes().iter().flat_map(each).collect()
    }

    fn chains_below(&self, view: View) -> Vec<Chain> {
        let body = &self.axle.body;
        let low = |y: f64| -0.5 * profile_at(self.axle, y).height();
        let both = |ends: [f64; 2]| [ends, [-ends[0], -ends[1]]];
        let chain = |of, spans: Vec<[f64; 2]>| Chain {
            of,
            dimensions: spans
                .into_iter()
                .map(|span| self.dimension(view, span, low(span[0].abs())))
                .collect(),
        };
        let changes = changes(self.axle);
        let ends = changes.iter().rev().copied().chain(changes.iter().map(|y| -y));
        let ends: Vec<f64> = ends.collect();
        let pieces = ends.windows(2).map(|pair| [pair[0], pair[1]]).collect();
        let zones = Side::BOTH.into_iter().flat_map(|side| {
            let own = keep_outs(self.axle, side).into_iter();
            own.map(move |zone| [side.sign() * zone[0], side.sign() * zone[1].min(body.tube_end())])
        });
        let [left, right] = Side::BOTH.map(|side| (self.axle.seats.of(side), side.sign()));
        let widths = [left, right].map(|(seat, sign)| [sign * seat.inner_edge(), sign * seat.outer_edge()]);
        let seats = [left, right].map(|(seat, sign)| [0.0, sign * seat.at]);
        vec![
            chain("no weld (red)", zones.collect()),
            chain("seats", widths.to_vec()),
            chain(
                if body.pieces()[0].part == Part::Tube { "tube, spindles" } else { "housing, spindles" },
                pieces,
            ),
            chain("center of seats", seats.to_vec()),
            chain(
                "whole",
                vec![both([body.spindle_end(), 0.0])[0][0]].into_iter().map(|y| [y, -y]).collect(),
            ),
        ]
    }
}

/// First stitch, first gap, and from the middle of the last stitch but one to that of the last one.
fn stitch_spans(runs: &[[f64; 2]]) -> Vec<[f64; 2]> {
    let [first, second, ..] = runs else { return Vec::new() };
    let middle = |run: &[f64; 2]| 0.5 * (run[0] + run[1]);
    let [.., before, last] = runs else { return Vec::new() };
    vec![[first[1], first[0]], [second[0], first[1]], [middle(last), middle(before)]]
}

/// Distances at which the section of the axle changes or starts to, from the center outward.
fn changes(axle: &Axle) -> Vec<f64> {
    let mut changes: Vec<f64> = axle.body.pieces().iter().map(|piece| piece.to).collect();
    if axle.body.pieces()[0].is_tapered() {
        changes.insert(0, 0.0);
    }
    changes
}

/// The hollow of a piece, hidden.
fn draw_bore(sheet: &mut Sheet, view: View, (piece, side): (&Piece, f64)) {
    let bore = |distance: f64| {
        let own = piece.profile_at(distance);
        (own.height() - 2.0 * own.wall()) * 0.5
    };
    if bore(piece.from) <= 0.0 {
        return;
    }
    for edge in [1.0, -1.0] {
        let ends = [piece.from, piece.to].map(|y| [side * y, edge * bore(y)]);
        view.path(sheet, Layer::Hidden, &ends);
    }
}

fn draw_stiffener(sheet: &mut Sheet, view: View, own: &Silhouette) {
    let layer = if own.hidden { Layer::Hidden } else { Layer::Stiffener };
    let [low, high] = own.edges();
    for edge in [&low, &high] {
        view.path(sheet, layer, edge);
    }
    for end in [0, low.len() - 1] {
        view.path(sheet, layer, &[low[end], high[end]]);
    }
    for [from, to] in own.welds() {
        view.path(sheet, Layer::Weld, &[[from, own.foot], [to, own.foot]]);
    }
}

/// Where a section is cut: a short thick line above and below with an arrow to the left and its letter.
fn draw_cut(sheet: &mut Sheet, view: View, ((y, letter), [low, high]): (Cut, [f64; 2])) {
    let x = view.place([y, 0.0])[0];
    sheet.line(Layer::Center, [x, low - 3.0], [x, high + 3.0]);
    for (level, out) in [(high + 2.5, 1.0), (low - 2.5, -1.0)] {
        sheet.line(Layer::Frame, [x, level], [x, level + out * 3.0]);
        let tip = [x - 4.0, level + out * 2.0];
        sheet.line(Layer::Dimension, [x, tip[1]], tip);
        sheet.arrow_head(Layer::Dimension, tip, [-1.0, 0.0]);
        sheet.text(Layer::Text, ([x + 0.8, level + out * 2.0 - 1.25], Anchor::Start), 2.5, letter);
    }
}
