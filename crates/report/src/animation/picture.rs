//! What stands still on the page: histories, words and a place for what moves.

use axlebow_units::Kind;

use serde::Serialize;

use super::scene::Scene;
use crate::panels::layout::{LEFT, RIGHT, TO_AXIS_TITLE, WIDTH};
use crate::panels::{Panel, Ticks, range_of};
use crate::plot::ride_figure::{BETWEEN, MARGIN, RideFigure};
use crate::svg::palette::{INK, MUTED};
use crate::svg::{Canvas, Label};
use crate::{ReportError, Svg};

/// Room under the road at rest, for dips and load bars.
const UNDER: f64 = 110.0;
/// Heights of the panels of road, load and camber.
const HEIGHTS: [f64; 3] = [100.0, 120.0, 120.0];
/// Room for axis numbers and axis title.
const FOOT: f64 = 60.0;

/// What it shows, for readers who do not see it.
const DESCRIPTION: &str = "The axle with its wheels on the road, moving; under it road height, wheel load and camber \
                           change over distance, with a line at the moment that is shown.";

/// Draws what stands still.
pub(super) struct Picture<'a> {
    pub figure: &'a RideFigure<'a>,
    pub scene: &'a Scene,
    /// Whether another ride at the same scale is shown under it.
    pub has_other: bool,
}

/// The picture and what the page must know of it.
pub(super) struct Drawn {
    pub svg: Svg,
    pub cursor: Cursor,
    pub units: Units,
}

/// How distance stands on the canvas: `from + distance × scale`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub(super) struct Cursor {
    pub from: f64,
    pub scale: f64,
}

/// The reader's units and decimals.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub(super) struct Units {
    pub distance: &'static str,
    pub force: &'static str,
    pub force_decimals: usize,
    pub angle: &'static str,
}

impl Picture<'_> {
    /// The picture: the scene's empty group, the legend, the panels with their cursor.
    pub fn drawn(&self) -> Result<Drawn, ReportError> {
        let mut canvas = Canvas::default();
        canvas.group(r#"id="scene""#, |_| {});
        let mut under = self.scene.level + UNDER;
        if self.has_other {
            canvas.group(&format!(r#"id="other-scene" transform="translate(0 {under:.2})""#), |_| {});
            under *= 2.0;
        }
        let top = self.figure.draw_legend(&mut canvas, under) + 46.0;
        let x = range_of(self.figure.distances(), MARGIN);
        let bottom = self.draw_panels(&mut canvas, x, top)?;
        canvas.group(r#"id="cursor""#, |inside| {
            inside.line([0.0, top], [0.0, bottom], &format!(r#"stroke="{INK}" stroke-width="1.5""#));
        });
        let axis = format!("Distance along the road, {}", self.figure.distance_unit().0);
        canvas.label(Label::new(axis, [0.5 * (LEFT + RIGHT), bottom + TO_AXIS_TITLE]).middle().color(MUTED));
        let title = format!("{} seen from the rear as it rides", self.figure.card.name);
        let svg = canvas.finish([WIDTH, bottom + FOOT], &title, DESCRIPTION);
        let scale = (RIGHT - LEFT) / (x[1] - x[0]);
        let units = Units::of(self.figure);
        Ok(Drawn { svg, cursor: Cursor { from: LEFT - scale * x[0], scale }, units })
    }

    /// Draws the histories from `top` on over distances `x`; gives back their lower end.
    fn draw_panels(&self, canvas: &mut Canvas, x: [f64; 2], mut top: f64) -> Result<f64, ReportError> {
        for (i, (panel, height)) in self.figure.panels().iter().zip(HEIGHTS).enumerate() {
            let ticks = if i + 1 == HEIGHTS.len() { Ticks::Grid } else { Ticks::Lines };
            let (corner, size) = ([LEFT, top], [RIGHT - LEFT, height]);
            panel.draw(canvas, Panel { corner, size, x, y: [0.0, 1.0], ticks })?;
            top += height + BETWEEN;
        }
        Ok(top - BETWEEN)
    }
}

impl Units {
    /// The units of a ride's figure.
    pub fn of(figure: &RideFigure) -> Self {
        let numbers = figure.numbers;
        let decimals = |text: String| text.split_once('.').map_or(0, |(_, decimals)| decimals.len());
        Units {
            distance: figure.distance_unit().0,
            force: numbers.unit(Kind::Force),
            force_decimals: decimals(numbers.bare(0.0, Kind::Force)),
            angle: numbers.unit(Kind::Angle),
        }
    }
}
