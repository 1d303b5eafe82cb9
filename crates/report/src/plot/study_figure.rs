//! The figure of a study: a sweep's lines against the key that varies fastest and against axle mass, a map over
//! two keys, or variants side by side.

use axlebow_study::{Measure, Row, StudyKind, StudyOutcome, name};
use axlebow_units::Kind;

use super::beside_figure::beside_figure;
use super::map_figure::map_figure;
use super::sample_figure::sample_figure;
use super::uncertainty_figure::uncertainty_figure;
use super::{Axis, Chart, Link, Series, charts};
use crate::number::Numbers;
use crate::words::study::{StudyWords, shown};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Lines that are drawn.
const LINES: usize = 12;
/// Results that are drawn, a panel each.
const PANELS: usize = 6;
/// Results that the panels of designs of equal mass have.
const OF_EQUAL_MASS: [&str; 3] = [name::AXLE_MASS, name::CAMBER_CHANGE, name::LEFT_CAMBER_CHANGE];
/// Points of a line that are drawn, at most.
const POINTS: usize = 21;
/// Letters of a footnote.
const FOOTNOTE: usize = 90;

/// Draws a study.
///
/// A sweep has a panel for each of the first results that it shows, a line for each variant; a sweep that names none, or asks for
/// designs of equal mass, begins with camber change of the left wheel against the key that varies fastest and against axle mass, those
/// designs joined by dashed links. A sweep of two keys with a ride is a map of the first result. Variants side by
/// side are bars. Designs without a result leave a gap.
///
/// # Errors
/// No design with a result, or a value too large to draw.
pub fn study_figure(outcome: &StudyOutcome, card: &ModelCard) -> Result<Svg, ReportError> {
    let words = StudyWords { outcome, numbers: Numbers { system: card.system } };
    Ok(figure_of(words, card)?.with_warning_sentences(words.warnings().into_iter()))
}

fn figure_of(words: StudyWords<'_>, card: &ModelCard) -> Result<Svg, ReportError> {
    let outcome = words.outcome;
    if let StudyKind::SideBySide { baseline } = outcome.kind {
        return beside_figure(&words, baseline, card);
    }
    if outcome.uncertainty.is_some() {
        return uncertainty_figure(&words, card);
    }
    if !outcome.is_grid {
        return sample_figure(&words, card);
    }
    if let Some(lead) = words.mapped() {
        return map_figure(&words, lead, card);
    }
    let figure = StudyFigure { words };
    let mut panels = figure.panels();
    if let [first, others @ ..] = panels.as_mut_slice() {
        first.footnote = figure.footnote();
        let last = if others.is_empty() { first } else { &mut others[0] };
        let invented = card.invented_note().unwrap_or_default();
        last.footnote =
            if last.footnote.is_empty() { invented } else { format!("{invented} {}", last.footnote) };
    }
    charts(&format!("{}: {}, {}", outcome.name, card.name, outcome.case), &panels)
}

struct StudyFigure<'a> {
    words: StudyWords<'a>,
}

/// Where a design stands on an axis, in its display unit.
type Place<'a> = &'a dyn Fn(&Row) -> Option<f64>;

