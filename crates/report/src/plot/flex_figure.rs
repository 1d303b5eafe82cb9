//! The axle bent by one load case, with bending moment, stress and the force of its stiffeners' welds under it.

use axlebow_axle::{CaseOutcome, DiagramPoint, StationOutcome};
use axlebow_units::Kind;

use super::Drawing;
use super::bend::Bend;
use super::diagram::Diagram;
use super::drawable::drawable;
use super::rear_view::{Frame, RearView};
use super::weld_diagram::WeldDiagram;
use crate::number::{Numbers, Shown, fixed, with_sign};
use crate::panels::layout::{
    FIRST_LINE, FOOT, LEFT, NOTE, RIGHT, SUBTITLE, TITLE, TITLE_LETTERS, TITLE_LINES, WIDTH,
};
use crate::panels::spread;
use crate::panels::{Panel, Ticks};
use crate::svg::palette::{BLUE, FAINT, VERMILLION};
use crate::svg::{Canvas, Label, Point};
use crate::words::{station_name, wrapped};
use crate::{ModelCard, ReportError, Svg};

/// Height that the tires may take.
const TALLEST: f64 = 480.0;
/// Room for camber labels over the tires.
const ABOVE_TIRES: f64 = 66.0;
/// Height of the foot of a station's name over the upper diagram.
const NAME_FOOT: f64 = 38.0;
/// Slant of the names, degrees.
const NAME_TURN: f64 = 52.0;
/// Width of a letter of a name.
const NAME_LETTER: f64 = 6.9;
/// Stations that the picture shows without a name.
const UNNAMED: [&str; 6] =
    ["seat-inner-edge", "seat-outer-edge", "section-change", "spindle-end", "tire-contact", "run-out"];
/// Distance between names.
const NAME_GAP: f64 = 21.0;
/// Height of the moment and of the stress diagram.
const DIAGRAM: f64 = 150.0;
/// Room between the diagrams, with the title of the lower one.
const BETWEEN: f64 = 46.0;
/// A roll smaller than this is not mentioned, rad.
const SMALL_ROLL: f64 = 1e-4;
/// A fore-aft bending moment below this share of the vertical one is not drawn.
const MINOR_MOMENT: f64 = 0.02;

/// Draws the axle bent by one load case, with bending moment, fiber stress and, of an axle with stiffeners, the force
/// of their welds under it.
///
/// A rear view, left of the vehicle on the left: the unloaded axle dashed, the loaded one with deflection and
/// camber change drawn larger by a stated round factor, relative to the line through the hubs. Fiber stress is
/// drawn as the magnitude of the largest one.
///
/// - `case`: the outcome; its diagram runs from left to right
/// - `drawing`: sizes of the parts
/// - `card`: name of the model and units
///
/// # Errors
/// A diagram without points, or a value that is not finite.
pub fn flex_figure(case: &CaseOutcome, drawing: &Drawing, card: &ModelCard) -> Result<Svg, ReportError> {
    drawable(case, drawing)?;
    let figure = FlexFigure { case, drawing, card, numbers: Numbers { system: card.system } };
    figure.draw()
}

struct FlexFigure<'a> {
    case: &'a CaseOutcome,
    drawing: &'a Drawing,
    card: &'a ModelCard,
    numbers: Numbers,
}

