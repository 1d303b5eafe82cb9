//! The figure of an uncertainty: how each result is distributed, and which varied key makes its variance.

use axlebow_study::{Histogram, Index, Uncertain};

use crate::number::typographic;
use crate::panels::draw_axis;
use crate::panels::finite;
use crate::panels::layout::{NOTE, PART_TITLE, STUDY_FIRST_LINE, STUDY_TITLE, TITLE_LINES};
use crate::panels::spread;
use crate::panels::{Panel, Ticks, range_of};
use crate::svg::palette::{BLUE, FAINT, INK, MUTED, ORANGE, STEEL, VERMILLION};
use crate::svg::{Canvas, Label, Point};
use crate::words::study::{StudyWords, shown, varied_words};
use crate::words::uncertainty::{percent, uncertainty_findings};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Left edge.
const LEFT: f64 = 50.0;
/// Width of a histogram.
const WIDE: f64 = 520.0;
/// Height of a histogram.
const HIGH: f64 = 190.0;
/// Room between histogram and bars, for the names of varied keys.
const NAMES: f64 = 250.0;
/// Width of the bars' axis.
const BARS: f64 = 280.0;
/// Room over a panel for its title and the names of percentiles.
const ABOVE: f64 = 62.0;
/// Room under it for the axis.
const BELOW: f64 = 34.0;
/// Results that are drawn, over all variants.
const DRAWN: usize = 6;
/// Varied keys that have bars, those that make most of the variance.
const KEYS: usize = 8;

/// Draws a histogram of each result with its percentiles and limits, and beside it bars of what each varied key makes of its
/// variance: alone, and with what it does together with others.
///
/// # Errors
/// No result that can be told of, or a value that is not finite.
pub(super) fn uncertainty_figure(words: &StudyWords<'_>, card: &ModelCard) -> Result<Svg, ReportError> {
    let Some(told) = &words.outcome.uncertainty else { return Err(ReportError::Empty { thing: "sample" }) };
    let mut canvas = Canvas::default();
    let mut level = draw_heading(&mut canvas, words);
    let own = told.variants.iter().enumerate();
    let results = own.flat_map(|(variant, own)| own.results.iter().map(move |result| (variant, result)));
    let drawn: Vec<(usize, &Uncertain)> = results.take(DRAWN).collect();
    if drawn.is_empty() {
        return Err(ReportError::Empty { thing: "sample" });
    }
    for (variant, result) in drawn {
        level = ResultPanels { words, variant, result }.draw(&mut canvas, level)?;
    }
    let invented = card.invented_note().unwrap_or_default();
    canvas.label(NOTE.label(invented, [LEFT, level + 18.0]));
    let size = [2.0 * LEFT + WIDE + NAMES + BARS, level + 34.0];
    Ok(canvas.finish(size, &words.outcome.name, "Histograms of results and bars of variance indices."))
}

fn draw_heading(canvas: &mut Canvas, words: &StudyWords<'_>) -> f64 {
    let title = wrapped(&words.outcome.name, 90, TITLE_LINES);
    let mut level = STUDY_TITLE.draw(canvas, title, [LEFT, STUDY_FIRST_LINE]) - STUDY_TITLE.step;
    for sentence in uncertainty_findings(words) {
        for line in wrapped(&sentence, 150, 2) {
            level += 19.0;
            canvas.label(Label::new(typographic_minus(&line), [LEFT, level]).color(MUTED));
        }
    }
    level + 10.0
}

/// A true minus sign before a digit; hyphens between letters stay.
fn typographic_minus(text: &str) -> String {
    let mut shown = String::with_capacity(text.len());
    let mut letters = text.chars().peekable();
    while let Some(letter) = letters.next() {
        let minus = letter == '-'
            && letters.peek().is_some_and(char::is_ascii_digit)
            && !shown.ends_with(char::is_alphanumeric);
        shown.push(if minus { '\u{2212}' } else { letter });
    }
    shown
}

/// A result of a variant: histogram and bars.
struct ResultPanels<'a> {
    words: &'a StudyWords<'a>,
    variant: usize,
    result: &'a Uncertain,
}

