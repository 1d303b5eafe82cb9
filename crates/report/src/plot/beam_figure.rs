//! A straight beam with its supports and loads as it bends, over its shear and moment.

use axlebow_beam::{BeamOutcome, Bent, Vibrating};
use axlebow_units::Kind;

use super::beam_drawing::BeamDrawing;
use super::diagram::Diagram;
use crate::answer::beam_answer;
use crate::number::{Numbers, Shown, significant, tick};
use crate::panels::layout::{FIRST_LINE, LEFT, NOTE, RIGHT, SUBTITLE, TITLE, TITLE_LETTERS, WIDTH};
use crate::panels::{Panel, Ticks, finite, round_down};
use crate::svg::palette::{BLUE, SERIES, VERMILLION};
use crate::svg::{Canvas, Label, Point};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Height of the largest deflection or of a mode as drawn.
const DRAWN: f64 = 44.0;
/// Room over the beam for its loads, and without any.
const ABOVE: [f64; 2] = [150.0, 84.0];
/// Room under it for its supports.
const BELOW: f64 = 104.0;
/// Height of a diagram.
const DIAGRAM: f64 = 150.0;
/// Room between diagrams, with the title of the lower one.
const BETWEEN: f64 = 46.0;
/// Modes that are drawn.
const MODES: usize = 3;

/// Draws a beam with its supports, loads and deflected shape, shear and moment under it; of one that nothing loads, its
/// lowest modes.
///
/// # Errors
/// A value that is not finite.
pub fn beam_figure(outcome: &BeamOutcome, card: &ModelCard) -> Result<Svg, ReportError> {
    let stations = outcome.bent.iter().flat_map(|bent| &bent.stations);
    finite("value along the beam", stations.flat_map(|own| [own.at, own.deflection, own.shear, own.moment]))?;
    let modes = outcome.vibrating.iter().flat_map(|own| &own.modes);
    finite("shape of a mode", modes.flat_map(|mode| mode.shape.iter().flatten().copied()))?;
    BeamFigure { outcome, card, n: Numbers { system: card.system } }.draw()
}

struct BeamFigure<'a> {
    outcome: &'a BeamOutcome,
    card: &'a ModelCard,
    n: Numbers,
}

/// A line along the beam: its name, color and points on the canvas.
struct Shape {
    name: String,
    color: &'static str,
    points: Vec<Point>,
}

