//! The figure of a list or a sample: every result against every varied key, a dot for each design.

use axlebow_study::{Measure, Row, Varied};

use crate::panels::finite;
use crate::panels::layout::{NOTE, STUDY_FIRST_LINE, STUDY_TITLE, TITLE_LINES, TO_NUMBERS};
use crate::panels::{Panel, Ticks, range_of};
use crate::svg::palette::{BLUE, FAINT, GRID, MUTED, VERMILLION};
use crate::svg::{Canvas, Label, Point};
use crate::words::study::{StudyWords, shown};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Room to the left of the first column, for the numbers of the vertical axis.
const LEFT: f64 = 96.0;
/// Size of the area inside the axes.
const AREA: Point = [250.0, 180.0];
/// Room between areas.
const GAP: Point = [84.0, 54.0];
/// Results that are drawn, a row each.
const RESULTS: usize = 5;
/// Keys that are drawn, a column each.
const KEYS: usize = 5;
/// Dots of a panel, at most.
const DOTS: usize = 1500;

/// Draws the first results that a study shows against its varied keys; where it has limits, designs that meet them all are
/// blue and the others gray, and limits on a result are dashed.
///
/// # Errors
/// No design with a result, or a value that is not finite.
pub(super) fn sample_figure(words: &StudyWords<'_>, card: &ModelCard) -> Result<Svg, ReportError> {
    let outcome = words.outcome;
    let (results, keys) = (&outcome.shown, &outcome.varied);
    let (results, keys) = (&results[..results.len().min(RESULTS)], &keys[..keys.len().min(KEYS)]);
    if results.is_empty() || keys.is_empty() || outcome.rows.iter().all(|row| row.result.is_err()) {
        return Err(ReportError::Empty { thing: "sample" });
    }
    let mut canvas = Canvas::default();
    let title = format!("{}: {}, {}", outcome.name, card.name, outcome.case);
    let title = wrapped(&title, 27 * keys.len().max(2), TITLE_LINES);
    let mut level = STUDY_TITLE.draw(&mut canvas, title, [LEFT - 50.0, STUDY_FIRST_LINE]) - STUDY_TITLE.step;
    level = draw_legend(&mut canvas, words, level + 24.0) + 14.0;
    for (row, measure) in results.iter().enumerate() {
        let top = level + row as f64 * (AREA[1] + GAP[1]) + 26.0;
        let name = words.numbers.heading(&words.measure(measure), shown(measure));
        canvas.label(Label::new(wrapped(&name, 60, 1).concat(), [LEFT - 50.0, top - 10.0]).bold());
        for (place, key) in keys.iter().enumerate() {
            let corner = [LEFT + place as f64 * (AREA[0] + GAP[0]), top];
            SamplePanel { words, measure, place, key }.draw(&mut canvas, corner)?;
        }
    }
    let bottom = level + results.len() as f64 * (AREA[1] + GAP[1]) + 26.0;
    for place in 0..keys.len() {
        let middle = LEFT + place as f64 * (AREA[0] + GAP[0]) + 0.5 * AREA[0];
        let name = wrapped(&words.heading_of(place), 36, 1).concat();
        canvas.label(Label::new(name, [middle, bottom - 6.0]).middle());
    }
    let width = LEFT + keys.len().max(2) as f64 * (AREA[0] + GAP[0]) + 20.0;
    let bottom = draw_notes(&mut canvas, words, (bottom + 22.0, width), card);
    Ok(canvas.finish(
        [width, bottom],
        &outcome.name,
        "Results of a sample of designs against the varied keys.",
    ))
}

