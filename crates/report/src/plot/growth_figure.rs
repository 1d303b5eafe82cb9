//! Maps of cups that grow: growth over speed and count, with the axle's modes drawn in.

use std::f64::consts::TAU;

use axlebow_axle::{GrowthOutcome, ModeOutcome, WheelGrowth};
use axlebow_units::Kind;

use crate::number::{Numbers, significant};
use crate::panels::layout::{NOTE, PART_TITLE, TITLE};
use crate::panels::{Field, MapCurve, MapPanel, draw_color_bar, finite, levels, range_of};
use crate::subject::AxleGrowth;
use crate::svg::palette::MUTED;
use crate::svg::{Canvas, Label, Point};
use crate::words::growth::{amplified, held_words, rib_words};
use crate::words::tire::duty_words;
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Maps that are drawn.
const MAPS: usize = 4;
/// Size of a map.
const AREA: Point = [520.0, 400.0];
/// Room to the left of a map for its numbers, to the right of it, over it and under it.
const MARGINS: [f64; 4] = [90.0, 40.0, 66.0, 74.0];
/// Room for the color bar.
const BAR: f64 = 150.0;
/// Modes that are drawn in a map at most.
const MODES: usize = 5;
/// Share of its strain in tires, axle and bearings below which a mode hardly moves the tire face.
const MOVES: f64 = 0.3;

/// Draws growth over speed (to the right) and cups a turn (upward) on the worse wheel end of each axle, all in the same colors.
/// Dashed lines stand where a count passes in one period of a mode.
///
/// # Errors
/// No axle, or a value that is not finite.
pub fn growth_figure(axles: &[AxleGrowth], card: &ModelCard) -> Result<Svg, ReportError> {
    let n = Numbers { system: card.system };
    let shown = &axles[..axles.len().min(MAPS)];
    let Some(first) = shown.first() else {
        return Err(ReportError::Empty { thing: "map of cups that grow" });
    };
    let fields: Vec<Field> = shown.iter().map(|axle| field(axle, n)).collect();
    let values = || fields.iter().flat_map(|field| &field.values).flatten().flatten().copied();
    finite("growth in a map", values())?;
    let range = range_of(values(), 0.0);
    let levels = levels(range);
    let mut canvas = Canvas::default();
    let columns = fields.len().min(2);
    let [left, right, over, under] = MARGINS;
    let slot = [left + AREA[0] + right, over + AREA[1] + under];
    let top = heading(&mut canvas, (axles, card), 66 * columns) + over;
    for (i, (field, axle)) in fields.iter().zip(shown).enumerate() {
        let corner = [(i % columns) as f64 * slot[0] + left, top + (i / columns) as f64 * slot[1]];
        labels(&mut canvas, (axle, n), corner);
        let map = MapPanel { field, range, levels: &levels, rays: Vec::new(), curves: curves(axle, n) };
        map.draw(&mut canvas, (corner, AREA))?;
    }
    let beside = columns as f64 * slot[0];
    draw_color_bar(&mut canvas, ([beside, top], AREA[1]), range, &levels);
    for (row, line) in
        wrapped("Growth for each mm of tread worn; below 0 leveled", 18, 3).into_iter().enumerate()
    {
        canvas.label(NOTE.label(line, [beside, top - 44.0 + 16.0 * row as f64]));
    }
    let rows = fields.len().div_ceil(columns) as f64;
    let mut bottom = top + rows * slot[1] - over + 4.0;
    bottom = NOTE.draw(&mut canvas, wrapped(&notes(axles, card), 92 * columns, 3), [left, bottom]);
    let title = format!("Cups that grow: {}", first.name);
    Ok(canvas.finish([beside + BAR, bottom + 10.0], &title, "Growth of waves of wear over speed and count"))
}

