//! Cross-sections side by side, to one scale.

use axlebow_sections::Profile;
use axlebow_units::Kind;

use super::stiffened_panel::{StiffenedPanel, reach};
use crate::number::{Numbers, Shown, fixed, with_power};
use crate::panels::layout::NOTE;
use crate::svg::palette::{BLUE, FAINT, INK, MUTED, STEEL};
use crate::svg::{Canvas, Label, Point};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, SectionCard, StiffenedCard, Svg};

/// Most sections in a row.
const COLUMNS: usize = 4;
/// Width of the room for one section.
const SLOT: f64 = 300.0;
/// Size of the largest section.
const LARGEST: f64 = 150.0;
/// Room over a section for its name and reach.
const ABOVE: f64 = 74.0;
/// Height of a row of values.
const ROW: f64 = 20.0;
/// Chords that stand for a quarter of a circle.
const CHORDS: usize = 16;
/// Letters of a section's name.
const NAME: usize = 32;
/// Room at the edges of the figure.
const EDGE: f64 = 40.0;

/// Draws cross-sections side by side to one scale, with dimensions, neutral axis and properties.
///
/// Up is up and forward is to the right.
///
/// - `sections`: from the center outward
/// - `stiffened`: stretches with stiffeners, drawn after those
///
/// # Errors
/// No sections.
pub fn section_figure(
    sections: &[SectionCard],
    stiffened: &[StiffenedCard],
    card: &ModelCard,
) -> Result<Svg, ReportError> {
    let bare = sections.iter().map(|s| s.profile.width().max(s.profile.height()));
    let welded = stiffened.iter().flat_map(reach).map(|[low, high]| high - low);
    let largest = bare.chain(welded).fold(0.0, f64::max);
    if largest <= 0.0 {
        return Err(ReportError::Empty { thing: "list of sections" });
    }
    let count = sections.len() + stiffened.len();
    let columns = count.clamp(2, COLUMNS);
    let figure = SectionFigure { numbers: Numbers { system: card.system }, scale: LARGEST / largest };
    let mut canvas = Canvas::default();
    let top = draw_heading(&mut canvas, (&card.name, marks(stiffened)), columns);
    let rows = sections.iter().map(|section| figure.values(section).len());
    let rows = rows.chain(stiffened.iter().map(|card| figure.panel().values(card).len())).max().unwrap_or(0);
    let height = ABOVE + LARGEST + 70.0 + ROW * rows as f64 + 30.0;
    let corner = |i: usize| [EDGE + (i % columns) as f64 * SLOT, top + (i / columns) as f64 * height];
    for (i, section) in sections.iter().enumerate() {
        figure.draw(&mut canvas, section, corner(i));
    }
    for (i, card) in stiffened.iter().enumerate() {
        figure.draw_stiffened(&mut canvas, card, corner(sections.len() + i));
    }
    let bottom = top + count.div_ceil(columns) as f64 * height;
    if let Some(note) = card.invented_note() {
        canvas.label(NOTE.label(note, [EDGE, bottom]));
    }
    let names = sections.iter().map(|section| section.name.clone());
    let names: Vec<String> = names.chain(stiffened.iter().map(StiffenedCard::name)).collect();
    let size = [2.0 * EDGE + columns as f64 * SLOT, bottom + 30.0];
    Ok(canvas.finish(size, &format!("{}: cross-sections", card.name), &names.join("; ")))
}

/// What the marks in stiffened sections mean.
fn marks(stiffened: &[StiffenedCard]) -> &'static str {
    match stiffened {
        [] => "",
        [card, ..] if card.stress.is_none() => " Dot: centroid; crossed ring: shear center.",
        _ => " Dot: centroid; crossed ring: shear center; red: lowest and highest stress.",
    }
}

/// Name of the model and how to read the figure; gives back where the sections start.
fn draw_heading(canvas: &mut Canvas, (name, marks): (&str, &str), columns: usize) -> f64 {
    let mut level = 22.0;
    for line in wrapped(name, 22 * columns, 2) {
        level += 28.0;
        canvas.label(Label::new(line, [EDGE, level]).size(20.0).bold());
    }
    let note = format!(
        "Cross-sections to one scale, seen along the axle: up is up, forward is to the right.{marks}"
    );
    for line in wrapped(&note, 42 * columns, 3) {
        level += 20.0;
        canvas.label(NOTE.label(line, [EDGE, level]));
    }
    level + 20.0
}