/// What the colors mean; gives back the lower end.
fn draw_legend(canvas: &mut Canvas, words: &StudyWords<'_>, level: f64) -> f64 {
    if words.outcome.limits.is_empty() {
        return level - 24.0;
    }
    let (met, x) = (words.outcome.meeting(), LEFT - 50.0);
    let others = words.outcome.designs() - met;
    let each = [(BLUE, format!("meets every limit: {met}")), (FAINT, format!("does not: {others}"))];
    for (i, (color, text)) in each.into_iter().enumerate() {
        let x = x + 220.0 * i as f64;
        canvas.disc([x + 5.0, level - 4.5], 4.5, &format!(r#"fill="{color}""#));
        canvas.label(Label::new(text, [x + 16.0, level]).color(MUTED));
    }
    level
}

fn draw_notes(
    canvas: &mut Canvas,
    words: &StudyWords<'_>,
    (level, width): (f64, f64),
    card: &ModelCard,
) -> f64 {
    let drawn = words.outcome.rows.len().div_ceil(step(words.outcome.rows.len()));
    let designs = words.outcome.designs();
    let some = (drawn < designs).then(|| format!("{drawn} of {designs} designs are drawn."));
    let invented = card.invented_note();
    let notes: Vec<String> = some.into_iter().chain(words.outcome.note.clone()).chain(invented).collect();
    NOTE.draw(canvas, wrapped(&notes.join(" "), (width / 7.0) as usize, 3), [LEFT - 50.0, level])
}

/// Every how many-th design is drawn.
fn step(rows: usize) -> usize {
    rows.div_ceil(DOTS).max(1)
}

/// One result against one key.
struct SamplePanel<'a> {
    words: &'a StudyWords<'a>,
    measure: &'a Measure,
    place: usize,
    key: &'a Varied,
}

impl SamplePanel<'_> {
    fn draw(&self, canvas: &mut Canvas, corner: Point) -> Result<(), ReportError> {
        let rows = &self.words.outcome.rows;
        let dots: Vec<(&Row, Point)> =
            rows.iter().step_by(step(rows.len())).filter_map(|row| Some((row, self.dot(row)?))).collect();
        if dots.is_empty() {
            let middle = [corner[0] + 0.5 * AREA[0], corner[1] + 0.5 * AREA[1]];
            canvas.label(Label::new("no design has a value", middle).middle().color(MUTED));
            return Ok(());
        }
        finite("result of a sample", dots.iter().flat_map(|(_, dot)| *dot))?;
        let limits = self.limits();
        let x = match self.key.choices.len() {
            0 => range_of(dots.iter().map(|(_, dot)| dot[0]), 0.05),
            choices => [-0.6, choices as f64 - 0.4],
        };
        let y = range_of(dots.iter().map(|(_, dot)| dot[1]).chain(limits.iter().copied()), 0.06);
        let ticks = if self.key.choices.is_empty() { Ticks::Grid } else { Ticks::None };
        let panel = Panel { corner, size: AREA, x, y, ticks };
        panel.draw(canvas, &[])?;
        self.draw_choices(canvas, &panel);
        let limited = !self.words.outcome.limits.is_empty();
        // Those that meet the limits over the others.
        for met in [false, true] {
            let color = if met || !limited { BLUE } else { FAINT };
            let style = format!(r#"fill="{color}" fill-opacity="0.65""#);
            for (_, dot) in dots.iter().filter(|(row, _)| (self.words.outcome.meets(row)) == met) {
                canvas.disc(panel.at(dot[0], dot[1]), 2.6, &style);
            }
        }
        for limit in limits {
            let [from, to] = x.map(|x| panel.at(x, limit));
            canvas.line(
                from,
                to,
                &format!(r#"stroke="{VERMILLION}" stroke-width="1.4" stroke-dasharray="6 4""#),
            );
        }
        Ok(())
    }

    /// Names of choices under the panel.
    fn draw_choices(&self, canvas: &mut Canvas, panel: &Panel) {
        let room = AREA[0] / self.key.choices.len().max(1) as f64;
        let bottom = panel.corner[1] + AREA[1];
        for (place, choice) in self.key.choices.iter().enumerate() {
            let x = panel.at(place as f64, panel.y[0])[0];
            canvas.line([x, panel.corner[1]], [x, bottom], &format!(r#"stroke="{GRID}""#));
            let name = wrapped(&choice.name, (room / 7.0) as usize, 1).concat();
            canvas.label(Label::new(name, [x, bottom + TO_NUMBERS]).size(12.0).middle().color(MUTED));
        }
    }

    /// Where a design stands, in the units in which it is shown.
    fn dot(&self, row: &Row) -> Option<Point> {
        let value = row.values[self.place];
        let x = if self.key.choices.is_empty() { self.words.scaled_of(self.key, value) } else { value };
        Some([x, self.words.numbers.scaled(row.value(self.measure)?, shown(self.measure))])
    }

    /// Limits on the result, in the unit in which it is shown; of its magnitude on the side of its values.
    fn limits(&self) -> Vec<f64> {
        let rows = self.words.outcome.rows.iter().filter_map(|row| row.value(self.measure));
        let side = rows.map(f64::signum).sum::<f64>();
        let own = self.words.outcome.limits.iter().filter(|limit| limit.of == self.measure.name);
        let ends = own.flat_map(|own| [own.least, own.most, own.within.map(|within| within.copysign(side))]);
        ends.flatten().map(|end| self.words.numbers.scaled(end, self.measure.kind)).collect()
    }
}
