//! The figure of variants side by side: bars in a panel for each result, the baseline marked.

use axlebow_study::{Measure, Row, name};

use crate::number::{fixed, typographic};
use crate::panels::finite;
use crate::panels::layout::{NOTE, PART_TITLE, STUDY_FIRST_LINE_LOWER, STUDY_TITLE, TITLE_LINES};
use crate::svg::palette::{BLUE, FAINT, INK, STEEL};
use crate::svg::{Canvas, Label, Point};
use crate::words::study::{StudyWords, groups, share, shown};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Variants that are drawn.
const VARIANTS: usize = 24;
/// Panels in a row.
const COLUMNS: usize = 4;
/// Room at the edges.
const EDGE: f64 = 36.0;
/// Room for the names of variants.
const NAMES: f64 = 262.0;
/// Letters of a name.
const LETTERS: usize = 34;
/// Longest bar.
const BAR: f64 = 122.0;
/// Room for a panel: bar, value and percentage.
const PANEL: f64 = 246.0;
/// Height of a variant's row.
const ROW: f64 = 21.0;
/// Room over the rows for the titles of panels.
const ABOVE: f64 = 44.0;
/// Letters of a line of notes.
const NOTE_LETTERS: usize = 200;

/// Draws what the study shows of each variant as bars: a block for the static load case and one for each ride, a
/// panel for each result, value and percentage of the baseline at each bar; the baseline in gray with a dashed line
/// through its ends.
///
/// # Errors
/// No variant with a result, or a value that is not finite.
pub(super) fn beside_figure(
    words: &StudyWords<'_>,
    baseline: usize,
    card: &ModelCard,
) -> Result<Svg, ReportError> {
    let outcome = words.outcome;
    if words.solved().next().is_none() || outcome.shown.is_empty() {
        return Err(ReportError::Empty { thing: "set of variants" });
    }
    let results = words.solved().flat_map(|row| outcome.shown.iter().filter_map(|own| row.value(own)));
    finite("result of a variant", results)?;
    let figure = BesideFigure { words, baseline };
    let mut canvas = Canvas::default();
    let mut top = figure.draw_heading(&mut canvas);
    for (title, measures) in groups(words) {
        canvas.label(PART_TITLE.label(title, [EDGE, top + 30.0]));
        top += 36.0;
        for part in measures.chunks(COLUMNS) {
            top = figure.draw_block(&mut canvas, part, top);
        }
    }
    let bottom = figure.draw_foot(&mut canvas, top + 26.0, card);
    let size = [2.0 * EDGE + NAMES + COLUMNS as f64 * PANEL, bottom + 10.0];
    let description =
        format!("Bars of {} variants against {}.", outcome.rows.len(), outcome.variants[baseline]);
    Ok(canvas.finish(size, &outcome.name, &description))
}

struct BesideFigure<'a> {
    words: &'a StudyWords<'a>,
    baseline: usize,
}