impl BeamFigure<'_> {
    fn draw(&self) -> Result<Svg, ReportError> {
        let mut canvas = Canvas::default();
        let (factor, shapes) = self.shapes();
        let is_bare = self.outcome.line.loads().is_empty();
        let axis = self.draw_heading(&mut canvas, factor) + ABOVE[usize::from(is_bare)];
        let drawing = BeamDrawing { line: &self.outcome.line, n: self.n, left: LEFT, right: RIGHT, axis };
        drawing.draw(&mut canvas, &self.outcome.bent.as_ref().map_or(Vec::new(), touching));
        for shape in &shapes {
            let points: Vec<Point> = shape.points.iter().map(|[x, up]| [*x, axis - up]).collect();
            canvas.polyline(&points, &format!(r#"stroke="{}" stroke-width="2.4""#, shape.color));
        }
        let mut bottom = axis + BELOW;
        bottom = draw_names(&mut canvas, &shapes, bottom);
        if let Some(bent) = &self.outcome.bent {
            bottom = self.draw_diagrams(&mut canvas, bent, bottom + BETWEEN)?;
        }
        let foot = self.draw_foot(&mut canvas, bottom);
        let description = beam_answer(self.outcome, self.card).join(" ");
        Ok(canvas.finish([WIDTH, foot], &self.card.name, &description))
    }

    /// The answer first, then of what it is and how it is drawn.
    fn draw_heading(&self, canvas: &mut Canvas, factor: f64) -> f64 {
        let answer = beam_answer(self.outcome, self.card);
        let message = answer.first().map_or("", String::as_str).trim_end_matches('.');
        let level = TITLE.draw(canvas, wrapped(message, TITLE_LETTERS, 3), [LEFT, FIRST_LINE]);
        let level = SUBTITLE.draw(canvas, wrapped(&self.card.name, 120, 2), [LEFT, level]);
        let theory = self.outcome.mesh.theory.words();
        let drawn = match &self.outcome.bent {
            Some(_) => format!("deflection drawn \u{d7}{}", tick(factor)),
            None => "modes over their largest deflection, the sign of each is free".to_owned(),
        };
        canvas.label(NOTE.label(format!("{theory} theory; {drawn}."), [LEFT, level]));
        level
    }

    /// Where a place along the beam stands.
    fn across(&self, at: f64) -> f64 {
        LEFT + (RIGHT - LEFT) * at / self.outcome.line.length()
    }

    /// The deflected shape with the factor by which it is enlarged, or the modes.
    fn shapes(&self) -> (f64, Vec<Shape>) {
        let scale = (RIGHT - LEFT) / self.outcome.line.length();
        let Some(bent) = &self.outcome.bent else {
            return (1.0, self.outcome.vibrating.as_ref().map_or(Vec::new(), |own| self.mode_shapes(own)));
        };
        let largest = bent.stations.iter().map(|own| own.deflection.abs()).fold(0.0, f64::max);
        let factor = if largest > 0.0 { round_down(DRAWN / (largest * scale)) } else { 1.0 };
        let point = |own: &axlebow_beam::Station| [self.across(own.at), factor * scale * own.deflection];
        let points = bent.stations.iter().map(point).collect();
        (factor, vec![Shape { name: String::new(), color: BLUE, points }])
    }

    fn mode_shapes(&self, vibrating: &Vibrating) -> Vec<Shape> {
        let elastic = vibrating.modes[vibrating.rigid..].iter().take(MODES).enumerate();
        let shape = |(number, mode): (usize, &axlebow_beam::Mode)| Shape {
            name: format!("mode {}, {} Hz", number + 1, significant(mode.frequency, 4)),
            color: SERIES[number % SERIES.len()],
            points: mode.shape.iter().map(|[at, up]| [self.across(*at), DRAWN * up]).collect(),
        };
        elastic.map(shape).collect()
    }

    fn draw_diagrams(&self, canvas: &mut Canvas, bent: &Bent, top: f64) -> Result<f64, ReportError> {
        let edge = self.n.scaled(self.outcome.line.length(), Shown::Place);
        let own = |kind: fn(&axlebow_beam::Station) -> f64| -> Vec<Point> {
            bent.stations.iter().map(|own| [own.at, kind(own)]).collect()
        };
        let diagrams = [
            ("Shear force", Kind::Force, own(|own| own.shear), VERMILLION, Ticks::Lines),
            (
                "Bending moment, positive with the ends up",
                Kind::Moment,
                own(|own| own.moment),
                BLUE,
                Ticks::Grid,
            ),
        ];
        let mut level = top;
        for (title, kind, points, color, ticks) in diagrams {
            let corner = [LEFT, level];
            let size = [RIGHT - LEFT, DIAGRAM];
            let place = Panel { corner, size, x: [0.0, edge], y: [0.0, 1.0], ticks };
            let shown = Shown::Free(kind);
            let diagram = Diagram { title, shown, numbers: self.n, points, second: None, color };
            let panel = diagram.draw(canvas, place)?;
            diagram.draw_labels(canvas, &panel);
            level += DIAGRAM + BETWEEN;
        }
        Ok(level - BETWEEN)
    }

    /// Title of the axis under diagrams, and what must be known of the numbers; gives back the lower end.
    fn draw_foot(&self, canvas: &mut Canvas, mut bottom: f64) -> f64 {
        if self.outcome.bent.is_some() {
            let title = self.n.heading("Place along the beam", Shown::Place);
            canvas.label(Label::new(title, [0.5 * (LEFT + RIGHT), bottom + 42.0]).middle());
            bottom += 48.0;
        }
        if let Some(note) = self.card.invented_note() {
            canvas.label(NOTE.label(note, [LEFT, bottom + 18.0]));
        }
        bottom + 36.0
    }
}

fn touching(bent: &Bent) -> Vec<bool> {
    bent.reactions.iter().map(|reaction| reaction.touches).collect()
}

/// Names of lines, each behind a piece of its line; gives back their lower end.
fn draw_names(canvas: &mut Canvas, shapes: &[Shape], level: f64) -> f64 {
    let mut x = LEFT;
    let named = shapes.iter().filter(|shape| !shape.name.is_empty());
    let mut bottom = level;
    for shape in named {
        canvas.line(
            [x, level],
            [x + 30.0, level],
            &format!(r#"stroke="{}" stroke-width="2.4""#, shape.color),
        );
        canvas.label(Label::new(shape.name.as_str(), [x + 38.0, level + 4.5]));
        x += 70.0 + 7.4 * shape.name.chars().count() as f64;
        bottom = level + 20.0;
    }
    bottom
}
