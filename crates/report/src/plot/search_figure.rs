//! The trade-off of a search: its goal against what is traded.

use axlebow_study::{Measure, Row, SearchOutcome};

use crate::number::{Numbers, Shown};
use crate::panels::{Axis, Chart, Series, charts};
use crate::words::search::SearchWords;
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Colors that tell what is traded second.
const BANDS: usize = 4;
/// Letters of a title over one chart.
const TITLE: usize = 42;

/// Draws the designs of the trade-off: the goal across, what is traded first upward, what is traded second by color; the
/// best by the goal alone is marked.
///
/// # Errors
/// A search without a trade-off, or a value that is not finite.
pub fn search_figure(outcome: &SearchOutcome, card: &ModelCard) -> Result<Svg, ReportError> {
    let Some(first) = outcome.against.first().filter(|_| !outcome.front.is_empty()) else {
        return Err(ReportError::Empty { thing: "the trade-off of this search (`against` of `[search]`)" });
    };
    let numbers = Numbers { system: card.system };
    let trade = Trade { outcome, first, numbers };
    let goal = &outcome.goal.measure;
    let which = if outcome.goal.least { "least" } else { "most" };
    let best = Series {
        label: format!("{which} {} within the limits", goal.words),
        points: outcome.best.iter().filter_map(|row| trade.point(row)).collect(),
    };
    let chart = Chart {
        title: format!("{} against {}", goal.words, first.words),
        x: trade.axis(goal),
        y: trade.axis(first),
        series: trade.designs().into_iter().chain([best]).collect(),
        links: Vec::new(),
        footnote: card.invented_note().unwrap_or_default(),
    };
    let words = SearchWords { outcome, numbers };
    let figure = charts(&wrapped(&outcome.name, TITLE, 1)[0], &[chart])?;
    Ok(figure.with_warning_sentences(words.warnings().into_iter()))
}

struct Trade<'a> {
    outcome: &'a SearchOutcome,
    first: &'a Measure,
    numbers: Numbers,
}

impl Trade<'_> {
    fn point(&self, row: &Row) -> Option<(f64, f64)> {
        let scaled = |own: &Measure| Some(self.numbers.scaled(row.value(own)?, own.kind));
        Some((scaled(&self.outcome.goal.measure)?, scaled(self.first)?))
    }

    fn axis(&self, own: &Measure) -> Axis {
        Axis { label: self.numbers.heading(&own.words, own.kind) }
    }

    /// The front as a line; with something traded second, points in bands of that.
    fn designs(&self) -> Vec<Series> {
        let front = &self.outcome.front;
        let Some(second) = self.outcome.against.get(1) else {
            let label = format!("least {} for each {}", self.first.words, self.outcome.goal.measure.words);
            return vec![Series { label, points: front.iter().filter_map(|row| self.point(row)).collect() }];
        };
        let mut ranked: Vec<&Row> = front.iter().filter(|row| row.value(second).is_some()).collect();
        let value = |row: &Row| row.value(second).unwrap_or(f64::NAN);
        ranked.sort_by(|a, b| value(a).total_cmp(&value(b)));
        let size = ranked.len().div_ceil(BANDS).max(1);
        let band = |rows: &[&Row]| {
            let ends = [rows[0], rows[rows.len() - 1]]
                .map(|row| self.numbers.full(value(row), Shown::Free(second.kind)));
            let label = format!("{} {} to {}", second.words, ends[0], ends[1]);
            // Points of three numbers make no line: each is a series of its own, of the same name and color.
            let points = rows.iter().filter_map(|row| self.point(row));
            points.map(|point| Series { label: label.clone(), points: vec![point] }).collect::<Vec<_>>()
        };
        ranked.chunks(size).flat_map(band).collect()
    }
}
