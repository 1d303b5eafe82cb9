//! The figure of a sweep of two keys with a ride: a map of one result for each variant.

use axlebow_study::{Measure, Row};

use crate::panels::Field;
use crate::panels::finite;
use crate::panels::layout::{NOTE, PART_TITLE, STUDY_FIRST_LINE_LOWER, STUDY_TITLE, TITLE_LINES};
use crate::panels::{MapPanel, draw_color_bar, levels};
use crate::svg::palette::MUTED;
use crate::svg::{Canvas, Label, Point};
use crate::words::study::{StudyWords, key_words, shown};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg, number};

/// Maps that are drawn.
const MAPS: usize = 4;
/// Size of a map.
const AREA: Point = [520.0, 400.0];
/// Room to the left of a map for the axis numbers.
const LEFT: f64 = 90.0;
/// Room to the right of a map.
const RIGHT: f64 = 40.0;
/// Room over a map for the label of the vertical axis and names of rays.
const ABOVE: f64 = 70.0;
/// Room for the title of a map.
const TITLE: f64 = 26.0;
/// Room under a map for axis numbers and label.
const BELOW: f64 = 66.0;
/// Room for the color bar.
const BAR: f64 = 150.0;

/// Draws a measure over the two varied keys, the one that varies fastest to the right: a map for each variant, all in
/// the same colors, with lines of equal value. Where speed and a length of the road vary, dashed lines stand where
/// that length passes in one period of a natural mode, v = f L.
///
/// # Errors
/// No design with a value of the measure, or a value too large to draw.
pub(super) fn map_figure(
    words: &StudyWords<'_>,
    measure: &Measure,
    card: &ModelCard,
) -> Result<Svg, ReportError> {
    let figure = MapFigure { words, measure };
    let fields: Vec<Field> = (0..words.outcome.variants.len()).take(MAPS).map(|i| figure.field(i)).collect();
    let values = || fields.iter().flat_map(|field| &field.values).flatten().flatten().copied();
    if values().next().is_none() {
        return Err(ReportError::Empty { thing: "map of the study" });
    }
    finite("value in a map", values())?;
    let range = crate::panels::range_of(values(), 0.0);
    figure.draw(&fields, range, card)
}

struct MapFigure<'a> {
    words: &'a StudyWords<'a>,
    measure: &'a Measure,
}