struct SectionFigure {
    numbers: Numbers,
    scale: f64,
}

impl SectionFigure {
    fn panel(&self) -> StiffenedPanel {
        StiffenedPanel { numbers: self.numbers, scale: self.scale }
    }

    fn draw_stiffened(&self, canvas: &mut Canvas, card: &StiffenedCard, corner: Point) {
        let whole = card.name();
        let name = if whole.chars().count() > NAME { card.stretch.stiffeners.join(" + ") } else { whole };
        let center = self.draw_title(canvas, (&name, [card.stretch.to, card.stretch.from]), corner);
        self.draw_whole(canvas, card, center);
        self.panel().draw(canvas, card, center);
        draw_values(canvas, &self.panel().values(card), corner);
    }

    /// Breadth and height over all.
    fn draw_whole(&self, canvas: &mut Canvas, card: &StiffenedCard, [x, y]: Point) {
        let [broad, high] = reach(card).map(|[low, high]| high - low);
        let [half_width, half_height] = [broad, high].map(|size| 0.5 * self.scale * size);
        let size = |length: f64| self.numbers.full(length, Shown::Place);
        let level = y + 0.5 * LARGEST + 18.0;
        dimension_below(canvas, ([x - half_width, x + half_width], y), level, size(broad));
        let left = x - half_width - 26.0;
        dimension_beside(canvas, ([y - half_height, y + half_height], x), left, size(high));
    }

    fn draw(&self, canvas: &mut Canvas, section: &SectionCard, corner: Point) {
        let center = self.draw_title(canvas, (&section.name, section.reach), corner);
        self.draw_dimensions(canvas, &section.profile, center);
        self.draw_outline(canvas, &section.profile, center);
        draw_values(canvas, &self.values(section), corner);
    }

    /// Name and place of a section; gives back the middle of its drawing.
    fn draw_title(&self, canvas: &mut Canvas, (name, reach): (&str, [f64; 2]), corner: Point) -> Point {
        let middle = corner[0] + 0.5 * SLOT - 10.0;
        let name = wrapped(name, NAME, 1).concat();
        canvas.label(Label::new(name, [middle, corner[1] + 22.0]).middle().size(14.0).bold());
        let ends = reach.map(|y| fixed(self.numbers.scaled(y, Shown::Place), 1));
        let unit = self.numbers.unit(Shown::Place);
        let place = match reach[0] == reach[1] {
            true => format!("at {} {unit}", ends[0]),
            false => format!("from {} to {} {unit}", ends[0], ends[1]),
        };
        let place = crate::number::typographic(&place);
        canvas.label(Label::new(place, [middle, corner[1] + 42.0]).middle().size(12.0).color(MUTED));
        [middle, corner[1] + ABOVE + 0.5 * LARGEST]
    }

