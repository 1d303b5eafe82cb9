//! Bars: how much shoulder wear above that of upright tires each remedy leaves.

use axlebow_study::{RemediesOutcome, Standing, State};
use axlebow_units::Kind;

use crate::number::{Numbers, fixed, typographic, with_sign};
use crate::panels::finite;
use crate::panels::layout::{FIRST_LINE, NOTE, TITLE, TITLE_LINES};
use crate::panels::{Panel, Ticks, draw_axis, range_of};
use crate::svg::palette::{BLUE, FAINT, INK, MUTED, VERMILLION};
use crate::svg::{Canvas, Label};
use crate::words::remedies::{added_mass, name};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Left edge.
const LEFT: f64 = 50.0;
/// Room for the names of remedies.
const NAMES: f64 = 250.0;
/// Width of the area inside the axes.
const AREA: f64 = 470.0;
/// Height of a row.
const ROW: f64 = 28.0;
/// Room to the right for camber and mass.
const RIGHT: f64 = 230.0;
/// Most remedies that are drawn.
const MOST: usize = 16;

/// Draws a bar for each remedy, the best first, under one for the axle as it is.
///
/// # Errors
/// A value that is not finite.
pub fn remedies_figure(outcome: &RemediesOutcome, card: &ModelCard) -> Result<Svg, ReportError> {
    let rows = rows(outcome);
    finite("shoulder wear", rows.iter().map(|row| row.excess()))?;
    let mut canvas = Canvas::default();
    let title = wrapped(&card.name, 62, TITLE_LINES);
    let level = TITLE.draw(&mut canvas, title, [LEFT, FIRST_LINE]) - TITLE.step;
    canvas.label(NOTE.label(said(outcome), [LEFT, level + 22.0]));
    let corner = [LEFT + NAMES, level + 74.0];
    let panel = Panel {
        corner,
        size: [AREA, ROW * rows.len() as f64],
        x: range_of(rows.iter().map(|row| row.excess()).chain([0.0]), 0.04),
        y: [0.0, 1.0],
        ticks: Ticks::Grid,
    };
    let axis = "wear of the worst shoulder above that of upright tires, %";
    canvas.label(Label::new(axis, [corner[0], corner[1] - 12.0]).bold());
    draw_axis(&mut canvas, &panel);
    let n = Numbers { system: card.system };
    head(&mut canvas, corner[1] - 12.0);
    for (number, row) in rows.iter().enumerate() {
        row.draw(&mut canvas, &panel, (corner[1] + ROW * (number as f64 + 0.5), outcome, n));
    }
    let mut level = corner[1] + ROW * rows.len() as f64 + 44.0;
    for note in foot(outcome).into_iter().chain(card.invented_note()) {
        canvas.label(NOTE.label(note, [LEFT, level]));
        level += 18.0;
    }
    let title = format!("{}: remedies", card.name);
    Ok(canvas.finish(
        [LEFT + NAMES + AREA + RIGHT, level + 4.0],
        &title,
        "Bars of shoulder wear with each remedy.",
    ))
}

fn said(outcome: &RemediesOutcome) -> String {
    let road = outcome.road.as_ref().map_or("standing".to_owned(), |road| format!("over {road}"));
    format!("What each remedy leaves of uneven wear, {road}; the best first.")
}

fn foot(outcome: &RemediesOutcome) -> Option<String> {
    let fails = outcome.helping.iter().any(|tried| tried.standing(&outcome.base) != Standing::Holds);
    fails.then(|| {
        "Orange: a check of strength fails with it, so that the axle must not run with this alone.".to_owned()
    })
}

/// A bar.
struct Row<'a> {
    name: String,
    state: &'a State,
    color: &'static str,
}

fn rows(outcome: &RemediesOutcome) -> Vec<Row<'_>> {
    let base = Row { name: "as it is".to_owned(), state: &outcome.base, color: INK };
    let tried = outcome.helping.iter().chain(&outcome.idle).take(MOST).map(|tried| Row {
        name: name(&tried.remedy),
        state: &tried.state,
        color: match tried.standing(&outcome.base) {
            Standing::Holds => BLUE,
            Standing::StillFails | Standing::Refused => VERMILLION,
        },
    });
    std::iter::once(base).chain(tried).collect()
}

fn head(canvas: &mut Canvas, level: f64) {
    let right = LEFT + NAMES + AREA;
    canvas.label(Label::new("camber", [right + 128.0, level]).end().color(MUTED));
    canvas.label(Label::new("mass", [right + 214.0, level]).end().color(MUTED));
}

impl Row<'_> {
    /// Wear above that of upright tires, %.
    fn excess(&self) -> f64 {
        100.0 * (self.state.shoulder.wear - 1.0)
    }

    fn draw(
        &self,
        canvas: &mut Canvas,
        panel: &Panel,
        (middle, outcome, n): (f64, &RemediesOutcome, Numbers),
    ) {
        let [from, to] = [0.0, self.excess()].map(|value| panel.at(value, 0.0)[0]);
        let style = format!(r#"fill="{}" fill-opacity="0.85""#, self.color);
        canvas.rectangle([from.min(to), middle - 9.0], [(to - from).abs().max(1.0), 18.0], &style);
        let end = format!(r#"stroke="{FAINT}" stroke-width="1""#);
        canvas.line([from, middle - 12.0], [from, middle + 12.0], &end);
        let bold = |label: Label| if self.color == INK { label.bold() } else { label };
        canvas.label(bold(Label::new(&self.name, [LEFT + NAMES - 12.0, middle + 4.5]).end()));
        let right = LEFT + NAMES + AREA;
        let excess = typographic(&fixed(self.excess(), 0));
        canvas.label(bold(Label::new(excess, [right + 44.0, middle + 4.5]).end()));
        let camber = with_sign(&n.full(self.state.camber.of_larger_magnitude(), Kind::Angle));
        canvas.label(Label::new(camber, [right + 128.0, middle + 4.5]).end().color(MUTED));
        let with_unit = |added: f64| with_sign(&n.full(added, Kind::Mass));
        let mass = added_mass(outcome, self.state).map_or("0".to_owned(), with_unit);
        canvas.label(Label::new(mass, [right + 214.0, middle + 4.5]).end().color(MUTED));
    }
}