impl BesideFigure<'_> {
    fn rows(&self) -> &[Row] {
        &self.words.outcome.rows[..self.words.outcome.rows.len().min(VARIANTS)]
    }

    fn draw_heading(&self, canvas: &mut Canvas) -> f64 {
        let title = wrapped(&self.words.outcome.name, 90, TITLE_LINES);
        let level = STUDY_TITLE.draw(canvas, title, [EDGE, STUDY_FIRST_LINE_LOWER]) - STUDY_TITLE.step;
        let baseline = &self.words.outcome.variants[self.baseline];
        let has_rest = self.words.outcome.shown.iter().any(|own| rest(own) != 0.0);
        let from_one = if has_rest {
            ", those of an amplification begin at 1, where a cup neither grows nor fades"
        } else {
            ""
        };
        let how = format!(
            "Bars are magnitudes{from_one}; percentages are of the baseline, {baseline}: gray and dashed."
        );
        canvas.label(Label::new(wrapped(&how, 180, 1).concat(), [EDGE, level + 22.0]));
        level + 26.0
    }

    /// Panels in a row, with the names of the variants before them; gives back the lower end.
    fn draw_block(&self, canvas: &mut Canvas, measures: &[&Measure], top: f64) -> f64 {
        let rows = self.rows();
        for (i, row) in rows.iter().enumerate() {
            let base = top + ABOVE + ROW * (i as f64 + 0.7);
            let name = wrapped(&self.words.outcome.variants[row.variant], LETTERS, 1).concat();
            let label = Label::new(name, [EDGE + NAMES - 14.0, base]).end();
            canvas.label(if row.variant == self.baseline { label.bold() } else { label });
            if row.result.is_err() {
                canvas.label(NOTE.label("no result", [EDGE + NAMES + 4.0, base]));
            }
        }
        for (column, measure) in measures.iter().enumerate() {
            self.draw_panel(canvas, measure, [EDGE + NAMES + PANEL * column as f64, top]);
        }
        top + ABOVE + ROW * rows.len() as f64 + 8.0
    }

    fn draw_panel(&self, canvas: &mut Canvas, measure: &Measure, corner: Point) {
        let title = self.words.numbers.heading(&measure.words, shown(measure));
        canvas.label(Label::new(title, [corner[0], corner[1] + ABOVE - 12.0]).bold());
        let value = |row: &Row| row.value(measure);
        let values: Vec<f64> = self.rows().iter().filter_map(value).collect();
        let lengths: Vec<f64> = values.iter().map(|value| length(measure, *value)).collect();
        let (scale, zero) = (scale(&lengths), corner[0] + scale(&lengths) * below(&lengths));
        let [top, bottom] = [0.0, ROW * self.rows().len() as f64].map(|y| corner[1] + ABOVE + y);
        let baseline = self.words.outcome.rows.get(self.baseline).and_then(value);
        for (i, row) in self.rows().iter().enumerate() {
            let Some(own) = value(row) else {
                self.draw_nothing(canvas, row, [corner[0] + BAR + 56.0, top + ROW * (i as f64 + 0.7)]);
                continue;
            };
            let color = if row.variant == self.baseline { STEEL } else { BLUE };
            let level = top + ROW * i as f64;
            let reach = scale * length(measure, own);
            let bar = [reach.abs(), ROW - 7.0];
            canvas.rectangle([zero + reach.min(0.0), level + 4.0], bar, &format!(r#"fill="{color}""#));
            self.draw_numbers(canvas, measure, (own, baseline), [corner[0] + BAR, level + 0.7 * ROW]);
        }
        canvas.line([zero, top], [zero, bottom], &format!(r#"stroke="{FAINT}""#));
        if let Some(baseline) = baseline {
            let x = zero + scale * length(measure, baseline);
            canvas.line([x, top], [x, bottom], &format!(r#"stroke="{INK}" stroke-dasharray="4 3""#));
        }
    }

    /// A dash where a design has a result but not this one.
    fn draw_nothing(&self, canvas: &mut Canvas, row: &Row, at: Point) {
        if row.result.is_ok() {
            canvas.label(Label::new("\u{2013}", at).size(12.0).end());
        }
    }

    fn draw_numbers(
        &self,
        canvas: &mut Canvas,
        measure: &Measure,
        (own, baseline): (f64, Option<f64>),
        at: Point,
    ) {
        let number = typographic(&self.words.numbers.bare(own, shown(measure)));
        canvas.label(Label::new(number, [at[0] + 56.0, at[1]]).size(12.0).end());
        if let Some(share) = share(Some(own), baseline).filter(|_| rest(measure) == 0.0) {
            let percent = format!("{} %", typographic(&fixed(100.0 * share, 0)));
            canvas.label(NOTE.label(percent, [at[0] + 110.0, at[1]]).end());
        }
    }

    fn draw_foot(&self, canvas: &mut Canvas, level: f64, card: &ModelCard) -> f64 {
        let total = self.words.outcome.rows.len();
        let more = (total > VARIANTS).then(|| format!("The first {VARIANTS} of {total} variants."));
        let worse = (!self.words.outcome.rides.is_empty())
            .then(|| "What a ride says is that of the worse wheel.".to_owned());
        let invented = card.invented_note();
        let note = self.words.outcome.note.clone();
        let notes: Vec<String> = worse.into_iter().chain(more).chain(note).chain(invented).collect();
        NOTE.draw(canvas, wrapped(&notes.join(" "), NOTE_LETTERS, 3), [EDGE, level])
    }
}

/// Where a result does nothing, from which its bars are drawn: 1 of an amplification, else 0.
fn rest(measure: &Measure) -> f64 {
    let amplifies =
        [name::CUP_AMPLIFICATION, name::CUP_AMPLIFICATION_HUB_HELD].contains(&measure.name.as_str());
    if amplifies { 1.0 } else { 0.0 }
}

/// How long a bar is, in the unit of its result: a magnitude from 0, or how far it lies over where it does nothing.
fn length(measure: &Measure, value: f64) -> f64 {
    match rest(measure) {
        0.0 => value.abs(),
        rest => value - rest,
    }
}

/// How far the bars reach to the left of where they begin.
fn below(lengths: &[f64]) -> f64 {
    -lengths.iter().fold(0.0, |least: f64, own| least.min(*own))
}

/// Canvas units for each unit of the bars.
fn scale(lengths: &[f64]) -> f64 {
    let range = below(lengths) + lengths.iter().fold(0.0, |most: f64, own| most.max(*own));
    if range > 0.0 { BAR / range } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_longest_bar_fills_its_room() {
        assert_eq!(scale(&[1.0, 2.0]) * 2.0, BAR);
        assert_eq!(scale(&[0.3, -0.1]) * 0.4, BAR);
        assert_eq!((scale(&[0.0]), below(&[0.3, -0.1])), (0.0, 0.1));
    }
}