    fn draw_outline(&self, canvas: &mut Canvas, profile: &Profile, center: Point) {
        let place = |edge: &[[f64; 2]]| -> Vec<Point> {
            edge.iter().map(|&[x, z]| [center[0] + self.scale * x, center[1] - self.scale * z]).collect()
        };
        let outline = profile.outline();
        let style = |fill: &str| format!(r#"fill="{fill}" stroke="{INK}" stroke-width="1.3""#);
        canvas.polygon(&place(&outline.outside().polygon(CHORDS)), &style(STEEL));
        for hole in outline.holes() {
            canvas.polygon(&place(&hole.polygon(CHORDS)), &style("#ffffff"));
        }
        let half = 0.5 * self.scale * profile.width();
        let [left, right] = [center[0] - half - 14.0, center[0] + half + 62.0];
        let axis = format!(r#"stroke="{BLUE}" stroke-width="1" stroke-dasharray="12 3 2 3""#);
        canvas.line([left, center[1]], [right, center[1]], &axis);
        for (word, drop) in [("neutral", -6.0), ("axis", 14.0)] {
            canvas.label(Label::new(word, [right, center[1] + drop]).end().size(11.0).color(BLUE));
        }
    }

    fn draw_dimensions(&self, canvas: &mut Canvas, profile: &Profile, [x, y]: Point) {
        let [half_width, half_height] =
            [profile.width(), profile.height()].map(|size| 0.5 * self.scale * size);
        let size = |length: f64| self.numbers.full(length, Shown::Place);
        let round = !matches!(profile, Profile::RectangularTube(_));
        let sign = if round { "\u{2300} " } else { "" };
        let level = y + 0.5 * LARGEST + 18.0;
        let across = [x - half_width, x + half_width];
        dimension_below(canvas, (across, y), level, format!("{sign}{}", size(profile.width())));
        if !round {
            let upright = [y - half_height, y + half_height];
            dimension_beside(canvas, (upright, x), x - half_width - 26.0, size(profile.height()));
        }
    }

    fn values(&self, section: &SectionCard) -> Vec<(String, String)> {
        let p = &section.properties;
        let value = |value: f64, kind: Kind| self.numbers.full(value, Shown::Free(kind));
        let mut rows = walls(&section.profile, self.numbers);
        rows.extend([
            ("area", value(p.area, Kind::Area)),
            ("second moment, vertical", value(p.second_moment_x, Kind::SecondMoment)),
            ("second moment, fore-aft", value(p.second_moment_z, Kind::SecondMoment)),
            ("torsion constant", value(p.torsion_constant, Kind::SecondMoment)),
            ("section modulus, vertical", value(p.section_modulus_x(), Kind::SectionModulus)),
            ("shear coefficient, vertical", fixed(p.shear_coefficient_z, 3)),
            ("mass per length", value(section.mass_per_length, Kind::MassPerLength)),
        ]);
        rows.into_iter().map(|(name, value)| (name.to_owned(), value)).collect()
    }
}

/// A size below a section: from where to where, and the level from which its ends are led down.
fn dimension_below(canvas: &mut Canvas, (ends, from): ([f64; 2], f64), level: f64, text: String) {
    let style = format!(r#"stroke="{FAINT}" stroke-width="1""#);
    for end in ends {
        canvas.line([end, from], [end, level + 5.0], &style);
    }
    canvas.line([ends[0], level], [ends[1], level], &style);
    let middle = 0.5 * (ends[0] + ends[1]);
    canvas.label(Label::new(text, [middle, level + 16.0]).middle().size(12.0).halo());
}

/// A size beside a section, on its left.
fn dimension_beside(canvas: &mut Canvas, (ends, from): ([f64; 2], f64), left: f64, text: String) {
    let style = format!(r#"stroke="{FAINT}" stroke-width="1""#);
    for end in ends {
        canvas.line([left - 5.0, end], [from, end], &style);
    }
    canvas.line([left, ends[0]], [left, ends[1]], &style);
    let middle = 0.5 * (ends[0] + ends[1]);
    canvas.label(Label::new(text, [left - 7.0, middle]).middle().size(12.0).turn(-90.0));
}

/// Names and values in rows under a section.
fn draw_values(canvas: &mut Canvas, rows: &[(String, String)], corner: Point) {
    let top = corner[1] + ABOVE + LARGEST + 70.0;
    for (row, (label, value)) in rows.iter().enumerate() {
        let level = top + ROW * row as f64;
        canvas.label(NOTE.label(label.as_str(), [corner[0] + 10.0, level]));
        canvas.label(Label::new(with_power(value), [corner[0] + SLOT - 30.0, level]).end().size(12.0));
    }
}

/// The sizes that the drawing does not show.
fn walls(profile: &Profile, numbers: Numbers) -> Vec<(&'static str, String)> {
    let size = |length: f64| numbers.full(length, Shown::Free(Kind::Length));
    match profile {
        Profile::RoundTube(tube) => vec![("wall", size(tube.wall()))],
        Profile::RoundBar(_) => vec![("wall", "solid".to_owned())],
        Profile::RectangularTube(tube) => {
            vec![("wall", size(tube.wall())), ("outside corner radius", size(tube.corner_radius()))]
        }
    }
}
