//! Waterfalls: how the causes of an angle add up to it.

use axlebow_study::{CausesOutcome, Contribution};
use axlebow_units::Kind;

use crate::number::{Numbers, fixed, typographic, with_sign};
use crate::panels::finite;
use crate::panels::layout::{FIRST_LINE, NOTE, PART_TITLE, TITLE, TITLE_LINES};
use crate::panels::{Panel, Ticks, draw_axis, range_of};
use crate::svg::palette::{BLUE, FAINT, INK, MUTED, VERMILLION};
use crate::svg::{Canvas, Label, Point};
use crate::words::causes::{Wheels, angles, rolls, subject, warnings, wheels};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Left edge.
const LEFT: f64 = 50.0;
/// Room for the names of causes.
const NAMES: f64 = 170.0;
/// Width of the area inside the axes.
const AREA: f64 = 620.0;
/// Height of a row.
const ROW: f64 = 30.0;
/// Room to the right for values.
const RIGHT: f64 = 190.0;

/// Draws a waterfall for each angle of each subject: every cause carries on where the one above it ended, down to the
/// whole; whiskers are what an input's tolerance moves it by.
///
/// # Errors
/// No subject, or a value that is not finite.
pub fn causes_figure(outcomes: &[CausesOutcome], card: &ModelCard) -> Result<Svg, ReportError> {
    if outcomes.is_empty() {
        return Err(ReportError::Empty { thing: "picture of causes" });
    }
    let mut canvas = Canvas::default();
    let mut level = draw_heading(&mut canvas, card);
    for outcome in outcomes {
        level = draw_subject(&mut canvas, outcome, (level + 38.0, Numbers { system: card.system }))?;
    }
    if let Some(note) = card.invented_note() {
        level += 20.0;
        canvas.label(NOTE.label(note, [LEFT, level]));
    }
    let size = [LEFT + NAMES + AREA + RIGHT, level + 18.0];
    let title = format!("{}: causes", card.name);
    let figure = canvas.finish(size, &title, "Waterfalls of causes of camber and toe.");
    Ok(figure.with_warnings(&warnings(outcomes)))
}

fn draw_heading(canvas: &mut Canvas, card: &ModelCard) -> f64 {
    let title = wrapped(&card.name, 66, TITLE_LINES);
    let level = TITLE.draw(canvas, title, [LEFT, FIRST_LINE]) - TITLE.step;
    let how = "What makes the wheels lean and steer: shares do not depend on an order (Shapley); whiskers: tolerance of the \
               input.";
    canvas.label(NOTE.label(how, [LEFT, level + 22.0]));
    level + 22.0
}

/// The waterfalls of one subject; gives back their lower end.
fn draw_subject(
    canvas: &mut Canvas,
    outcome: &CausesOutcome,
    (mut level, numbers): (f64, Numbers),
) -> Result<f64, ReportError> {
    for line in wrapped(&subject(outcome, numbers), 104, 2) {
        canvas.label(PART_TITLE.label(line, [LEFT, level]));
        level += 20.0;
    }
    for Wheels { words, causes, rigid_roll } in wheels(outcome, numbers) {
        for (angle, contribution) in angles(causes) {
            check(contribution)?;
            let waterfall = Waterfall { title: format!("{words}, {angle}"), contribution, numbers };
            level = waterfall.draw(canvas, level)?;
        }
        if rolls(outcome) {
            let roll = with_sign(&numbers.full(rigid_roll, Kind::Angle));
            let text =
                format!("{words}, rigid roll of the axle on tires and road, none of these causes: {roll}");
            canvas.label(NOTE.label(text, [LEFT, level + 8.0]));
            level += 24.0;
        }
    }
    Ok(level)
}

fn check(contribution: &Contribution) -> Result<(), ReportError> {
    let shares = contribution.shares.iter().flat_map(|share| [share.share, share.uncertainty]);
    finite("share of a cause", shares.chain([contribution.rest, contribution.total]))
}

/// One angle and how its causes add up.
struct Waterfall<'a> {
    title: String,
    contribution: &'a Contribution,
    numbers: Numbers,
}

/// A row: its name, where it begins and ends, and its tolerance; the whole begins at zero.
struct Step {
    name: &'static str,
    from: f64,
    to: f64,
    uncertainty: f64,
}

