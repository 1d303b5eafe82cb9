//! Wear round the tires of a wheel: ribs across, the turn of the tire along.

use axlebow_axle::{Side, TireRide, TireRideOutcome};

use crate::number::fixed;
use crate::panels::{color, draw_color_bar};
use crate::svg::palette::{FAINT, INK, MUTED};
use crate::svg::{Canvas, Label, Point};
use crate::words::tire::tire_name;
use crate::words::wrapped;

/// Color of a part of the tire where nothing passed.
const NOTHING: &str = "#c9ced6";
/// Least range of the colors, %.
const LEAST_RANGE: f64 = 0.1;
/// Distance between the maps of two tires.
const BETWEEN: f64 = 10.0;

/// Maps of both wheels in the same colors.
pub(super) struct RoundPanel {
    range: [f64; 2],
}

impl RoundPanel {
    /// The colors that serve both wheels.
    pub fn of(ride: &TireRideOutcome) -> Self {
        let maps = Side::BOTH.into_iter().flat_map(|side| &ride.wheels.of(side).wear.round);
        let most = maps.flat_map(|map| &map.ribs).flat_map(|rib| wave_of(rib)).flatten();
        let most = most.map(f64::abs).fold(LEAST_RANGE, f64::max);
        RoundPanel { range: [-most, most] }
    }

    /// Draws the tires of one wheel under one another, the outer shoulder on top.
    pub fn draw(&self, canvas: &mut Canvas, ride: &TireRide, side: Side, (corner, size): (Point, Point)) {
        let maps = &ride.wear.round;
        let height = (size[1] - BETWEEN * (maps.len() - 1) as f64) / maps.len() as f64;
        for (number, map) in maps.iter().enumerate() {
            let top = corner[1] + number as f64 * (height + BETWEEN);
            let each = height / map.ribs.len() as f64;
            for (row, rib) in map.ribs.iter().rev().enumerate() {
                self.draw_rib(canvas, rib, ([corner[0], top + row as f64 * each], [size[0], each]));
            }
            let frame = format!(r#"fill="none" stroke="{FAINT}""#);
            canvas.rectangle([corner[0], top], [size[0], height], &frame);
            let name = format!("{} {}", side.word(), tire_name(number, maps.len()));
            let middle = [corner[0] - 8.0, top + 0.5 * height];
            canvas.label(Label::new(name, middle).size(11.5).middle().turn(-90.0));
        }
        canvas.label(
            Label::new("outer shoulder on top, inner below", [corner[0], corner[1] - 6.0])
                .size(11.5)
                .color(MUTED),
        );
        draw_turn(canvas, [corner[0], corner[1] + size[1]], size[0]);
        self.draw_wave(canvas, ride, [corner[0], corner[1] + size[1] + 52.0]);
    }

    /// Draws the scale of colors.
    pub fn draw_bar(&self, canvas: &mut Canvas, place: (Point, f64)) {
        let [low, high] = self.range;
        let levels: Vec<f64> = (0..=4).map(|i| rounded(low + 0.25 * f64::from(i) * (high - low))).collect();
        let inside: Vec<f64> = levels.into_iter().filter(|level| (low..=high).contains(level)).collect();
        draw_color_bar(canvas, place, self.range, &inside);
    }

    fn draw_rib(&self, canvas: &mut Canvas, parts: &[Option<f64>], (corner, size): (Point, Point)) {
        let width = size[0] / parts.len() as f64;
        let wave = wave_of(parts);
        for i in 0..parts.len() {
            let fill = wave[i].map_or(NOTHING.to_owned(), |value| color(value, self.range));
            let style = format!(r#"fill="{fill}" shape-rendering="crispEdges""#);
            canvas.rectangle([corner[0] + i as f64 * width, corner[1]], [width, size[1]], &style);
        }
    }

    fn draw_wave(&self, canvas: &mut Canvas, ride: &TireRide, at: Point) {
        let text = match &ride.wave {
            None => "less than a turn of the tire".to_owned(),
            Some(wave) => {
                let first = wave.cups.explanations.first();
                let likely = first.map_or(String::new(), |one| format!("; likeliest: {}", one.suspect.name));
                let standing = if wave.visible { "" } else { ", too little to see" };
                format!(
                    "strongest wave: {} round, ±{} %{standing}, {} Hz{likely}",
                    wave.cups.count,
                    fixed(100.0 * wave.amplitude, 1),
                    fixed(wave.cups.frequency, 1)
                )
            }
        };
        for (row, line) in wrapped(&text, 74, 2).into_iter().enumerate() {
            canvas.label(Label::new(line, [at[0], at[1] + 16.0 * row as f64]).size(12.0));
        }
    }
}

/// Wear of each part over the mean of its rib, less one, %: the wave round the tire without what wears the rib evenly.
fn wave_of(parts: &[Option<f64>]) -> Vec<Option<f64>> {
    let passed = || parts.iter().flatten();
    let mean = passed().sum::<f64>() / passed().count().max(1) as f64;
    let over = |part: &Option<f64>| part.filter(|_| mean > 0.0).map(|part| 100.0 * (part / mean - 1.0));
    parts.iter().map(over).collect()
}

/// Quarters of a turn under a map.
fn draw_turn(canvas: &mut Canvas, [left, level]: Point, width: f64) {
    for quarter in 0..=4_u32 {
        let x = left + 0.25 * width * f64::from(quarter);
        canvas.line([x, level], [x, level + 5.0], &format!(r#"stroke="{INK}" stroke-width="0.8""#));
        canvas.label(Label::new(format!("{}°", 90 * quarter), [x, level + 18.0]).size(11.5).middle());
    }
    canvas.label(
        Label::new("turn of the tire", [left + 0.375 * width, level + 18.0]).size(11.5).middle().color(MUTED),
    );
}

/// A value to three digits.
fn rounded(value: f64) -> f64 {
    let step = 10f64.powf(value.abs().max(1e-9).log10().floor() - 2.0);
    (value / step).round() * step
}