/// The message: what grows where.
fn heading(canvas: &mut Canvas, (axles, card): (&[AxleGrowth], &ModelCard), letters: usize) -> f64 {
    let n = Numbers { system: card.system };
    let (_, wheel, held) = axles[0].worst();
    let title = if axles.len() > 1 {
        "On which axle cups grow".to_owned()
    } else if held.wave.rate > 0.0 {
        let rib = rib_words(wheel.leading_rib(held), wheel.tires);
        let times = amplified(held.wave.rate, 1e-3);
        format!("{} cups a turn grow {times} times a millimeter worn, on the {rib}", held.count)
    } else {
        "No cups grow at the speeds held".to_owned()
    };
    let level = TITLE.draw(canvas, wrapped(&title, letters * 4 / 5, 2), [MARGINS[0], 46.0]) - 8.0;
    let subject = match axles {
        [one] => {
            let (case, duty) = (&one.outcome.case, duty_words(one.outcome.duty));
            format!("{}, {case} {duty}; speeds held: {}.", one.name, held_words(&one.outcome, n))
        }
        _ => {
            let first = &axles[0].outcome;
            format!("{} {}; speeds held: {}.", first.case, duty_words(first.duty), held_words(first, n))
        }
    };
    let mut last = level;
    for line in wrapped(&subject, letters, 2) {
        canvas.label(Label::new(line, [MARGINS[0], last]));
        last += 20.0;
    }
    last - 20.0
}

fn labels(canvas: &mut Canvas, (axle, n): (&AxleGrowth, Numbers), corner: Point) {
    let name = wrapped(&axle.name, 58, 1).concat();
    canvas.label(PART_TITLE.label(name, [corner[0], corner[1] - 36.0]));
    canvas.label(Label::new("cups a turn", [corner[0] - 60.0, corner[1] - 14.0]).color(MUTED));
    let under = [corner[0] + 0.5 * AREA[0], corner[1] + AREA[1] + 44.0];
    canvas.label(Label::new(format!("speed, {}", n.unit(Kind::Speed)), under).middle());
}

/// Growth for each millimeter on the worse wheel end.
fn field(axle: &AxleGrowth, n: Numbers) -> Field {
    let outcome = &axle.outcome;
    let wheel = outcome.wheels.of(outcome.worst());
    Field {
        x: outcome.speeds.iter().map(|speed| n.scaled(*speed, Kind::Speed)).collect(),
        y: outcome.counts.iter().map(|count| f64::from(*count)).collect(),
        values: wheel.map.iter().map(|row| row.iter().map(|rate| Some(1e-3 * rate)).collect()).collect(),
    }
}

/// Where a count passes in one period of a mode, `n = f 2πR_e/V`.
fn curves(axle: &AxleGrowth, n: Numbers) -> Vec<MapCurve> {
    let outcome = &axle.outcome;
    let wheel = outcome.wheels.of(outcome.worst());
    drawn_modes(outcome, wheel)
        .into_iter()
        .map(|mode| {
            let count = |speed: f64| mode.frequency * TAU * wheel.rolling_radius / speed;
            let points = outcome.speeds.iter().map(|speed| [n.scaled(*speed, Kind::Speed), count(*speed)]);
            MapCurve {
                name: format!("{} {} Hz", mode.name, significant(mode.frequency, 3)),
                points: points.collect(),
            }
        })
        .collect()
}

/// The lowest modes that move the tire face and lie in the map.
fn drawn_modes<'a>(outcome: &'a GrowthOutcome, wheel: &WheelGrowth) -> Vec<&'a ModeOutcome> {
    let fastest = outcome.speeds.last().copied().unwrap_or(0.0);
    let turn = TAU * wheel.rolling_radius / fastest;
    let ends =
        [outcome.counts.first(), outcome.counts.last()].map(|count| f64::from(count.copied().unwrap_or(0)));
    let moves = |mode: &&ModeOutcome| mode.strain.tires + mode.strain.beam + mode.strain.bearings >= MOVES;
    let inside = |mode: &&ModeOutcome| (ends[0]..=ends[1]).contains(&(mode.frequency * turn));
    outcome.modes.iter().filter(moves).filter(inside).take(MODES).collect()
}

fn notes(axles: &[AxleGrowth], card: &ModelCard) -> String {
    let dashed = "Dashed: a count passes in one period of a mode. Each wheel by itself, the worse of two; relative numbers.";
    let more = (axles.len() > MAPS).then(|| format!("The first {MAPS} of {} axles.", axles.len()));
    let all = [Some(dashed.to_owned()), more, card.invented_note()];
    all.into_iter().flatten().collect::<Vec<_>>().join(" ")
}
