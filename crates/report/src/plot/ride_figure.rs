//! A ride along the road: road, loads, camber and stress.

use axlebow_axle::{RideOutcome, Side, Sides};
use axlebow_model::{MeasuredRide, RideQuantity};
use axlebow_units::{Kind, UnitSystem, show};

use super::ride_panel::{Owner, RidePanel, measured_style, rest_style};
use crate::number::{Numbers, Shown, fixed};
use crate::panels::finite;
use crate::panels::layout::{
    FIRST_LINE, FOOT, LEFT, NOTE, RIGHT, SUBTITLE, TITLE, TITLE_LETTERS, TITLE_LINES, TO_AXIS_TITLE, WIDTH,
};
use crate::panels::thinned;
use crate::panels::{Panel, Ticks, range_of};
use crate::svg::palette::VERMILLION;
use crate::svg::{Canvas, Label, Point};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Heights of the panels, from road to stress.
const HEIGHTS: [f64; 4] = [110.0, 170.0, 170.0, 130.0];
/// Room between panels, with the title of the lower one.
pub(crate) const BETWEEN: f64 = 42.0;
/// Room over the first panel for its title.
const ABOVE: f64 = 44.0;
/// Points of a line that are drawn.
const MOST_POINTS: usize = 2000;
/// Free share of the distance axis at each end.
pub(crate) const MARGIN: f64 = 0.005;
/// The international foot, m.
const FOOT_LENGTH: f64 = 0.3048;

/// Draws a ride along the road in four panels over one distance axis: road height as the tires feel it, wheel
/// load, camber change, and the largest fiber stress.
///
/// Left and right differ by color and dash; where a wheel is off the road the load panel is shaded. Long
/// histories are drawn with fewer points that keep every extreme value.
///
/// - `measured`: what is drawn over it, where it was measured
/// - `card`: name of the model and units
///
/// # Errors
/// A ride without samples, or a value that is not finite.
pub fn ride_figure(
    outcome: &RideOutcome,
    measured: Option<&Overlay>,
    card: &ModelCard,
) -> Result<Svg, ReportError> {
    drawable(outcome)?;
    RideFigure { outcome, card, numbers: Numbers { system: card.system }, measured }.draw()
}

/// What was measured, to be drawn over what was computed.
#[derive(Debug, Clone, PartialEq)]
pub struct Overlay {
    /// What it is called on the picture.
    pub name: String,
    /// What was measured.
    pub ride: MeasuredRide,
}

/// Refuses a ride that cannot be drawn.
pub(crate) fn drawable(outcome: &RideOutcome) -> Result<(), ReportError> {
    let history = &outcome.history;
    if history.distance.is_empty() {
        return Err(ReportError::Empty { thing: "history of the ride" });
    }
    finite("speed of the ride", [outcome.speed].into_iter())?;
    finite("distance of the ride", history.distance.iter().copied())?;
    finite("road height", both(&history.road))?;
    finite("wheel load", both(&history.load))?;
    finite("camber change", both(&history.camber))?;
    finite("fiber stress", history.stress.iter().copied())
}

fn both(sides: &Sides<Vec<f64>>) -> impl Iterator<Item = f64> {
    sides.left.iter().chain(&sides.right).copied()
}

/// A ride and how its reader wants it.
pub(crate) struct RideFigure<'a> {
    pub outcome: &'a RideOutcome,
    pub card: &'a ModelCard,
    pub numbers: Numbers,
    /// What was measured, where there is something.
    pub measured: Option<&'a Overlay>,
}

