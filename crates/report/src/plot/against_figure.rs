//! Several axles bent by the same load case, one over another.

use axlebow_axle::{CaseOutcome, Side};
use axlebow_units::Kind;

use super::Drawing;
use super::bend::Bend;
use super::drawable::drawable;
use crate::answer::{leans, percent, plain, way};
use crate::number::{Numbers, Shown, fixed};
use crate::panels::layout::{FIRST_LINE, NOTE, SUBTITLE, TITLE, TITLE_LINES};
use crate::panels::{round_down, spread};
use crate::svg::palette::{BLUE, FAINT, GREEN, GROUND, INK, MUTED, ORANGE, VERMILLION};
use crate::svg::{Canvas, Label, Point};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Axles that are drawn.
const AXLES: usize = 6;
/// Left edge and width of the drawing and of what stands over and under it.
const LEFT: f64 = 60.0;
const WIDE: f64 = 1080.0;
/// Height that the tires may take.
const TALLEST: f64 = 520.0;
/// Room over the tires for the numbers of the axles.
const ABOVE: f64 = 74.0;
/// Distance between those numbers.
const NUMBER_GAP: f64 = 30.0;
/// Height of a line of the list under the drawing.
const ROW: f64 = 34.0;
/// Places of the columns of that list.
const COLUMNS: [f64; 5] = [0.0, 44.0, 450.0, 730.0, 930.0];
/// Length of the bar of the largest lean in the list.
const BAR: f64 = 220.0;
/// How much of the axle past its middle is drawn where only one end is, m.
const PAST_MIDDLE: f64 = 0.12;
/// Parts into which the axle is cut to draw its bend.
const CUTS: usize = 120;
/// Tilt, rad, and bow over the distance between the hubs that tell axles apart: larger than where only one is drawn.
const CLEAR_TILT: f64 = 0.24;
const CLEAR_BOW: f64 = 0.10;
/// Difference of two camber changes below which the ends look alike, rad.
const ALIKE: f64 = 1e-6;
/// Colors of the axles that do not lean least.
const OTHERS: [&str; 5] = [VERMILLION, BLUE, "#a0457a", ORANGE, "#56b4e9"];

/// An axle of the drawing.
#[derive(Debug, Clone, Copy)]
pub struct AgainstAxle<'a> {
    /// What it is called: the name of its file.
    pub label: &'a str,
    /// Its outcome; the diagram runs from left to right.
    pub case: &'a CaseOutcome,
    /// Sizes of its parts.
    pub drawing: &'a Drawing,
}

impl AgainstAxle<'_> {
    /// Camber change of the wheel that leans more.
    fn camber(&self) -> f64 {
        let [left, right] = Side::BOTH.map(|side| self.case.wheels.of(side).camber_change);
        if right.abs() > left.abs() * (1.0 + 1e-9) { right } else { left }
    }

    fn is_alike(&self) -> bool {
        let [left, right] = Side::BOTH.map(|side| self.case.wheels.of(side).camber_change);
        (left - right).abs() < ALIKE
    }
}

/// Draws axles under one load case from the rear, one over another at one scale and with one factor on bow and camber
/// change, all on the line through their hubs; the one that leans least stands out. Where both ends of every axle lean
/// alike the left end is drawn alone.
///
/// - `axles`: the first is the one that the others are compared with
///
/// # Errors
/// No axle, a diagram without points, or a value that is not finite.
pub fn against_figure(axles: &[AgainstAxle<'_>], card: &ModelCard) -> Result<Svg, ReportError> {
    axles.iter().try_for_each(|own| drawable(own.case, own.drawing))?;
    let axles = &axles[..axles.len().min(AXLES)];
    let best = (0..axles.len()).min_by(|a, b| axles[*a].camber().abs().total_cmp(&axles[*b].camber().abs()));
    let best = best.ok_or(ReportError::Empty { thing: "list of axles" })?;
    let numbers = Numbers { system: card.system };
    AgainstFigure { axles, best, card, numbers, one_end: axles.iter().all(AgainstAxle::is_alike) }.draw()
}

struct AgainstFigure<'a> {
    axles: &'a [AgainstAxle<'a>],
    /// The one that leans least.
    best: usize,
    card: &'a ModelCard,
    numbers: Numbers,
    /// Whether the left end is drawn alone.
    one_end: bool,
}