impl FlexFigure<'_> {
    fn draw(&self) -> Result<Svg, ReportError> {
        let mut canvas = Canvas::default();
        let bend = Bend::new(self.case, self.drawing.hubs);
        let factor = bend.exaggeration();
        let header = self.draw_heading(&mut canvas, factor);
        let frame = self.frame(header + ABOVE_TIRES)?;
        let view = RearView {
            case: self.case,
            drawing: self.drawing,
            numbers: self.numbers,
            frame,
            bend,
            exaggeration: factor,
        };
        view.draw(&mut canvas);
        let road = frame.hub_level + frame.scale * self.drawing.largest_radius();
        let top = road + view.room_below_road() + self.room_for_names();
        self.draw_diagrams(&mut canvas, top, frame.scale)?;
        let bottom = top + self.height_of_diagrams();
        self.draw_foot(&mut canvas, bottom);
        let title = format!("{}: {}", self.card.name, self.case.name);
        Ok(canvas.finish([WIDTH, bottom + FOOT], &title, &self.description(factor)))
    }

    fn draw_heading(&self, canvas: &mut Canvas, factor: f64) -> f64 {
        let name = wrapped(&self.card.name, TITLE_LETTERS, TITLE_LINES);
        let mut level = TITLE.draw(canvas, name, [LEFT, FIRST_LINE]);
        let case = wrapped(&format!("{}: {}", self.case.name, self.case.description), 120, 2);
        level = SUBTITLE.draw(canvas, case, [LEFT, level]);
        for line in wrapped(&self.how_drawn(factor), 145, 2) {
            canvas.label(NOTE.label(line, [LEFT, level + 2.0]));
            level += 18.0;
        }
        level
    }

    fn how_drawn(&self, factor: f64) -> String {
        let bent = format!(
            "Rear view. Dashed: unloaded. Solid: loaded, bow and camber change drawn \u{d7}{}.",
            fixed(factor, 0)
        );
        if self.case.axle_roll.abs() < SMALL_ROLL {
            return bent;
        }
        let roll = with_sign(&self.numbers.full(self.case.axle_roll, Kind::Angle));
        format!("{bent} The axle's roll of {roll} on road and tires is not drawn.")
    }

    /// Place and scale of the rear view: as wide as the plotting area unless the tires would be too tall.
    fn frame(&self, top: f64) -> Result<Frame, ReportError> {
        let radius = self.drawing.largest_radius();
        let tires = self.drawing.tires.left.iter().chain(&self.drawing.tires.right);
        let reach = tires.map(|tire| tire.y.abs() + 0.5 * tire.width + 0.2 * tire.radius);
        let ends = self.drawing.line.iter().map(|point| 1.05 * point.y.abs());
        let half = reach.chain(ends).fold(0.0, f64::max);
        if half <= 0.0 {
            return Err(ReportError::Empty { thing: "drawing of the axle" });
        }
        let scale = (0.5 * (RIGHT - LEFT) / half).min(0.5 * TALLEST / radius);
        Ok(Frame { middle: 0.5 * (LEFT + RIGHT), hub_level: top + scale * radius, scale })
    }

    fn draw_diagrams(&self, canvas: &mut Canvas, top: f64, scale: f64) -> Result<(), ReportError> {
        let edge = self.numbers.scaled(0.5 * (RIGHT - LEFT) / scale, Shown::Place);
        let place = |corner: f64, ticks| Panel {
            corner: [LEFT, corner],
            size: [RIGHT - LEFT, DIAGRAM],
            x: [edge, -edge],
            y: [0.0, 1.0],
            ticks,
        };
        let (moment, stress) = (self.moment_diagram(), self.stress_diagram());
        let welds = self.weld_diagram();
        let level = |number: f64| top + number * (DIAGRAM + BETWEEN);
        let under_stress = if welds.is_some() { Ticks::None } else { Ticks::Numbers };
        let upper_axes = moment.draw(canvas, place(level(0.0), Ticks::None))?;
        let lower_axes = stress.draw(canvas, place(level(1.0), under_stress))?;
        let last = welds.map(|own| own.draw(canvas, place(level(2.0), Ticks::Numbers))).transpose()?;
        self.draw_stations(canvas, &upper_axes, top + self.height_of_diagrams());
        moment.draw_labels(canvas, &upper_axes);
        stress.draw_labels(canvas, &lower_axes);
        if let (Some(welds), Some(axes)) = (welds, last) {
            welds.draw_labels(canvas, &axes);
        }
        Ok(())
    }

    fn weld_diagram(&self) -> Option<WeldDiagram<'_>> {
        let stiffeners = &self.case.stiffening.as_ref()?.stiffeners;
        Some(WeldDiagram { stiffeners, numbers: self.numbers })
    }

    fn height_of_diagrams(&self) -> f64 {
        let count = if self.case.stiffening.is_some() { 3.0 } else { 2.0 };
        count * (DIAGRAM + BETWEEN) - BETWEEN
    }

    fn moment_diagram(&self) -> Diagram<'static> {
        let about_x = self.points(|point| point.resultants.moment_x);
        let about_z = self.points(|point| point.resultants.moment_z);
        let largest = |points: &[Point]| points.iter().map(|point| point[1].abs()).fold(0.0, f64::max);
        let fore_aft = largest(&about_z) > MINOR_MOMENT * largest(&about_x);
        let title = if fore_aft {
            "Bending moment; filled: about X (concave up (sagging) is positive), dashed: about Z (fore-aft)"
        } else {
            "Bending moment about X (concave up (sagging) is positive)"
        };
        let second = fore_aft.then_some(about_z);
        Diagram {
            title,
            shown: Shown::Usual(Kind::Moment),
            numbers: self.numbers,
            points: about_x,
            second,
            color: BLUE,
        }
    }

    fn stress_diagram(&self) -> Diagram<'static> {
        let points = self.points(|point| point.stress.abs());
        let title = "Largest extreme-fiber stress (magnitude)";
        Diagram {
            title,
            shown: Shown::Usual(Kind::Stress),
            numbers: self.numbers,
            points,
            second: None,
            color: VERMILLION,
        }
    }

    fn points(&self, value: impl Fn(&DiagramPoint) -> f64) -> Vec<Point> {
        self.case.diagram.iter().map(|point| [point.y, value(point)]).collect()
    }

    /// Names over the upper diagram and a line down through both.
    fn draw_stations(&self, canvas: &mut Canvas, axes: &Panel, bottom: f64) {
        let style = format!(r#"stroke="{FAINT}" stroke-width="0.9" stroke-dasharray="2 3""#);
        let place = |y: f64| axes.at(self.numbers.scaled(y, Shown::Place), axes.y[1])[0];
        let wanted: Vec<f64> = self.stations().map(|station| place(station.y)).collect();
        let top = axes.corner[1];
        for ((station, x), at) in self.stations().zip(&wanted).zip(spread(&wanted, NAME_GAP)) {
            canvas.polyline(&[[at, top - 34.0], [*x, top - 22.0], [*x, bottom]], &style);
            let name = station_name(&station.name);
            let name = Label::new(name, [at, top - NAME_FOOT]).size(12.0).halo();
            let left = station.y > 0.0;
            canvas.label(if left { name.end().turn(NAME_TURN) } else { name.turn(-NAME_TURN) });
        }
    }

    /// The stations worth a name.
    fn stations(&self) -> impl Iterator<Item = &StationOutcome> {
        let plain = |station: &&StationOutcome| !UNNAMED.iter().any(|place| station.name.contains(place));
        self.case.stations.iter().filter(plain)
    }

    /// Room for the names of the stations.
    fn room_for_names(&self) -> f64 {
        let letters = self.stations().map(|station| station_name(&station.name).chars().count()).max();
        NAME_FOOT + NAME_LETTER * letters.unwrap_or(0) as f64 * NAME_TURN.to_radians().sin() + 16.0
    }

    fn draw_foot(&self, canvas: &mut Canvas, bottom: f64) {
        let level = bottom + 44.0;
        let title = self.numbers.heading("Position along the axle", Shown::Place);
        canvas.label(Label::new(title, [0.5 * (LEFT + RIGHT), level]).middle());
        canvas.label(Label::new("\u{2190} left", [LEFT, level]).bold());
        canvas.label(Label::new("right \u{2192}", [RIGHT, level]).end().bold());
        if let Some(note) = self.card.invented_note() {
            canvas.label(NOTE.label(note, [LEFT, level + 24.0]));
        }
    }

    fn description(&self, factor: f64) -> String {
        let wheels = &self.case.wheels;
        let change = |value| self.numbers.full(value, Kind::Angle);
        format!(
            "Rear view of the bent axle, drawn {} times its bow; camber change {} left, {} right; bow {}; peak extreme-fiber stress {} at {}.",
            fixed(factor, 0),
            change(wheels.left.camber_change),
            change(wheels.right.camber_change),
            self.numbers.full(self.case.bow, Shown::Deflection),
            self.numbers.full(self.case.peak_stress, Kind::Stress),
            self.numbers.full(self.case.peak_stress_y, Shown::Place),
        )
    }
}
