//! The figure of a study: camber change against the key that varies fastest and against axle mass.

use axlebow_study::{Design, Row, StudyOutcome};

use super::text::{INVENTED, wrapped};
use super::{Axis, Chart, Link, Series, charts};
use crate::number::{Numbers, Shown};
use crate::study_words::StudyWords;
use crate::{ModelCard, ReportError, Svg};

/// Lines that are drawn.
const LINES: usize = 12;
/// Points of a line that are drawn, at most.
const POINTS: usize = 21;
/// Letters of a footnote.
const FOOTNOTE: usize = 90;

/// Draws a study: two panels, a line for each variant, designs of equal mass joined by dashed links.
///
/// Camber change is that of the left wheel. Designs without a result leave a gap.
///
/// # Errors
/// No design with a result, or a value too large to draw.
pub fn study_figure(outcome: &StudyOutcome, card: &ModelCard) -> Result<Svg, ReportError> {
    let figure = StudyFigure { words: StudyWords { outcome, numbers: Numbers { system: card.system } } };
    let mass_axis = figure.words.numbers.heading("axle mass", Shown::Mass);
    let mass = |_: &Row, design: &Design| figure.words.numbers.scaled(design.axle_mass, Shown::Mass);
    let mut panels = [
        figure.chart(figure.words.axis(), &|row, _| figure.words.along(row)),
        figure.chart(mass_axis, &mass),
    ];
    panels[0].footnote = figure.footnote();
    panels[1].footnote = if card.invented { INVENTED.to_owned() } else { String::new() };
    charts(&format!("{}: {}, {}", outcome.name, card.name, outcome.case), &panels)
}

struct StudyFigure<'a> {
    words: StudyWords<'a>,
}

impl StudyFigure<'_> {
    fn chart(&self, x: String, place: &dyn Fn(&Row, &Design) -> f64) -> Chart {
        let camber =
            if self.words.sides_alike() { "camber change" } else { "camber change of the left wheel" };
        let against = x.rsplit_once(", ").map_or(x.as_str(), |(key, _)| key);
        Chart {
            title: format!("Camber change against {against}"),
            y: Axis { label: self.words.numbers.heading(camber, Shown::Angle) },
            series: self
                .words
                .outcome
                .lines()
                .take(LINES)
                .flat_map(|line| self.series(line, place))
                .collect(),
            links: self.links(place),
            x: Axis { label: x },
            footnote: String::new(),
        }
    }

    /// A line of designs, in pieces where one has no result.
    fn series(&self, line: &[Row], place: &dyn Fn(&Row, &Design) -> f64) -> Vec<Series> {
        let step = line.len().saturating_sub(1).div_ceil(POINTS - 1).max(1);
        let last = line.len() - 1;
        let shown: Vec<&Row> =
            (0..line.len()).filter(|i| i % step == 0 || *i == last).map(|i| &line[i]).collect();
        let pieces = shown.split(|row| row.result.is_err()).filter(|piece| !piece.is_empty());
        let one = |piece: &[&Row]| Series {
            label: self.words.line(&line[0]),
            points: piece.iter().filter_map(|row| self.point(row, place)).collect(),
        };
        pieces.map(one).collect()
    }

    /// Designs of equal mass from the uppermost to the lowest, where there is room for the label.
    fn links(&self, place: &dyn Fn(&Row, &Design) -> f64) -> Vec<Link> {
        let shared = self.words.outcome.constant_mass.iter().filter(|equal| equal.points.len() > 1);
        let link = shared.map(|equal| {
            let points = equal.points.iter().take(LINES).filter_map(|row| self.point(row, place));
            let mut points: Vec<(f64, f64)> = points.collect();
            points.sort_by(|one, other| other.1.total_cmp(&one.1));
            Link { label: self.words.mass(equal.mass), points }
        });
        link.collect()
    }

    fn point(&self, row: &Row, place: &dyn Fn(&Row, &Design) -> f64) -> Option<(f64, f64)> {
        let design = row.result.as_ref().ok()?;
        Some((place(row, design), self.words.numbers.scaled(design.camber_change.left, Shown::Angle)))
    }

    fn footnote(&self) -> String {
        let lines = self.words.outcome.lines().count();
        let links = self.words.outcome.constant_mass.iter().any(|equal| equal.points.len() > 1);
        let dashed = links.then(|| "Dashed: equal axle mass.".to_owned());
        let more = (lines > LINES).then(|| format!("The first {LINES} of {lines} lines."));
        let note = self.words.outcome.note.clone();
        let notes: Vec<String> = dashed.into_iter().chain(more).chain(note).collect();
        wrapped(&notes.join(" "), FOOTNOTE, 1).concat()
    }
}