impl StudyFigure<'_> {
    fn panels(&self) -> Vec<Chart> {
        let along = |row: &Row| Some(self.words.along(row));
        let mut panels = Vec::new();
        if self.words.outcome.shown.is_empty() || !self.words.outcome.constant_mass.is_empty() {
            let mass_axis = self.words.numbers.heading("axle mass", Kind::Mass);
            let mass = |row: &Row| {
                Some(self.words.numbers.scaled(self.words.standing(row, name::AXLE_MASS), Kind::Mass))
            };
            panels.extend([self.chart(self.words.axis(), &along), self.chart(mass_axis, &mass)]);
        }
        let drawn = |measure: &&Measure| !panels.is_empty() && OF_EQUAL_MASS.contains(&measure.name.as_str());
        let others: Vec<&Measure> = self.words.outcome.shown.iter().filter(|own| !drawn(own)).collect();
        panels.extend(others.into_iter().map(|measure| self.measure_chart(measure, &along)));
        // A result that no design has is named under the picture.
        panels.retain(|panel| !panel.series.is_empty());
        panels.truncate(PANELS);
        panels
    }

    /// A result against the key that varies fastest.
    fn measure_chart(&self, measure: &Measure, along: Place<'_>) -> Chart {
        let value =
            |row: &Row| row.value(measure).map(|value| self.words.numbers.scaled(value, shown(measure)));
        let words = self.words.measure(measure);
        let lines = self.words.outcome.lines().take(LINES);
        Chart {
            title: wrapped(&words, 50, 1).concat(),
            x: Axis { label: self.words.axis() },
            y: Axis { label: self.words.numbers.heading(&measure.words, shown(measure)) },
            series: lines.flat_map(|line| self.series(line, along, &value)).collect(),
            links: Vec::new(),
            footnote: String::new(),
        }
    }

    fn chart(&self, x: String, place: Place<'_>) -> Chart {
        let camber_of = |row: &Row| {
            Some(self.words.numbers.scaled(self.words.standing(row, name::LEFT_CAMBER_CHANGE), Kind::Angle))
        };
        let camber =
            if self.words.sides_alike() { "camber change" } else { "camber change of the left wheel" };
        let against = x.rsplit_once(", ").map_or(x.as_str(), |(key, _)| key);
        Chart {
            title: format!("Camber change against {against}"),
            y: Axis { label: self.words.numbers.heading(camber, Kind::Angle) },
            series: self
                .words
                .outcome
                .lines()
                .take(LINES)
                .flat_map(|line| self.series(line, place, &camber_of))
                .collect(),
            links: self.links(place, &camber_of),
            x: Axis { label: x },
            footnote: String::new(),
        }
    }

    /// A line of designs, in pieces where one has no result.
    fn series(&self, line: &[Row], x: Place<'_>, y: Place<'_>) -> Vec<Series> {
        let step = line.len().saturating_sub(1).div_ceil(POINTS - 1).max(1);
        let last = line.len() - 1;
        let shown: Vec<&Row> =
            (0..line.len()).filter(|i| i % step == 0 || *i == last).map(|i| &line[i]).collect();
        let points: Vec<Option<(f64, f64)>> = shown.into_iter().map(|row| point(row, x, y)).collect();
        let pieces = points.split(Option::is_none).filter(|piece| !piece.is_empty());
        let one = |piece: &[Option<(f64, f64)>]| Series {
            label: self.words.line(&line[0]),
            points: piece.iter().flatten().copied().collect(),
        };
        pieces.map(one).collect()
    }

    /// Designs of equal mass from the uppermost to the lowest, where there is room for the label.
    fn links(&self, place: Place<'_>, camber: Place<'_>) -> Vec<Link> {
        let shared = self.words.outcome.constant_mass.iter().filter(|equal| equal.points.len() > 1);
        let link = shared.map(|equal| {
            let points = equal.points.iter().take(LINES).filter_map(|row| point(row, place, camber));
            let mut points: Vec<(f64, f64)> = points.collect();
            points.sort_by(|one, other| other.1.total_cmp(&one.1));
            Link { label: self.words.mass(equal.mass), points }
        });
        link.collect()
    }

    /// Names of results that no design has.
    fn empty(&self) -> Option<String> {
        let outcome = self.words.outcome;
        let empty =
            outcome.shown.iter().filter(|own| outcome.rows.iter().all(|row| row.value(own).is_none()));
        let names: Vec<String> = empty.map(|own| self.words.measure(own)).collect();
        (!names.is_empty()).then(|| format!("No design has a value of {}.", names.join(", ")))
    }

    fn footnote(&self) -> String {
        let lines = self.words.outcome.lines().count();
        let links = self.words.outcome.constant_mass.iter().any(|equal| equal.points.len() > 1);
        let dashed = links.then(|| "Dashed: equal axle mass.".to_owned());
        let more = (lines > LINES).then(|| format!("The first {LINES} of {lines} lines."));
        let note = self.words.outcome.note.clone();
        let notes: Vec<String> = self
            .words
            .selected()
            .into_iter()
            .chain(dashed)
            .chain(more)
            .chain(self.empty())
            .chain(note)
            .collect();
        wrapped(&notes.join(" "), FOOTNOTE, 1).concat()
    }
}

fn point(row: &Row, x: Place<'_>, y: Place<'_>) -> Option<(f64, f64)> {
    row.result.as_ref().ok()?;
    Some((x(row)?, y(row)?))
}
