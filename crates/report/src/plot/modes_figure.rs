//! Natural modes as small panels.

use axlebow_axle::{ModeOutcome, ModesOutcome};
use axlebow_units::Kind;

use super::mode_panel::{ModePanel, Trace, draw_end};
use crate::number::{Numbers, Shown, significant};
use crate::panels::finite;
use crate::panels::layout::{FIRST_LINE, NOTE, SUBTITLE, TITLE, TITLE_LETTERS, TITLE_LINES};
use crate::svg::palette::FAINT;
use crate::svg::{Canvas, Label, Point};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Modes that are drawn.
const MOST: usize = 12;
/// Panels in a row.
const COLUMNS: usize = 3;
/// Size of the area inside the axes.
const AREA: Point = [320.0, 150.0];
/// From one panel to the next.
const STEP: Point = [376.0, 222.0];
/// Left end of the first panel.
const LEFT: f64 = 64.0;
/// Room over a panel for its title.
const ABOVE: f64 = 44.0;
/// Width of a letter of the legend, generous.
const LETTER: f64 = 7.4;
/// Height of a row of the legend.
const LEGEND_ROW: f64 = 24.0;

/// Draws natural modes, one panel each and at most twelve: vertical and fore-aft motion of the axle line against
/// position, left of the vehicle on the left.
///
/// Each panel is scaled to its largest motion. Lateral motion is drawn where it has a good part of the kinetic
/// energy, rotation about the axle line alone where it has most of it, the vehicle body where it takes part.
///
/// - `card`: name of the model and units
///
/// # Errors
/// No modes, a mode without a shape, or a value that is not finite.
pub fn modes_figure(outcome: &ModesOutcome, card: &ModelCard) -> Result<Svg, ReportError> {
    if outcome.modes.is_empty() {
        return Err(ReportError::Empty { thing: "list of modes" });
    }
    let shown = &outcome.modes[..outcome.modes.len().min(MOST)];
    shown.iter().try_for_each(drawable)?;
    let panels = shown.iter().map(ModePanel::new).collect();
    let numbers = Numbers { system: card.system };
    ModesFigure { outcome, panels, card, numbers }.draw()
}

fn drawable(mode: &ModeOutcome) -> Result<(), ReportError> {
    if mode.shape.is_empty() {
        return Err(ReportError::Empty { thing: "shape of a mode" });
    }
    let shape = mode.shape.iter().flat_map(|point| [point.y].into_iter().chain(point.motion));
    finite("shape of a mode", shape.chain(mode.body))?;
    finite("frequency or damping of a mode", [mode.frequency, mode.damping_ratio].into_iter())
}

struct ModesFigure<'a> {
    outcome: &'a ModesOutcome,
    panels: Vec<ModePanel<'a>>,
    card: &'a ModelCard,
    numbers: Numbers,
}

impl ModesFigure<'_> {
    fn draw(&self) -> Result<Svg, ReportError> {
        let mut canvas = Canvas::default();
        let columns = self.panels.len().min(COLUMNS);
        let width = LEFT + COLUMNS as f64 * STEP[0];
        let top = self.draw_heading(&mut canvas) + ABOVE;
        for (i, panel) in self.panels.iter().enumerate() {
            let [column, row] = [i % columns, i / columns].map(|place| place as f64);
            panel.draw(&mut canvas, self.numbers, [[LEFT + STEP[0] * column, top + STEP[1] * row], AREA])?;
        }
        let bottom = top + STEP[1] * (self.panels.len().div_ceil(columns) - 1) as f64 + AREA[1];
        let right = LEFT + STEP[0] * (columns - 1) as f64 + AREA[0];
        let foot = self.draw_foot(&mut canvas, bottom + 46.0, right);
        let title = format!("{}: natural modes", self.card.name);
        Ok(canvas.finish([width, foot + 16.0], &title, &self.description()))
    }

    fn draw_heading(&self, canvas: &mut Canvas) -> f64 {
        let name = wrapped(&self.card.name, TITLE_LETTERS, TITLE_LINES);
        let level = TITLE.draw(canvas, name, [LEFT, FIRST_LINE]);
        let all = self.outcome.modes.len();
        let more = if all > MOST { format!(", the first {MOST} of {all}") } else { String::new() };
        let body = self.numbers.full(self.outcome.sprung_mass, Kind::Mass);
        let line = format!("Natural modes{more}. The axle carries {body} of vehicle body.");
        canvas.label(SUBTITLE.label(line, [LEFT, level]));
        let how = "Motion of the axle line over its largest one in each panel, left of the vehicle on the left; \
                   the sign of a whole mode is free.";
        canvas.label(NOTE.label(how, [LEFT, level + 22.0]));
        level + 22.0
    }

    /// Axis title, legend and footnote; gives back their lower end.
    fn draw_foot(&self, canvas: &mut Canvas, level: f64, right: f64) -> f64 {
        let title = self.numbers.heading("Position along the axle", Shown::Place);
        canvas.label(Label::new(title, [0.5 * (LEFT + right), level]).middle());
        canvas.label(Label::new("\u{2190} left", [LEFT, level]).bold());
        canvas.label(Label::new("right \u{2192}", [right, level]).end().bold());
        let rule = level + 16.0;
        canvas.line([LEFT, rule], [right, rule], &format!(r#"stroke="{FAINT}" stroke-width="0.8""#));
        let bottom = self.draw_legend(canvas, rule + 22.0);
        let Some(note) = self.card.invented_note() else { return bottom };
        canvas.label(NOTE.label(note, [LEFT, bottom + 6.0]));
        bottom + 6.0
    }

    fn draw_legend(&self, canvas: &mut Canvas, top: f64) -> f64 {
        let drawn = |trace: &Trace| self.panels.iter().any(|panel| panel.shows(*trace));
        let traces = Trace::ALL.into_iter().filter(drawn).map(Some);
        let edge = LEFT + COLUMNS as f64 * STEP[0];
        let [mut x, mut y] = [LEFT, top];
        for entry in traces.chain([None]) {
            let words = entry.map_or("spindle end", Trace::words);
            let width = 60.0 + LETTER * words.chars().count() as f64;
            if x > LEFT && x + width > edge {
                [x, y] = [LEFT, y + LEGEND_ROW];
            }
            match entry {
                Some(trace) => canvas.line([x, y], [x + 30.0, y], &trace.style()),
                None => draw_end(canvas, [x + 15.0, y]),
            }
            canvas.label(Label::new(words, [x + 38.0, y + 4.5]));
            x += width;
        }
        y + LEGEND_ROW
    }

    fn description(&self) -> String {
        let modes = self.outcome.modes.iter().take(MOST);
        let list: Vec<String> =
            modes.map(|mode| format!("{} {} Hz", mode.name, significant(mode.frequency, 4))).collect();
        format!("Shapes of natural modes: {}.", list.join(", "))
    }
}