impl MapFigure<'_> {
    fn draw(&self, fields: &[Field], range: [f64; 2], card: &ModelCard) -> Result<Svg, ReportError> {
        let mut canvas = Canvas::default();
        let columns = fields.len().min(2);
        let slot = [LEFT + AREA[0] + RIGHT, TITLE + ABOVE + AREA[1] + BELOW];
        // A single map has no title of its own.
        let title = if fields.len() > 1 { TITLE } else { 0.0 };
        let top = title + ABOVE + self.draw_heading(&mut canvas, card, 78 * columns + 10);
        let levels = levels(range);
        for (i, field) in fields.iter().enumerate() {
            let corner = [(i % columns) as f64 * slot[0] + LEFT, top + (i / columns) as f64 * slot[1]];
            self.draw_labels(&mut canvas, i, corner);
            let map = MapPanel { field, range, levels: &levels, rays: self.rays(i), curves: Vec::new() };
            map.draw(&mut canvas, (corner, AREA))?;
        }
        let right = columns as f64 * slot[0];
        draw_color_bar(&mut canvas, ([right, top], AREA[1]), range, &levels);
        let heading = self.words.numbers.heading(&self.measure.words, shown(self.measure));
        for (row, line) in wrapped(&heading, 20, 2).into_iter().enumerate() {
            let at = [right, top - 32.0 + 16.0 * row as f64];
            canvas.label(NOTE.label(line, at));
        }
        let rows = fields.len().div_ceil(columns) as f64;
        let bottom = top + (rows - 1.0) * slot[1] + AREA[1] + BELOW;
        let bottom = self.draw_foot(&mut canvas, (bottom + 10.0, 84 * columns + 6), (fields, card));
        let title = format!("{}: {}", self.words.outcome.name, heading);
        let names = self.words.outcome.variants.join("; ");
        Ok(canvas.finish([right + BAR, bottom + 14.0], &title, &format!("Maps of {heading}: {names}")))
    }

    fn draw_heading(&self, canvas: &mut Canvas, card: &ModelCard, letters: usize) -> f64 {
        let title = format!("{}: {}", self.words.outcome.name, self.words.measure(self.measure));
        let mut level = STUDY_TITLE.draw(
            canvas,
            wrapped(&title, letters * 5 / 9, TITLE_LINES),
            [LEFT, STUDY_FIRST_LINE_LOWER],
        ) - STUDY_TITLE.step;
        let subject = match self.measure.ride {
            Some(ride) => format!("{}. Ride: {}.", card.name, self.words.ride(ride)),
            None => format!("{}, {}.", card.name, self.words.outcome.case),
        };
        for line in wrapped(&subject, letters, 2) {
            level += 20.0;
            canvas.label(Label::new(line, [LEFT, level]));
        }
        level
    }

    fn draw_labels(&self, canvas: &mut Canvas, variant: usize, corner: Point) {
        let (x, y) = (self.words.axis(), self.words.heading_of(0));
        if self.words.outcome.variants.len() > 1 {
            let name = wrapped(&self.words.outcome.variants[variant], 56, 1).concat();
            canvas.label(PART_TITLE.label(name, [corner[0], corner[1] - 60.0]));
        }
        canvas.label(Label::new(y, [corner[0] - 60.0, corner[1] - 34.0]).color(MUTED));
        let under = [corner[0] + 0.5 * AREA[0], corner[1] + AREA[1] + 44.0];
        canvas.label(Label::new(x, under).middle());
    }

    fn draw_foot(
        &self,
        canvas: &mut Canvas,
        (level, letters): (f64, usize),
        (fields, card): (&[Field], &ModelCard),
    ) -> f64 {
        let rays = self.words.outcome.natural_modes.iter().any(|modes| !modes.is_empty());
        let key = self.words.outcome.varied.iter().filter_map(|varied| varied.of_road());
        let length = key.filter(|path| *path != "speed").map(key_words).collect::<String>();
        let rays =
            rays.then(|| format!("Dashed: speed at which the {length} passes in one period of a mode."));
        let empty = fields.iter().flat_map(|field| &field.values).flatten().any(Option::is_none);
        let empty = empty.then(|| "Gray: no value.".to_owned());
        let total = self.words.outcome.variants.len();
        let more = (total > MAPS).then(|| format!("The first {MAPS} of {total} variants."));
        let invented = card.invented_note();
        let note = self.words.outcome.note.clone();
        let selected = self.words.selected();
        let notes: Vec<String> =
            selected.into_iter().chain(rays).chain(empty).chain(more).chain(note).chain(invented).collect();
        NOTE.draw(canvas, wrapped(&notes.join(" "), letters, 3), [LEFT, level])
    }

    /// The values of a variant, in the units of axes and colors, places in rising order.
    fn field(&self, variant: usize) -> Field {
        let varied = &self.words.outcome.varied;
        let [x, y] = [1, 0].map(|i| self.rising(&varied[i].values, varied[i].kind));
        let rows: Vec<&Row> = self.words.outcome.rows.iter().filter(|row| row.variant == variant).collect();
        let value = |i: usize, j: usize| {
            let row = rows.get(i * x.len() + j)?;
            let value = row.value(self.measure)?;
            Some(self.words.numbers.scaled(value, shown(self.measure)))
        };
        let values = y.iter().map(|(_, i)| x.iter().map(|(_, j)| value(*i, *j)).collect()).collect();
        let places = |axis: Vec<(f64, usize)>| axis.into_iter().map(|(place, _)| place).collect();
        Field { values, x: places(x.clone()), y: places(y.clone()) }
    }

    /// Values in their display unit in rising order, each with its place in the list.
    fn rising(&self, values: &[f64], kind: axlebow_units::Kind) -> Vec<(f64, usize)> {
        let factor = self.words.numbers.factor(kind);
        let mut rising: Vec<(f64, usize)> =
            values.iter().enumerate().map(|(i, value)| (value / factor, i)).collect();
        rising.sort_by(|one, other| one.0.total_cmp(&other.0));
        rising
    }

    /// Modes as lines v = f L in the units of the axes.
    fn rays(&self, variant: usize) -> Vec<(String, f64)> {
        let varied = &self.words.outcome.varied;
        let factor = |i: usize| self.words.numbers.factor(varied[i].kind);
        let modes = self.words.outcome.natural_modes.get(variant).into_iter().flatten();
        let ray = modes.map(|mode| {
            let name = format!("{} {} Hz", mode.name, number::fixed(mode.frequency, 1));
            // Speed upward and length to the right, or the other way round.
            let upward = varied[0].of_road() == Some("speed");
            let slope = if upward { mode.frequency } else { mode.frequency.recip() };
            (name, slope * factor(1) / factor(0))
        });
        ray.collect()
    }
}