impl RideFigure<'_> {
    fn draw(&self) -> Result<Svg, ReportError> {
        let mut canvas = Canvas::default();
        let mut top = self.draw_heading(&mut canvas) + ABOVE;
        let x = range_of(self.distances(), MARGIN);
        for (panel, height) in self.panels().iter().zip(HEIGHTS) {
            let (corner, size) = ([LEFT, top], [RIGHT - LEFT, height]);
            let last = panel.shown == Shown::Usual(Kind::Stress);
            let ticks = if last { Ticks::Grid } else { Ticks::Lines };
            panel.draw(&mut canvas, Panel { corner, size, x, y: [0.0, 1.0], ticks })?;
            top += height + BETWEEN;
        }
        let bottom = top - BETWEEN;
        self.draw_foot(&mut canvas, bottom + TO_AXIS_TITLE);
        let title = format!("{}: {} at {}", self.card.name, self.outcome.name, self.speed());
        Ok(canvas.finish([WIDTH, bottom + FOOT], &title, &self.description()))
    }

    fn draw_heading(&self, canvas: &mut Canvas) -> f64 {
        let name = wrapped(&self.card.name, TITLE_LETTERS, TITLE_LINES);
        let mut level = TITLE.draw(canvas, name, [LEFT, FIRST_LINE]);
        let driven = wrapped(&format!("Road: {}. Speed: {}.", self.outcome.name, self.speed()), 120, 2);
        level = SUBTITLE.draw(canvas, driven, [LEFT, level]);
        let partial = self.outcome.partial.as_ref().map(|why| format!("Partial ride: {why}."));
        for line in partial.iter().flat_map(|text| wrapped(text, 105, 2)) {
            canvas.label(Label::new(line, [LEFT, level + 2.0]).size(14.0).bold().color(VERMILLION));
            level += 20.0;
        }
        let level = self.draw_legend(canvas, level + 8.0);
        let Some(Overlay { name, .. }) = self.measured else { return level };
        let under = level + 17.0;
        canvas.line([LEFT, under], [LEFT + 34.0, under], &measured_style(Owner::Left));
        canvas.line([LEFT, under + 5.0], [LEFT + 34.0, under + 5.0], &measured_style(Owner::Right));
        let words = format!("measured: {name} (left wheel or axle solid, right wheel dashed)");
        let words = wrapped(&words, 110, 1).concat();
        canvas.label(Label::new(words, [LEFT + 42.0, under + 7.0]));
        under + 14.0
    }

    /// What the lines mean; gives back the lower end.
    pub fn draw_legend(&self, canvas: &mut Canvas, level: f64) -> f64 {
        let mut x = LEFT;
        let entries = [
            ("left wheel", Owner::Left.style()),
            ("right wheel", Owner::Right.style()),
            ("load at rest", rest_style()),
        ];
        for (words, style) in entries {
            canvas.line([x, level], [x + 34.0, level], &style);
            canvas.label(Label::new(words, [x + 42.0, level + 4.5]));
            x += 154.0;
        }
        if !self.shades().is_empty() {
            canvas.rectangle([x, level - 8.0], [34.0, 8.0], &Owner::Left.shade());
            canvas.rectangle([x, level], [34.0, 8.0], &Owner::Right.shade());
            let words = "wheel off the road (left above, right below)";
            canvas.label(Label::new(words, [x + 42.0, level + 4.5]));
        }
        level + 7.0
    }

    /// Road, load, camber and stress, from top to bottom.
    pub fn panels(&self) -> [RidePanel; 4] {
        let history = &self.outcome.history;
        let road = ("Road height as the tires feel it", Shown::Place);
        let camber = (
            "Camber change against the unloaded axle (positive: the tire's top outward)",
            Shown::Usual(Kind::Angle),
        );
        let stress = ("Largest extreme-fiber stress along the axle (magnitude)", Shown::Usual(Kind::Stress));
        let load = self.panel(("Wheel load", Shown::Usual(Kind::Force)), self.pair(&history.load));
        let magnitude: Vec<f64> = history.stress.iter().map(|stress| stress.abs()).collect();
        let magnitude = self.panel(stress, vec![(Owner::Axle, self.line(&magnitude))]);
        let mut panels = [
            self.panel(road, self.pair(&history.road)),
            RidePanel { levels: self.loads_at_rest(), shades: self.shades(), ..load },
            self.panel(camber, self.pair(&history.camber)),
            RidePanel { from_zero: true, ..magnitude },
        ];
        for (panel, of) in panels.iter_mut().zip(RideQuantity::ALL) {
            panel.measured = self.measured_lines(of);
        }
        panels
    }

    /// What was measured of a quantity where the ride was, in pieces without gaps: distance in the reader's unit and value.
    fn measured_lines(&self, of: RideQuantity) -> Vec<(Owner, Vec<Point>)> {
        let Some(Overlay { ride, .. }) = self.measured else { return Vec::new() };
        let (_, factor) = self.distance_unit();
        let driven = &self.outcome.history.distance;
        let (first, last) = (driven[0], driven[driven.len() - 1]);
        let distance = |along: f64| if ride.by_time { first + self.outcome.speed * along } else { along };
        let mut lines = Vec::new();
        for series in ride.series.iter().filter(|series| series.of == of) {
            let owner = series.side.map_or(Owner::Axle, |side| match side {
                Side::Left => Owner::Left,
                Side::Right => Owner::Right,
            });
            let points: Vec<Option<Point>> = ride
                .along
                .iter()
                .zip(&series.values)
                .map(|(along, value)| Some([distance(*along), (*value)?]))
                .map(|point| point.filter(|point| (first..=last).contains(&point[0])))
                .map(|point| {
                    point.map(|[at, value]| {
                        [at / factor, if of == RideQuantity::Stress { value.abs() } else { value }]
                    })
                })
                .collect();
            let runs = points.split(Option::is_none).filter(|run| !run.is_empty());
            lines.extend(runs.map(|run| {
                let run: Vec<Point> = run.iter().flatten().copied().collect();
                (owner, thinned(&run, MOST_POINTS))
            }));
        }
        lines
    }

    fn panel(&self, (title, shown): (&'static str, Shown), lines: Vec<(Owner, Vec<Point>)>) -> RidePanel {
        let (levels, shades, measured) = (Vec::new(), Vec::new(), Vec::new());
        RidePanel { title, shown, numbers: self.numbers, lines, levels, shades, measured, from_zero: false }
    }

    fn pair(&self, sides: &Sides<Vec<f64>>) -> Vec<(Owner, Vec<Point>)> {
        vec![(Owner::Left, self.line(&sides.left)), (Owner::Right, self.line(&sides.right))]
    }

    /// Distance in the reader's unit and value, with not too many points.
    fn line(&self, values: &[f64]) -> Vec<Point> {
        thinned(&self.points(values), MOST_POINTS)
    }

    fn points(&self, values: &[f64]) -> Vec<Point> {
        self.distances().zip(values).map(|(x, value)| [x, *value]).collect()
    }

    /// Distances along the road in the reader's unit.
    pub fn distances(&self) -> impl Iterator<Item = f64> {
        let (_, factor) = self.distance_unit();
        self.outcome.history.distance.iter().map(move |distance| distance / factor)
    }

    /// The reader's unit of distance and its length, m.
    pub fn distance_unit(&self) -> (&'static str, f64) {
        match self.card.system {
            UnitSystem::Si => ("m", 1.0),
            UnitSystem::Us => ("ft", FOOT_LENGTH),
        }
    }

    /// The loads at rest, once when both are the same on paper.
    fn loads_at_rest(&self) -> Vec<f64> {
        let mut loads = Side::BOTH.map(|side| self.outcome.history.load.of(side).first().copied()).to_vec();
        loads.dedup_by_key(|load| load.map(|load| self.numbers.bare(load, Kind::Force)));
        loads.into_iter().flatten().collect()
    }

    /// Where each wheel is off the road.
    fn shades(&self) -> Vec<(Owner, [f64; 2])> {
        let load = &self.outcome.history.load;
        let sides = [(Owner::Left, &load.left), (Owner::Right, &load.right)];
        let stretches = |(owner, loads): (Owner, &Vec<f64>)| {
            let points = self.points(loads);
            let runs = points.chunk_by(|a, b| (a[1] <= 0.0) == (b[1] <= 0.0));
            let off = runs.filter(|run| run[0][1] <= 0.0);
            off.map(|run| (owner, [run[0][0], run[run.len() - 1][0]])).collect::<Vec<_>>()
        };
        sides.into_iter().flat_map(stretches).collect()
    }

    fn draw_foot(&self, canvas: &mut Canvas, level: f64) {
        let title = format!("Distance along the road, {}", self.distance_unit().0);
        canvas.label(Label::new(title, [0.5 * (LEFT + RIGHT), level]).middle());
        if let Some(note) = self.card.invented_note() {
            canvas.label(NOTE.label(note, [LEFT, level + 24.0]));
        }
    }

    /// The speed in the reader's unit.
    pub fn speed(&self) -> String {
        show(self.outcome.speed, Kind::Speed, self.card.system)
    }

    fn description(&self) -> String {
        let wheel = |side: Side| {
            let wheel = self.outcome.wheels.of(side);
            format!(
                "{}: load {} at rest, {} at most, off the road for {} ms, camber change {} at most",
                side.word(),
                self.numbers.full(wheel.load_at_rest, Kind::Force),
                self.numbers.full(wheel.largest_load, Kind::Force),
                fixed(1e3 * wheel.time_off_road, 0),
                self.numbers.full(wheel.camber_peak, Kind::Angle),
            )
        };
        let [left, right] = Side::BOTH.map(wheel);
        format!("Road height, wheel load, camber change and fiber stress along the road. {left}; {right}.")
    }
}
