//! Sections across the axle, at a stiffener and at a seat, seen from the right: forward is to the right.

use axlebow_axle::{Axle, AxleError, Fixing, Seated, Side, Stiffener};
use axlebow_sections::Profile;

use super::dimension::{Chain, Dimension, Rows, Side as RowSide};
use super::elevation::Cut;
use super::letters::{broken, text_width};
use super::primitive::{Anchor, Layer, Place, Sheet};
use super::proposal::{Lengths, clock};
use super::silhouette::profile_at;
use super::view::{View, circle};
use super::weld_symbol::{FilletSymbol, WeldSymbols};

/// Room over a section for its heading, below it for its dimension, mm.
const OVER: f64 = 12.0;
const UNDER: f64 = 9.0;
/// From a weld to the reference line of its symbol, and from one such line to the next, mm.
const RISE: f64 = 7.0;
const LINES: f64 = 10.0;
/// How far center lines run past what is cut, mm.
const PAST: f64 = 2.0;
/// Height and distance of lines of words, mm.
const WORDS: [f64; 2] = [2.0, 3.4];
/// From a section to the elbow of a weld symbol's arrow, mm.
const ELBOW: f64 = 6.0;

/// A section to be drawn.
pub(super) struct SectionView<'a> {
    axle: &'a Axle,
    lengths: Lengths,
    symbols: WeldSymbols,
    cut: Cut,
    profile: Profile,
    seated: Vec<(&'a Stiffener, Seated)>,
    seat: Option<Side>,
}

/// A weld symbol and what it points to.
struct Pointed {
    /// The edge that is welded, m.
    foot: [f64; 2],
    symbol: FilletSymbol,
    /// Whether it stands to the right (1) or the left (-1), above (1) or below (-1) its weld.
    way: f64,
    up: f64,
    /// How many others stand between it and its weld.
    number: usize,
}

/// What every section is drawn with.
#[derive(Debug, Clone, Copy)]
pub(super) struct SectionStyle {
    pub lengths: Lengths,
    pub symbols: WeldSymbols,
}

impl<'a> SectionView<'a> {
    /// The section at a cut, that of a seat where the cut goes through one.
    pub fn at(axle: &'a Axle, cut: Cut, style: SectionStyle) -> Result<Self, AxleError> {
        let profile = profile_at(axle, cut.0);
        let there = axle.stiffeners.iter().filter(|own| own.from < cut.0 && cut.0 < own.to);
        let seated = there.map(|own| Ok((own, own.on(&profile)?))).collect::<Result<_, AxleError>>()?;
        let inside = |side: &Side| {
            let seat = axle.seats.of(*side);
            let y = side.sign() * cut.0;
            seat.inner_edge() <= y && y <= seat.outer_edge()
        };
        let seat = Side::BOTH.into_iter().find(inside);
        let SectionStyle { lengths, symbols } = style;
        Ok(SectionView { axle, lengths, symbols, cut, profile, seated, seat })
    }

    /// Lowest and highest forward, lowest and highest up, m.
    fn reach(&self) -> [[f64; 2]; 2] {
        let (x, z) = (0.5 * self.profile.width(), 0.5 * self.profile.height());
        let bracket = self.seat.map(|side| 0.5 * self.axle.seats.of(side).bracket.breadth).unwrap_or(0.0);
        let under = if self.seat.is_some() { BRACKET } else { 0.0 };
        let own = [[-x.max(bracket), x.max(bracket)], [-z - under, z]];
        self.seated.iter().map(|(_, seated)| seated.outline.reach()).fold(own, |all, own| {
            [0, 1].map(|axis| [all[axis][0].min(own[axis][0]), all[axis][1].max(own[axis][1])])
        })
    }

    /// Size of what is cut, m.
    pub fn size(&self) -> [f64; 2] {
        self.reach().map(|[low, high]| high - low)
    }

    /// Room that it takes beside its own size, mm: symbols to the left and right, words under it.
    pub fn beside(&self) -> [f64; 2] {
        let pointed = self.pointed();
        let symbols = pointed.iter().map(|own| own.symbol.length(self.symbols)).fold(0.0, f64::max);
        let side = if symbols > 0.0 { symbols + ELBOW + 2.0 } else { 12.0 };
        let lines = self.words(self.words_room(side)).len() as f64;
        let stacked = pointed.iter().map(|own| own.number).max().unwrap_or(0);
        [2.0 * side, OVER + UNDER + WORDS[1] * lines + 2.0 + LINES * stacked as f64]
    }