/// Where the drawing stands and how large it is.
#[derive(Clone, Copy)]
struct View {
    middle: f64,
    level: f64,
    scale: f64,
    factor: f64,
}

impl View {
    fn at(&self, y: f64, z: f64) -> Point {
        [self.middle - self.scale * y, self.level - self.scale * z]
    }
}

impl AgainstFigure<'_> {
    fn draw(&self) -> Result<Svg, ReportError> {
        let mut canvas = Canvas::default();
        let factor = self.factor();
        let top = self.draw_heading(&mut canvas, factor) + ABOVE;
        let view = self.view(top, factor)?;
        let road = view.level + view.scale * self.largest_radius();
        self.draw_datum(&mut canvas, &view, road);
        for number in self.back_to_front() {
            self.draw_axle(&mut canvas, &view, number);
        }
        for side in self.sides() {
            self.draw_numbers(&mut canvas, &view, *side);
        }
        let bottom = self.draw_list(&mut canvas, road + 52.0);
        let notes = self.card.invented_note();
        let bottom = NOTE.draw(&mut canvas, notes, [LEFT, bottom + 10.0]);
        Ok(canvas.finish([2.0 * LEFT + WIDE, bottom + 12.0], &self.message(), &self.description(factor)))
    }

    /// What the drawing says, a sentence.
    fn message(&self) -> String {
        let name = |number: usize| plain(self.axles[number].label);
        let [least, own] = [self.best, 0].map(|number| self.axles[number].camber().abs());
        let most =
            |a: &usize, b: &usize| self.axles[*a].camber().abs().total_cmp(&self.axles[*b].camber().abs());
        let worst = (0..self.axles.len()).max_by(most).unwrap_or(0);
        let against = if self.best == 0 { worst } else { 0 };
        let more = self.axles[against].camber().abs();
        if more - least < ALIKE {
            return "All these axles lean their tires alike".to_owned();
        }
        let less = percent(1.0 - least / if self.best == 0 { more } else { own });
        format!("{} leans its tires {less} less than {}", name(self.best), name(against))
    }

    fn draw_heading(&self, canvas: &mut Canvas, factor: f64) -> f64 {
        let title = wrapped(&self.message(), 78, TITLE_LINES);
        let mut level = TITLE.draw(canvas, title, [LEFT, FIRST_LINE]);
        let case = self.axles[0].case;
        let words = wrapped(&format!("{}: {}", case.name, case.description), 130, 2);
        level = SUBTITLE.draw(canvas, words, [LEFT, level]);
        let end = if self.one_end { "the left end, which the right mirrors" } else { "both ends" };
        let how = format!(
            "Rear view, {end}, all at one scale on the line through the hubs (dashed). Bow and camber change drawn \u{d7}{}.",
            fixed(factor, 0)
        );
        NOTE.draw(canvas, wrapped(&how, 160, 2), [LEFT, level + 2.0])
    }

    fn view(&self, top: f64, factor: f64) -> Result<View, ReportError> {
        let reach = self.axles.iter().map(|own| reach(own.drawing)).fold(0.0, f64::max);
        if reach <= 0.0 {
            return Err(ReportError::Empty { thing: "drawing of the axles" });
        }
        let width = if self.one_end { reach + PAST_MIDDLE } else { 2.0 * reach };
        let radius = self.largest_radius();
        let scale = (WIDE / width).min(0.5 * TALLEST / radius);
        let middle = LEFT + 0.5 * (WIDE - scale * width) + scale * reach;
        Ok(View { middle, level: top + scale * radius, scale, factor })
    }

    fn largest_radius(&self) -> f64 {
        self.axles.iter().map(|own| own.drawing.largest_radius()).fold(0.0, f64::max)
    }

    /// The round factor by which the axle that bends most is easily told from the others.
    fn factor(&self) -> f64 {
        let one = |own: &AgainstAxle<'_>| {
            let hubs = own.drawing.hubs;
            let bend = Bend::new(own.case, hubs);
            let span = (hubs.left - hubs.right).abs();
            let bow = own.case.diagram.iter().map(|point| bend.height(point.y).abs()).fold(0.0, f64::max);
            (CLEAR_TILT / own.camber().abs().max(1e-9)).min(CLEAR_BOW * span / bow.max(1e-9 * span))
        };
        round_down(self.axles.iter().map(one).fold(1e6, f64::min)).max(1.0)
    }

    /// The axles in the order in which they are drawn: the best one last.
    fn back_to_front(&self) -> impl Iterator<Item = usize> {
        (0..self.axles.len()).filter(|number| *number != self.best).chain([self.best])
    }

    fn sides(&self) -> &'static [Side] {
        if self.one_end { &[Side::Left] } else { &Side::BOTH }
    }

    fn color(&self, number: usize) -> &'static str {
        let turn = if number > self.best { number - 1 } else { number };
        if number == self.best { GREEN } else { OTHERS[turn % OTHERS.len()] }
    }

    fn draw_datum(&self, canvas: &mut Canvas, view: &View, road: f64) {
        canvas.rectangle([LEFT, road], [WIDE, 8.0], &format!(r#"fill="{GROUND}""#));
        canvas.line([LEFT, road], [LEFT + WIDE, road], &format!(r#"stroke="{INK}" stroke-width="1.5""#));
        let dashed = format!(r#"stroke="{FAINT}" stroke-width="1.2" stroke-dasharray="10 6""#);
        canvas.line([LEFT, view.level], [LEFT + WIDE, view.level], &dashed);
        let bottom = view.level + view.scale * self.largest_radius();
        canvas.line([view.middle, view.level - 60.0], [view.middle, bottom], &dashed);
        canvas.label(
            Label::new("center of the axle", [view.middle + 8.0, bottom - 12.0]).size(12.0).color(MUTED),
        );
    }

    fn draw_axle(&self, canvas: &mut Canvas, view: &View, number: usize) {
        let own = &self.axles[number];
        let (color, is_best) = (self.color(number), number == self.best);
        let stroke = if is_best { 4.5 } else { 2.2 };
        for side in self.sides() {
            self.draw_tires(canvas, view, (number, *side));
        }
        let bend = Bend::new(own.case, own.drawing.hubs);
        let inner = if self.one_end { -PAST_MIDDLE } else { own.drawing.hubs.right };
        let line = (0..=CUTS).map(|cut| {
            let y = own.drawing.hubs.left + cut as f64 / CUTS as f64 * (inner - own.drawing.hubs.left);
            view.at(y, view.factor * bend.height(y))
        });
        let style = format!(r#"stroke="{color}" stroke-width="{stroke}" stroke-linejoin="round""#);
        canvas.polyline(&line.collect::<Vec<_>>(), &style);
    }

    fn draw_tires(&self, canvas: &mut Canvas, view: &View, (number, side): (usize, Side)) {
        let own = &self.axles[number];
        let (color, is_best) = (self.color(number), number == self.best);
        let turn = -side.sign() * (view.factor * own.case.wheels.of(side).camber_change).to_degrees();
        let [x, y] = view.at(*own.drawing.hubs.of(side), 0.0).map(crate::svg::coordinate);
        let (stroke, fill) = if is_best { (3.0, 0.10) } else { (1.6, 0.0) };
        canvas.group(&format!(r#"transform="rotate({turn:.3} {x} {y})""#), |inside| {
            for tire in own.drawing.tires.of(side) {
                let corner = view.at(tire.y + 0.5 * tire.width, tire.radius);
                let size = [view.scale * tire.width, 2.0 * view.scale * tire.radius];
                let rounding = 0.22 * size[0];
                let style = format!(
                    r#"fill="{color}" fill-opacity="{fill}" stroke="{color}" stroke-width="{stroke}" rx="{rounding:.1}""#
                );
                inside.rectangle(corner, size, &style);
            }
        });
    }

    /// The axles' numbers over the tops of their wheels.
    fn draw_numbers(&self, canvas: &mut Canvas, view: &View, side: Side) {
        let top = |number: usize| {
            let own = &self.axles[number];
            let radius = own.drawing.tires.of(side).iter().map(|tire| tire.radius).fold(0.0, f64::max);
            let tilt = view.factor * own.case.wheels.of(side).camber_change;
            let out = side.sign() * radius * tilt.sin();
            view.at(*own.drawing.hubs.of(side) + out, radius * tilt.cos())
        };
        let mut order: Vec<(usize, Point)> =
            (0..self.axles.len()).map(|number| (number, top(number))).collect();
        order.sort_by(|a, b| a.1[0].total_cmp(&b.1[0]));
        let wanted: Vec<f64> = order.iter().map(|(_, at)| at[0]).collect();
        let level = view.level - view.scale * self.largest_radius() - 30.0;
        for ((number, at), x) in order.into_iter().zip(spread(&wanted, NUMBER_GAP)) {
            let color = self.color(number);
            canvas.polyline(&[at, [x, level + 6.0]], &format!(r#"stroke="{color}" stroke-width="1.2""#));
            canvas.label(
                Label::new(format!("{}", number + 1), [x, level]).size(18.0).bold().middle().color(color),
            );
        }
    }

    /// The axles from least to most lean: number, name, lean of each end, against the first, bow.
    fn draw_list(&self, canvas: &mut Canvas, top: f64) -> f64 {
        let mut order: Vec<usize> = (0..self.axles.len()).collect();
        order.sort_by(|a, b| self.axles[*a].camber().abs().total_cmp(&self.axles[*b].camber().abs()));
        let mut level = top;
        for number in order {
            let (own, is_best) = (&self.axles[number], number == self.best);
            if is_best {
                let style = format!(r#"fill="{GREEN}" fill-opacity="0.12" rx="6""#);
                canvas.rectangle([LEFT - 12.0, level - 20.0], [WIDE + 24.0, ROW], &style);
            }
            let cells = [
                format!("{}", number + 1),
                wrapped(&plain(own.label), 40, 1).concat(),
                self.lean_words(own),
                self.against_first(number),
                format!("bow {}", self.numbers.full(own.case.bow, Shown::Deflection)),
            ];
            for (cell, column) in cells.into_iter().zip(COLUMNS) {
                let color = if column == 0.0 { self.color(number) } else { INK };
                let label = Label::new(cell, [LEFT + column, level]).size(16.0).color(color);
                canvas.label(if is_best || column == 0.0 { label.bold() } else { label });
            }
            let worst = self.axles.iter().map(|own| own.camber().abs()).fold(1e-12, f64::max);
            let bar = [BAR * own.camber().abs() / worst, 4.0];
            let style = format!(r#"fill="{}""#, self.color(number));
            canvas.rectangle([LEFT + COLUMNS[2], level + 6.0], bar, &style);
            level += ROW;
        }
        level
    }

    fn lean_words(&self, own: &AgainstAxle<'_>) -> String {
        if self.one_end {
            return leans(own.camber(), self.numbers);
        }
        let [left, right] = Side::BOTH.map(|side| {
            let camber = own.case.wheels.of(side).camber_change;
            format!("{} {}", way(camber), fixed(self.numbers.scaled(camber.abs(), Kind::Angle), 2))
        });
        format!("left {left}, right {right} {}", self.numbers.unit(Kind::Angle))
    }

    fn against_first(&self, number: usize) -> String {
        let share = self.axles[number].camber().abs() / self.axles[0].camber().abs() - 1.0;
        match share {
            _ if number == 0 || !share.is_finite() => String::new(),
            less if less < 0.0 => format!("{} less than 1", percent(-less)),
            more => format!("{} more than 1", percent(more)),
        }
    }

    fn description(&self, factor: f64) -> String {
        let each = self.axles.iter().map(|own| format!("{} {}", plain(own.label), self.lean_words(own)));
        let each = each.collect::<Vec<_>>().join("; ");
        format!(
            "Axles from the rear, one over another, bow and camber change drawn {} times: {each}.",
            fixed(factor, 0)
        )
    }
}

/// How far from the middle an axle's drawing reaches, m.
fn reach(drawing: &Drawing) -> f64 {
    let tires = drawing.tires.left.iter().chain(&drawing.tires.right);
    let reach = tires.map(|tire| tire.y.abs() + 0.5 * tire.width + 0.25 * tire.radius);
    reach.chain([1.05 * drawing.hubs.left.abs()]).fold(0.0, f64::max)
}
