//! What a moving or a shaking force does to a beam: deflection over time, amplitude over frequency.

use axlebow_beam::{BeamOutcome, Passage, Shaken};
use axlebow_units::Kind;

use crate::answer::response_of_beam;
use crate::number::{Numbers, Shown, significant};
use crate::panels::layout::{
    FIRST_LINE, FOOT, LEFT, NOTE, RIGHT, SUBTITLE, TITLE, TITLE_LETTERS, TO_AXIS_TITLE, WIDTH,
};
use crate::panels::{LogCurve, LogPanel, Panel, Place, Ticks, finite, range_of};
use crate::svg::palette::{BLUE, INK, MUTED};
use crate::svg::{Canvas, Label, Point};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Height of a panel.
const HEIGHT: f64 = 250.0;
/// Room over a panel for its title, and between two for the axis of the upper one.
const ABOVE: f64 = 46.0;
const BETWEEN: f64 = 116.0;
/// Decades of amplitude under the highest.
const DECADES: f64 = 4.0;

/// Draws the deflection of a beam while a force drives over it and after, and its amplitude over the frequency of a force that
/// shakes it; none where the beam has neither.
///
/// # Errors
/// A value that is not finite.
pub fn beam_response_figure(outcome: &BeamOutcome, card: &ModelCard) -> Result<Option<Svg>, ReportError> {
    if outcome.passage.is_none() && outcome.shaken.is_none() {
        return Ok(None);
    }
    let n = Numbers { system: card.system };
    let mut canvas = Canvas::default();
    let answer = response_of_beam(outcome, n);
    let message = answer.first().map_or("", String::as_str).trim_end_matches('.');
    let level = TITLE.draw(&mut canvas, wrapped(message, TITLE_LETTERS, 3), [LEFT, FIRST_LINE]);
    let mut top = SUBTITLE.draw(&mut canvas, wrapped(&card.name, 120, 2), [LEFT, level]) + ABOVE;
    if let Some(passage) = &outcome.passage {
        draw_passage(&mut canvas, (passage, outcome.line.length()), (top, n))?;
        top += HEIGHT + BETWEEN;
    }
    if let Some(shaken) = &outcome.shaken {
        draw_shaken(&mut canvas, shaken, (top, n))?;
        top += HEIGHT + BETWEEN;
    }
    let bottom = top - BETWEEN;
    if let Some(note) = card.invented_note() {
        canvas.label(NOTE.label(note, [LEFT, bottom + TO_AXIS_TITLE + 24.0]));
    }
    Ok(Some(canvas.finish([WIDTH, bottom + FOOT], &card.name, &answer.join(" "))))
}

fn draw_passage(
    canvas: &mut Canvas,
    (passage, length): (&Passage, f64),
    (top, n): (f64, Numbers),
) -> Result<(), ReportError> {
    let deflection = |value: f64| n.scaled(value, Shown::Free(Kind::Length));
    let points: Vec<Point> = passage.history.iter().map(|own| [own[0], deflection(own[2])]).collect();
    finite("deflection under the moving force", points.iter().flatten().copied())?;
    let crawling = deflection(passage.largest_static);
    let x = range_of(points.iter().map(|point| point[0]), 0.0);
    let y = range_of(points.iter().map(|point| point[1]).chain([crawling]), 0.15);
    let panel = Panel { corner: [LEFT, top], size: [RIGHT - LEFT, HEIGHT], x, y, ticks: Ticks::Grid };
    panel.draw(canvas, &[])?;
    let level = [panel.at(x[0], crawling), panel.at(x[1], crawling)];
    canvas.line(
        level[0],
        level[1],
        &format!(r#"stroke="{MUTED}" stroke-width="1.2" stroke-dasharray="1.5 3""#),
    );
    let end = level[1];
    canvas.label(
        Label::new("largest when it crawls", [end[0] - 4.0, end[1] - 6.0])
            .end()
            .size(12.0)
            .color(MUTED)
            .halo(),
    );
    let leaves = passage.history.iter().find(|own| own[1] >= length).map_or(x[1], |own| own[0]);
    let [from, to] = [panel.at(leaves, y[0]), panel.at(leaves, y[1])];
    canvas.line(from, to, &format!(r#"stroke="{INK}" stroke-width="1" stroke-dasharray="6 4""#));
    canvas.label(Label::new("the force leaves", [to[0] + 6.0, to[1] + 14.0]).size(12.0).halo());
    let line: Vec<Point> = points.iter().map(|point| panel.at(point[0], point[1])).collect();
    canvas.polyline(&line, &format!(r#"stroke="{BLUE}" stroke-width="1.8" stroke-linejoin="round""#));
    let at = n.full(passage.at, Shown::Free(Kind::Length));
    let title = format!("Deflection at {at}, {}", n.unit(Shown::Free(Kind::Length)));
    canvas.label(Label::new(title, [LEFT, top - 10.0]).bold());
    let axis = [0.5 * (LEFT + RIGHT), top + HEIGHT + TO_AXIS_TITLE];
    canvas.label(Label::new("Time after the force comes onto the beam, s", axis).middle());
    Ok(())
}

fn draw_shaken(canvas: &mut Canvas, shaken: &Shaken, (top, n): (f64, Numbers)) -> Result<(), ReportError> {
    let amplitude = |value: f64| n.scaled(value, Shown::Free(Kind::Length));
    let points: Vec<Point> = shaken.answers.iter().map(|own| [own[0], amplitude(own[1])]).collect();
    finite("amplitude of the shaken beam", points.iter().flatten().copied())?;
    let at = n.full(shaken.read_at, Shown::Free(Kind::Length));
    let title = format!("Amplitude of the deflection at {at}, {}", n.unit(Shown::Free(Kind::Length)));
    let frequencies = [points[0][0], points[points.len() - 1][0]];
    let marks = shaken.largest().map(|[frequency, size]| [frequency, amplitude(size)]);
    let curve = LogCurve { name: "amplitude".to_owned(), points, marks: marks.into_iter().collect() };
    let panel = LogPanel { title, curves: vec![curve], frequencies, decades: DECADES };
    panel.draw(canvas, Place { corner: [LEFT, top], size: [RIGHT - LEFT, HEIGHT] }, true);
    let natural: Vec<String> = shaken.natural.iter().take(6).map(|own| significant(*own, 4)).collect();
    if !natural.is_empty() {
        let text = format!("Natural frequencies, Hz: {}", natural.join(", "));
        canvas.label(NOTE.label(text, [LEFT, top + HEIGHT + TO_AXIS_TITLE + 24.0]));
    }
    Ok(())
}