impl Waterfall<'_> {
    fn draw(&self, canvas: &mut Canvas, top: f64) -> Result<f64, ReportError> {
        let steps = self.steps();
        let scaled = |value: f64| self.numbers.scaled(value, Kind::Angle);
        let reach =
            steps.iter().flat_map(|step| [step.from, step.to - step.uncertainty, step.to + step.uncertainty]);
        let corner = [LEFT + NAMES, top + 34.0];
        let panel = Panel {
            corner,
            size: [AREA, ROW * steps.len() as f64],
            x: range_of(reach.chain([0.0]).map(scaled), 0.04),
            y: [0.0, 1.0],
            ticks: Ticks::Grid,
        };
        let axis = self.numbers.heading(&self.title, Kind::Angle);
        canvas.label(Label::new(axis, [LEFT, top + 18.0]).bold());
        draw_axis(canvas, &panel);
        for (row, step) in steps.iter().enumerate() {
            let middle = corner[1] + ROW * (row as f64 + 0.5);
            self.draw_step(canvas, &panel, (step, middle, row + 1 == steps.len()));
        }
        Ok(corner[1] + ROW * steps.len() as f64 + 34.0)
    }

    fn steps(&self) -> Vec<Step> {
        let mut reached = 0.0;
        let shares = self
            .contribution
            .shares
            .iter()
            .map(|share| (share.cause.words(), share.share, share.uncertainty));
        let rest = ("rest", self.contribution.rest, 0.0);
        let mut steps: Vec<Step> = shares
            .chain([rest])
            .map(|(name, part, uncertainty)| {
                let from = reached;
                reached += part;
                Step { name, from, to: reached, uncertainty }
            })
            .collect();
        steps.push(Step { name: "all", from: 0.0, to: self.contribution.total, uncertainty: 0.0 });
        steps
    }

    fn draw_step(&self, canvas: &mut Canvas, panel: &Panel, (step, middle, whole): (&Step, f64, bool)) {
        let scaled = |value: f64| panel.at(self.numbers.scaled(value, Kind::Angle), 0.0)[0];
        let [from, to] = [step.from, step.to].map(scaled);
        let color = match (whole, step.to < step.from) {
            (true, _) => INK,
            (false, true) => VERMILLION,
            (false, false) => BLUE,
        };
        let style = format!(r#"fill="{color}" fill-opacity="0.8""#);
        canvas.rectangle([from.min(to), middle - 9.0], [(to - from).abs().max(1.0), 18.0], &style);
        if !whole {
            let link = format!(r#"stroke="{FAINT}" stroke-width="1""#);
            canvas.line([to, middle + 9.0], [to, middle + ROW - 9.0], &link);
        }
        self.draw_whisker(
            canvas,
            [scaled(step.to - step.uncertainty), scaled(step.to + step.uncertainty)],
            middle,
        );
        self.draw_words(canvas, (step, middle, whole));
    }

    /// Name and value beside a row, and its share of the whole.
    fn draw_words(&self, canvas: &mut Canvas, (step, middle, whole): (&Step, f64, bool)) {
        let bold = |label: Label| if whole { label.bold() } else { label };
        canvas.label(bold(Label::new(step.name, [LEFT + NAMES - 12.0, middle + 4.5]).end()));
        let part = if whole { step.to } else { step.to - step.from };
        let value = with_sign(&self.numbers.full(part, Kind::Angle));
        let right = LEFT + NAMES + AREA;
        canvas.label(bold(Label::new(value, [right + 96.0, middle + 4.5]).end()));
        let total = self.contribution.total;
        if !whole && total.abs() > 1e-9 {
            let share = typographic(&format!("{} %", fixed(100.0 * part / total, 1)));
            canvas.label(Label::new(share, [right + 164.0, middle + 4.5]).end().color(MUTED));
        }
    }

    fn draw_whisker(&self, canvas: &mut Canvas, [low, high]: Point, middle: f64) {
        if (high - low).abs() < 2.0 {
            return;
        }
        let style = format!(r#"stroke="{INK}" stroke-width="1.2""#);
        canvas.line([low, middle], [high, middle], &style);
        for x in [low, high] {
            canvas.line([x, middle - 4.0], [x, middle + 4.0], &style);
        }
    }
}