    /// The symbols of its welds: one for each welded edge, or one for both edges of a plate that stands between its welds.
    fn pointed(&self) -> Vec<Pointed> {
        let mut pointed: Vec<Pointed> = Vec::new();
        for (own, seated) in self.seated.iter().filter(|_| self.seat.is_none()) {
            let symbol = self.lengths.fillet(own);
            let feet = seated.feet.iter().zip(own.welded_feet()).filter(|(_, welded)| *welded);
            for (foot, _) in feet.take(if symbol.both_sides { 1 } else { 2 }) {
                let [way, up] = foot.map(|own| if own >= 0.0 { 1.0 } else { -1.0 });
                let number = pointed.iter().filter(|other| [other.way, other.up] == [way, up]).count();
                pointed.push(Pointed { foot: *foot, symbol: symbol.clone(), way, up, number });
            }
        }
        pointed
    }

    fn words_room(&self, side: f64) -> f64 {
        (2.0 * side).max(62.0)
    }

    /// Draws it in a room given by its upper left corner and its width, mm.
    pub fn draw(&self, sheet: &mut Sheet, ([left, top], width): (Place, f64), scale: u32) {
        let [[low_x, high_x], [low_z, high_z]] = self.reach();
        let each = 1e3 / f64::from(scale);
        let middle = left + 0.5 * width;
        let over = OVER
            + LINES
                * self.pointed().iter().filter(|own| own.up > 0.0).map(|own| own.number).max().unwrap_or(0)
                    as f64;
        let view = View::at([middle - 0.5 * each * (low_x + high_x), top - over - each * high_z], scale);
        let heading = format!("{0} - {0}  (1 : {scale})", self.cut.1);
        sheet.text(Layer::Text, ([middle, top - 3.5], Anchor::Middle), 3.5, heading);
        if let Some(side) = self.seat {
            self.draw_bracket(sheet, view, side);
        }
        view.cut(sheet, &self.profile.outline(), (Layer::Axle, false));
        self.draw_center_lines(sheet, view);
        for (own, seated) in &self.seated {
            view.cut(sheet, &seated.outline, (Layer::Stiffener, true));
            let feet = seated.feet.iter().zip(own.welded_feet()).filter(|(_, welded)| *welded);
            for (foot, _) in feet.filter(|_| self.seat.is_none()) {
                sheet.figures.push((Layer::Weld, fillet(view.place(*foot), (view, own.weld.leg))));
            }
        }
        self.draw_symbols(sheet, view);
        self.draw_width(sheet, view, low_z);
        let mut level = view.place([0.0, low_z])[1] - UNDER - 2.5;
        for line in self.words(self.words_room(0.5 * (width - each * (high_x - low_x)))) {
            sheet.text(Layer::Text, ([middle, level], Anchor::Middle), WORDS[0], line);
            level -= WORDS[1];
        }
    }

    fn draw_center_lines(&self, sheet: &mut Sheet, view: View) {
        let reach = 0.5 * self.profile.width().max(self.profile.height()) + PAST / view.up;
        view.path(sheet, Layer::Center, &[[-reach, 0.0], [reach, 0.0]]);
        view.path(sheet, Layer::Center, &[[0.0, -reach], [0.0, reach]]);
        for (own, _) in self.seated.iter().filter(|(own, _)| own.clock != 0.0) {
            let (x, z) = own.clock.sin_cos();
            view.path(sheet, Layer::Center, &[[0.0, 0.0], [1.15 * reach * x, 1.15 * reach * z]]);
            let (from, to) = (0.5 * std::f64::consts::PI - own.clock, 0.5 * std::f64::consts::PI);
            let radius = 0.4 * reach * view.up;
            sheet.arc(Layer::Dimension, (view.origin, radius), [from.min(to), from.max(to)]);
        }
    }

    /// The width across the axle, under it.
    fn draw_width(&self, sheet: &mut Sheet, view: View, low: f64) {
        let half = 0.5 * self.profile.width();
        let (a, b) = (view.place([-half, 0.0]), view.place([half, 0.0]));
        let round = !matches!(self.profile, Profile::RectangularTube(_));
        let mark = if round { "\u{d8}" } else { "" };
        let text = format!("{mark}{}", self.lengths.bare(2.0 * half));
        let feature = view.place([0.0, low])[1];
        let width = Dimension { span: [a[0], b[0]], feature, text };
        let rows = Rows::of(vec![Chain { of: "", dimensions: vec![width] }]);
        rows.draw(sheet, (RowSide::Below, feature - 1.0), a[0]);
    }

    /// The symbols, beside what is cut, each one's arrow coming to its weld from outside.
    fn draw_symbols(&self, sheet: &mut Sheet, view: View) {
        let [[low_x, high_x], _] = self.reach();
        for Pointed { foot, symbol, way, up, number } in self.pointed() {
            let tip = view.place(foot);
            let edge = view.place([if way > 0.0 { high_x } else { low_x }, 0.0])[0];
            let elbow = [edge + way * ELBOW, tip[1] + up * (RISE + LINES * number as f64)];
            symbol.draw(sheet, self.symbols, (tip, elbow, way));
        }
    }