impl ResultPanels<'_> {
    fn draw(&self, canvas: &mut Canvas, top: f64) -> Result<f64, ReportError> {
        let Histogram { from, to, .. } = self.result.histogram;
        finite("result of a sample", [from, to].into_iter())?;
        let measure = &self.result.measure;
        let title = self.words.numbers.heading(&self.words.measure(measure), shown(measure));
        let several = self.words.outcome.variants.len() > 1;
        let of =
            if several { format!(": {}", self.words.outcome.variants[self.variant]) } else { String::new() };
        let title = wrapped(&format!("{title}{of}"), 70, 1).concat();
        canvas.label(PART_TITLE.label(title, [LEFT, top + 24.0]));
        self.draw_histogram(canvas, [LEFT, top + ABOVE]);
        if !self.result.indices.is_empty() {
            self.draw_bars(canvas, [LEFT + WIDE + NAMES, top + ABOVE]);
        }
        Ok(top + ABOVE + HIGH + BELOW)
    }

    fn draw_histogram(&self, canvas: &mut Canvas, corner: Point) {
        let Histogram { from, to, counts } = &self.result.histogram;
        let scaled = |value: f64| self.words.numbers.scaled(value, shown(&self.result.measure));
        let range = range_of([scaled(*from), scaled(*to)].into_iter(), 0.0);
        let most = counts.iter().copied().max().unwrap_or(0).max(1) as f64;
        let ends = range_of(range.into_iter().chain(self.limits()), 0.02);
        let panel = Panel { corner, size: [WIDE, HIGH], x: ends, y: [0.0, 1.08 * most], ticks: Ticks::Grid };
        draw_axis(canvas, &panel);
        let step = (range[1] - range[0]) / counts.len() as f64;
        for (i, count) in counts.iter().enumerate() {
            let [x, y] = panel.at(range[0] + step * i as f64, *count as f64);
            let width = WIDE * step / (ends[1] - ends[0]);
            let style = format!(r##"fill="{STEEL}" stroke="#ffffff" stroke-width="0.6""##);
            canvas.rectangle([x, y], [width, corner[1] + HIGH - y], &style);
        }
        canvas.line(
            [corner[0], corner[1] + HIGH],
            [corner[0] + WIDE, corner[1] + HIGH],
            &format!(r#"stroke="{INK}""#),
        );
        self.draw_percentiles(canvas, &panel);
        for limit in self.limits() {
            let x = panel.at(limit, 0.0)[0];
            let style = format!(r#"stroke="{VERMILLION}" stroke-width="2" stroke-dasharray="6 4""#);
            canvas.line([x, corner[1]], [x, corner[1] + HIGH], &style);
            let label = Label::new("limit", [x + 5.0, corner[1] + 14.0]).size(12.0).color(VERMILLION).halo();
            canvas.label(label);
        }
    }

    fn draw_percentiles(&self, canvas: &mut Canvas, panel: &Panel) {
        let Some(told) = &self.words.outcome.uncertainty else { return };
        let measure = &self.result.measure;
        let shares = told.shares.iter().zip(&self.result.percentiles);
        let mut marks: Vec<(f64, String)> = shares
            .map(|(share, own)| {
                let x = panel.at(self.words.numbers.scaled(own.value, shown(measure)), 0.0)[0];
                let value = typographic(&self.words.numbers.bare(own.value, shown(measure)));
                (x, format!("{}: {value}", percent(*share)))
            })
            .collect();
        marks.sort_by(|one, other| one.0.total_cmp(&other.0));
        let places = spread(&marks.iter().map(|mark| mark.0).collect::<Vec<_>>(), 92.0);
        let [top, bottom] = [panel.corner[1], panel.corner[1] + HIGH];
        for ((x, text), place) in marks.into_iter().zip(places) {
            let style = format!(r#"stroke="{INK}" stroke-width="1.4""#);
            canvas.polyline(&[[place, top - 10.0], [x, top], [x, bottom]], &style);
            canvas.label(Label::new(text, [place, top - 14.0]).size(12.0).middle());
        }
    }

    /// Limits on this result, in the unit in which it is shown.
    fn limits(&self) -> Vec<f64> {
        let measure = &self.result.measure;
        let own = self.words.outcome.limits.iter().filter(|limit| limit.of == measure.name);
        // Of a limit on the magnitude the end on the side of the values is drawn.
        let within = |within: f64| within.copysign(self.result.mean.value);
        let ends = own.flat_map(|limit| [limit.least, limit.most, limit.within.map(within)]);
        ends.flatten().map(|end| self.words.numbers.scaled(end, shown(measure))).collect()
    }

    /// Bars of the keys that make most of the variance.
    fn draw_bars(&self, canvas: &mut Canvas, corner: Point) {
        let mut keys: Vec<(usize, &Index)> = self.result.indices.iter().enumerate().collect();
        keys.sort_by(|one, other| other.1.total.value.total_cmp(&one.1.total.value));
        keys.truncate(KEYS);
        let panel = Panel { corner, size: [BARS, HIGH], x: [0.0, 1.0], y: [0.0, 1.0], ticks: Ticks::Grid };
        draw_axis(canvas, &panel);
        self.draw_legend(canvas, [corner[0], corner[1] - 14.0]);
        let row = (HIGH / keys.len() as f64).min(48.0);
        for (i, (place, index)) in keys.into_iter().enumerate() {
            let middle = corner[1] + row * (i as f64 + 0.5);
            let name = wrapped(&varied_words(&self.words.outcome.varied[place]), 34, 1).concat();
            canvas.label(Label::new(name, [corner[0] - 10.0, middle + 4.5]).end());
            let half = (0.36 * row).min(14.0);
            for (estimated, color, y) in [(index.first, BLUE, middle - half), (index.total, ORANGE, middle)] {
                let end = |value: f64| panel.at(value.clamp(0.0, 1.05), 0.0)[0];
                let size = [end(estimated.value) - corner[0], half - 1.0];
                canvas.rectangle([corner[0], y], size, &format!(r#"fill="{color}""#));
                if let Some(interval) = estimated.interval {
                    let level = y + 0.5 * half;
                    let [low, high] = interval.map(end);
                    canvas.line(
                        [low, level],
                        [high, level],
                        &format!(r#"stroke="{INK}" stroke-width="1.2""#),
                    );
                }
            }
        }
    }

    fn draw_legend(&self, canvas: &mut Canvas, [x, y]: Point) {
        let title = "share of the variance";
        canvas.label(Label::new(title, [x, y - 24.0]).size(13.0).bold());
        for (color, text, along) in [(BLUE, "first-order", 0.0), (ORANGE, "total-effect", 110.0)] {
            canvas.rectangle([x + along, y - 9.0], [14.0, 10.0], &format!(r#"fill="{color}""#));
            canvas.label(NOTE.label(text, [x + along + 20.0, y]));
        }
        let bar = format!(r#"stroke="{FAINT}" stroke-width="0.8""#);
        canvas.line([x, y + 14.0], [x, y + 14.0 + HIGH], &bar);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_minus_before_a_digit_is_a_true_one() {
        assert_eq!(typographic_minus("wide-base at -0.4 to -0.3"), "wide-base at \u{2212}0.4 to \u{2212}0.3");
    }
}