    /// What bears on the wall: a bracket of its breadth, and U-bolts where it is clamped; as an outline only.
    fn draw_bracket(&self, sheet: &mut Sheet, view: View, side: Side) {
        let seat = self.axle.seats.of(side);
        let (half, low) = (0.5 * seat.bracket.breadth, -0.5 * self.profile.height());
        let corners = [[-half, low], [half, low - BRACKET]].map(|corner| view.place(corner));
        sheet.rectangle(Layer::Seat, corners[0], corners[1]);
        if seat.fixing == Fixing::Clamped {
            let bolt = 0.5 * self.profile.width() + 0.5 * seat.bracket.u_bolt_diameter;
            for x in [-bolt, bolt] {
                view.path(sheet, Layer::Seat, &[[x, low - BRACKET], [x, 0.0]]);
            }
            match self.profile {
                Profile::RectangularTube(_) => {
                    let top = 0.5 * self.profile.height() + 0.5 * seat.bracket.u_bolt_diameter;
                    view.path(sheet, Layer::Seat, &[[-bolt, 0.0], [-bolt, top], [bolt, top], [bolt, 0.0]]);
                }
                _ => sheet.arc(Layer::Seat, (view.origin, view.up * bolt), [0.0, std::f64::consts::PI]),
            }
        } else {
            for x in [-half, half] {
                circle(sheet, Layer::Hidden, view.place([x, low]), 1.2);
            }
        }
    }

    /// Lines of words under it.
    fn words(&self, room: f64) -> Vec<String> {
        let lengths = self.lengths;
        let mut words = vec![format!("{} {}", self.part(), lengths.profile(&self.profile))];
        if let Some(side) = self.seat {
            let seat = self.axle.seats.of(side);
            let fixing = if seat.fixing == Fixing::Clamped { "clamped" } else { "welded" };
            words.push(format!(
                "seat, {fixing}: {} wide along the axle, bracket {} broad (outline only); leave its welds and holes alone",
                lengths.bare(seat.width),
                lengths.bare(seat.bracket.breadth)
            ));
        }
        for (own, seated) in &self.seated {
            let [_, [_, top]] = seated.outline.reach();
            let spread = (seated.feet[1][0] - seated.feet[0][0]).hypot(seated.feet[1][1] - seated.feet[0][1]);
            let gap = seated.gaps[0].max(seated.gaps[1]);
            words.push(format!("{}: {}, at {}", own.name, lengths.stiffener(own), clock(own)));
            words.push(format!(
                "highest {} over the axle's center line; welded edges {} apart; root gap {}",
                lengths.bare(top),
                lengths.bare(spread),
                lengths.bare(gap)
            ));
        }
        words.iter().flat_map(|own| broken(own, WORDS[0], room)).collect()
    }

    fn part(&self) -> &'static str {
        let pieces = self.axle.body.pieces();
        let own = pieces.iter().find(|piece| self.cut.0.abs() <= piece.to).unwrap_or(&pieces[0]);
        if self.seated.iter().any(|(own, _)| own.form.bore().is_some()) {
            return "tube inside the sleeve";
        }
        own.part.word()
    }
}

/// How deep a bracket is drawn, m.
const BRACKET: f64 = 0.03;

/// A triangle of the leg's size at a foot, pointing away from the axle's middle.
fn fillet(at: Place, (view, leg): (View, f64)) -> super::primitive::Figure {
    let (x, y) = (at[0] - view.origin[0], at[1] - view.origin[1]);
    let size = view.up * leg;
    let far = x.hypot(y).max(1e-9);
    let (out, round) = ([x / far, y / far], [y / far, -x / far]);
    let way = if x >= 0.0 { 1.0 } else { -1.0 };
    let along = [at[0] + way * size * round[0], at[1] + way * size * round[1]];
    super::primitive::Figure::Wedge([at, along, [at[0] + size * out[0], at[1] + size * out[1]]])
}

/// Where along a stretch the letter of a cut stands clear of lines (mm on a view), as a position (m).
pub(super) fn clear_cut([from, to]: [f64; 2], (view, lines): (View, &[f64])) -> f64 {
    const STEPS: usize = 40;
    let width = text_width("A", 2.5) + 1.2;
    let clearance = |y: f64| {
        let x = view.place([y, 0.0])[0];
        let off = |line: &f64| if *line < x { x - line + 0.4 } else { line - x - width };
        lines.iter().map(off).fold(f64::INFINITY, f64::min)
    };
    let candidates = (1..STEPS).map(|step| from + (to - from) * step as f64 / STEPS as f64);
    let best = candidates.map(|y| (clearance(y), y)).max_by(|a, b| a.0.total_cmp(&b.0));
    best.map_or(0.5 * (from + to), |(_, y)| y)
}
